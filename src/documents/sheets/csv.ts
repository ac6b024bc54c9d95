import { stringify } from 'csv-stringify/sync';
import { oneLine } from '../printable.ts';
import { cellText, type MergedTable } from './merged.ts';
import type { Cell } from './sheet.ts';

/** Nobody reads a longer cell, and spreadsheets cut them at 32,767 characters. */
const LONGEST_CELL = 8000;

/**
 * A table as CSV (RFC 4180, published) in UTF-8 with a byte order mark, by which spreadsheets know the encoding. Where
 * all figures of a column have one unit, it stands in the head and the cells are numbers.
 */
export function csvOf({ columns, rows }: MergedTable): string {
  const units = columns.map((_, i) => unitOf(rows.map((row) => row[i] ?? '')));
  const head = columns.map(({ title }, i) => (units[i] ? `${title} (${units[i]})` : title));
  const body = rows.map((row) =>
    row.map((cell, i) => {
      const number = units[i] === undefined ? undefined : numberOf(cell)?.number;
      return number ?? safeCell(cellText(cell));
    }),
  );
  return stringify([head.map(safeCell), ...body], { bom: true, record_delimiter: 'windows' });
}

/** The one unit of all figures in a column, empty for bare numbers; undefined when there are none or several. */
function unitOf(cells: readonly Cell[]): string | undefined {
  const units = new Set(cells.flatMap((cell) => numberOf(cell)?.unit ?? []));
  return units.size === 1 ? [...units][0] : undefined;
}

/** A cell that is a figure: its number as it is read, and its unit. */
function numberOf(cell: Cell): { number: number; unit: string } | undefined {
  if (typeof cell === 'string' || cell.value === undefined) return undefined;
  const [, digits, unit = ''] = /^(-?\d+(?:\.\d+)?)(?: (\S+))?$/.exec(cell.text) ?? [];
  return digits === undefined ? undefined : { number: Number(digits), unit };
}

/**
 * Text that no spreadsheet takes for a formula: one that begins like one gets an apostrophe before it (OWASP, "CSV
 * Injection", published).
 */
export function safeCell(words: string): string {
  const line = oneLine(words, LONGEST_CELL);
  return /^[\s"']*[=+\-@\t\r＝＋－＠]/u.test(line) ? `'${line}` : line;
}
