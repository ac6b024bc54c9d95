import type { Cell, Group, Sheet, SheetColumn, SheetRow, SheetTable } from '../sheets/sheet.ts';
import { filledTables } from '../sheets/sheets.ts';
import { badge } from './badge.ts';
import { attribute, prose, text } from './html.ts';

/** A sheet as a section of the book. @param from The line that says which plan it is of. */
export function sheetHtml(sheet: Sheet, from: string): string {
  const tables = filledTables(sheet);
  const rows = tables.reduce((sum, table) => sum + table.rows.length + 2, 0);
  let part: string | undefined;
  const body = tables.map((table) => {
    const heading =
      table.part && table.part.title !== part ? `<h3 class="part">${text(table.part.title)}</h3>` : '';
    part = table.part?.title;
    return `${heading}${tableHtml(sheet, table)}`;
  });
  return `<section id="${sheet.id}" class="sheet${rows <= FEW_ROWS && !sheet.cards ? ' brief' : ''}" aria-labelledby="${sheet.id}-title">
<h2 id="${sheet.id}-title">${text(sheet.title)}</h2>
<p class="from">${text(from)}</p>
${sheet.about ? `<p class="about">${prose(sheet.about)}</p>` : ''}
${cautionsHtml(sheet.cautions ?? [])}
${tables.length === 0 ? `<p class="empty">${text(sheet.empty)}</p>` : body.join('\n')}
</section>`;
}

/** A sheet of so few rows, headings counted in, may stand below another on its page. */
const FEW_ROWS = 14;
/** A table of so few rows is not broken over two pages. */
const SHORT = 8;

export function cautionsHtml(cautions: readonly string[]): string {
  if (cautions.length === 0) return '';
  return `<ul class="cautions" aria-label="Cautions">${cautions.map((one) => `<li>${text(one)}</li>`).join('')}</ul>`;
}

function tableHtml(sheet: Sheet, table: SheetTable): string {
  const { group, caption, columns, rows, notes = [] } = withoutEmptyColumns(table);
  const name = group ? [table.part?.title, group.title].filter(Boolean).join(', ') : (caption ?? sheet.title);
  const heading = group
    ? groupHtml(group, table.part !== undefined)
    : caption === undefined
      ? ''
      : `<h3>${text(caption)}</h3>`;
  const grid =
    rows.length === 0
      ? ''
      : `<table aria-label="${attribute(name)}">${widthsHtml(columns)}<thead><tr>${columns.map(headHtml).join('')}</tr></thead>
<tbody>${bodyHtml(rows, columns)}</tbody></table>`;
  const card = sheet.cards || table.large;
  const kept = (rows.length <= SHORT ? ' together' : card ? '' : ' long') + (card ? ' card' : '');
  return `<div class="table${kept}">${heading}${grid}${notes.length === 0 ? '' : `<p class="note">${notes.map(text).join(' ')}</p>`}</div>`;
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
  const second = subtitle && subtitle !== title ? ` <span class="subtitle">${text(subtitle)}</span>` : '';
  return `<${level}><span dir="auto">${text(title)}</span>${second}</${level}>`;
}

function widthsHtml(columns: readonly SheetColumn[]): string {
  if (columns.every(({ percent }) => percent === undefined)) return '';
  const cols = columns.map(({ percent }) => (percent === undefined ? '<col>' : `<col width="${percent}%">`));
  return `<colgroup>${cols.join('')}</colgroup>`;
}

function headHtml({ title, kind }: SheetColumn): string {
  return `<th scope="col"${kind ? ` class="${kind}"` : ''}>${text(title)}</th>`;
}

function bodyHtml(rows: readonly SheetRow[], columns: readonly SheetColumn[]): string {
  const joined = columns.findIndex((column) => column.joined);
  const key = (row: SheetRow | undefined) => row && JSON.stringify(row.cells[joined]);
  return rows
    .map((row, i) => {
      if (joined < 0) return rowHtml(row, columns);
      const goesOn = i > 0 && key(rows[i - 1]) === key(row);
      let end = i + 1;
      while (!goesOn && end < rows.length && key(rows[end]) === key(row)) end++;
      return rowHtml(row, columns, { column: joined, rows: goesOn ? 0 : end - i });
    })
    .join('\n');
}

/** @param span The cell of this column reaches over so many rows; over none, and it is part of one above. */
function rowHtml(
  { of, cells }: SheetRow,
  columns: readonly SheetColumn[],
  span?: { readonly column: number; readonly rows: number },
): string {
  const about = of === undefined ? '' : ` data-of="${attribute(of)}"`;
  const shown = cells.map((cell, i) => {
    if (i !== span?.column) return cellHtml(cell, columns[i]);
    return span.rows === 0 ? '' : cellHtml(cell, columns[i], span.rows);
  });
  return `<tr${about}>${shown.join('')}</tr>`;
}

function cellHtml(cell: Cell, column: SheetColumn | undefined, rows = 1): string {
  const rich = typeof cell === 'string' ? { text: cell } : cell;
  const kind = rich.write ? 'write' : column?.kind;
  const small = rich.small ? `<small dir="auto">${withSockets(rich.small)}</small>` : '';
  const words =
    rich.value === undefined
      ? withSockets(rich.text)
      : `<data value="${rich.value}">${text(rich.text)}</data>`;
  const main = rich.tick
    ? tickHtml(rich.tick)
    : rich.picture === undefined
      ? words
      : `${badge(rich.picture)} ${words}`;
  const span = rows === 1 ? '' : ` rowspan="${rows}"`;
  return `<td${kind ? ` class="${kind}"` : ''}${span} dir="auto">${main}${small}</td>`;
}

/** A box and its socket: the dot stays with what it follows, so that no line begins with it. */
function withSockets(words: string): string {
  return text(words).replaceAll(' · ', '\u00a0· ');
}

/** A box to tick, drawn so that it prints everywhere. */
function tickHtml(state: 'open' | 'done'): string {
  const mark =
    state === 'done' ? '<path d="M3 8l4 4 7-9" fill="none" stroke="#000" stroke-width="2.4"/>' : '';
  return `<svg class="box" viewBox="0 0 16 16" width="16" height="16" role="img" aria-label="${state === 'done' ? 'done' : 'to do'}"><rect x="1" y="1" width="14" height="14" fill="#fff" stroke="#000" stroke-width="1.4"/>${mark}</svg>`;
}
