import type { Cell, Group, Sheet, SheetColumn, SheetRow, SheetTable } from '../sheets/sheet.ts';
import { filledTables } from '../sheets/sheets.ts';
import { badge } from './badge.ts';
import { attribute, prose, text } from './html.ts';

/** A sheet as a section of the book. @param from The line that says which plan it is of. */
export function sheetHtml(sheet: Sheet, from: string): string {
  const tables = filledTables(sheet);
  let part: string | undefined;
  const body = tables.map((table) => {
    const heading =
      table.part && table.part.title !== part ? `<h3 class="part">${text(table.part.title)}</h3>` : '';
    part = table.part?.title;
    return `${heading}${tableHtml(sheet, table)}`;
  });
  return `<section id="${sheet.id}" class="sheet" aria-labelledby="${sheet.id}-title">
<h2 id="${sheet.id}-title">${text(sheet.title)}</h2>
<p class="from">${text(from)}</p>
${sheet.about ? `<p class="about">${prose(sheet.about)}</p>` : ''}
${cautionsHtml(sheet.cautions ?? [])}
${tables.length === 0 ? `<p class="empty">${text(sheet.empty)}</p>` : body.join('\n')}
</section>`;
}

/** A table of so few rows is not broken over two pages. */
const SHORT = 8;

export function cautionsHtml(cautions: readonly string[]): string {
  if (cautions.length === 0) return '';
  return `<ul class="cautions" aria-label="Cautions">${cautions.map((one) => `<li>${text(one)}</li>`).join('')}</ul>`;
}

function tableHtml(sheet: Sheet, table: SheetTable): string {
  const { group, columns, rows, notes = [] } = withoutEmptyColumns(table);
  const name = group ? [table.part?.title, group.title].filter(Boolean).join(', ') : sheet.title;
  const grid =
    rows.length === 0
      ? ''
      : `<table aria-label="${attribute(name)}"><thead><tr>${columns.map(headHtml).join('')}</tr></thead>
<tbody>${rows.map((row) => rowHtml(row, columns)).join('\n')}</tbody></table>`;
  const kept = (rows.length <= SHORT ? ' together' : '') + (sheet.cards || table.large ? ' card' : '');
  return `<div class="table${kept}">${group ? groupHtml(group, table.part !== undefined) : ''}${grid}${notes.map((note) => `<p class="note">${text(note)}</p>`).join('')}</div>`;
}

/** Columns in which no row says anything take room for nothing; those for a pen stay. */
function withoutEmptyColumns(table: SheetTable): SheetTable {
  const kept = table.columns.map(
    (column, i) => column.kind === 'write' || table.rows.some(({ cells }) => !isEmpty(cells[i])),
  );
  if (!kept.includes(false)) return table;
  const keep = <T>(list: readonly T[]) => list.filter((_, i) => kept[i]);
  return {
    ...table,
    columns: keep(table.columns),
    rows: table.rows.map((row) => ({ ...row, cells: keep(row.cells) })),
  };
}

function isEmpty(cell: Cell | undefined): boolean {
  if (cell === undefined || typeof cell === 'string') return !cell;
  return cell.text === '' && !cell.small && !cell.tick && !cell.write;
}

function groupHtml({ title, subtitle }: Group, below: boolean): string {
  const level = below ? 'h4' : 'h3';
  const second = subtitle ? ` <span class="subtitle">${text(subtitle)}</span>` : '';
  return `<${level}><span dir="auto">${text(title)}</span>${second}</${level}>`;
}

function headHtml({ title, kind }: SheetColumn): string {
  return `<th scope="col"${kind ? ` class="${kind}"` : ''}>${text(title)}</th>`;
}

function rowHtml({ of, cells }: SheetRow, columns: readonly SheetColumn[]): string {
  const about = of === undefined ? '' : ` data-of="${attribute(of)}"`;
  return `<tr${about}>${cells.map((cell, i) => cellHtml(cell, columns[i])).join('')}</tr>`;
}

function cellHtml(cell: Cell, column: SheetColumn | undefined): string {
  const rich = typeof cell === 'string' ? { text: cell } : cell;
  const kind = rich.write ? 'write' : column?.kind;
  const small = rich.small ? `<small dir="auto">${text(rich.small)}</small>` : '';
  const words =
    rich.value === undefined ? text(rich.text) : `<data value="${rich.value}">${text(rich.text)}</data>`;
  const main = rich.tick
    ? tickHtml(rich.tick)
    : rich.picture === undefined
      ? words
      : `${badge(rich.picture)} ${words}`;
  return `<td${kind ? ` class="${kind}"` : ''} dir="auto">${main}${small}</td>`;
}

/** A box to tick, drawn so that it prints everywhere. */
function tickHtml(state: 'open' | 'done'): string {
  const mark =
    state === 'done' ? '<path d="M3 8l4 4 7-9" fill="none" stroke="#000" stroke-width="2.4"/>' : '';
  return `<svg class="box" viewBox="0 0 16 16" width="16" height="16" role="img" aria-label="${state === 'done' ? 'done' : 'to do'}"><rect x="1" y="1" width="14" height="14" fill="#fff" stroke="#000" stroke-width="1.4"/>${mark}</svg>`;
}
