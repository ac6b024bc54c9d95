import type { Cell, Group, Sheet, SheetColumn } from './sheet.ts';
import { filledTables } from './sheets.ts';

/** The tables of a sheet that make one file: what their rows have in common stands in columns of its own. */
export interface MergedTable {
  readonly file: string;
  readonly columns: readonly SheetColumn[];
  readonly rows: readonly (readonly Cell[])[];
}

export function mergedTables(sheet: Sheet): MergedTable[] {
  const files = new Map<string, { columns: SheetColumn[]; rows: Cell[][] }>();
  for (const { file, part, group, columns, rows } of filledTables(sheet)) {
    if (rows.length === 0) continue;
    const before = [part, group].filter((one): one is Group => one !== undefined);
    const merged: { columns: SheetColumn[]; rows: Cell[][] } = files.get(file) ?? {
      columns: [...before.map(({ heading }) => ({ title: heading })), ...columns],
      rows: [],
    };
    files.set(file, merged);
    for (const { cells } of rows) merged.rows.push([...before.map(({ title }) => title), ...cells]);
  }
  return [...files].map(([file, table]) => ({ file, ...table }));
}

/** A cell in one line of words. */
export function cellText(cell: Cell): string {
  if (typeof cell === 'string') return cell;
  const { text, small, tick, picture } = cell;
  const words = picture === undefined ? text : `${picture} ${text}`;
  const main = tick === 'done' ? 'done' : words;
  return [main, small].filter(Boolean).join('; ');
}
