import { oneLine } from './printable.ts';
import { textWidth } from './text-width.ts';
import { wrapText } from './wrap.ts';

/** A table before it is drawn: as text, Markdown or a sheet. */
export interface Table {
  /** What a person asks for: `links`. */
  readonly name: string;
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly string[])[];
  /** A sentence instead of rows when there are none. */
  readonly empty: string;
}

export interface Column {
  readonly title: string;
  /** Numbers stand to the right. */
  readonly right?: boolean;
}

const GAP = '  ';
/** No column is squeezed below this. */
const NARROWEST = 8;
/** Nobody reads a longer name in a table; it is cut. */
const LONGEST_CELL = 200;

/**
 * A table as lines of at most `width` columns, nothing left out: where it is too wide, the widest columns are wrapped.
 * The first line holds the titles.
 */
export function textTable({ columns, rows }: Table, width: number): string[] {
  const cells = rows.map((row) => row.map((cell) => oneLine(cell, LONGEST_CELL)));
  const widths = squeeze(
    columns.map(({ title }, i) =>
      cells.reduce((most, row) => Math.max(most, textWidth(row[i] ?? '')), textWidth(title)),
    ),
    width,
  );
  const titles = columns.map((column) => column.title);
  return [titles, ...cells].flatMap((row) => drawRow(row, columns, widths));
}

/** Takes from the widest column until all fit. */
function squeeze(wanted: readonly number[], width: number): number[] {
  const widths = [...wanted];
  let excess = widths.reduce((sum, one) => sum + one, 0) + GAP.length * (widths.length - 1) - width;
  while (excess > 0) {
    const widest = widths.indexOf(Math.max(...widths));
    if (widths[widest]! <= NARROWEST) break;
    widths[widest]!--;
    excess--;
  }
  return widths;
}

function drawRow(row: readonly string[], columns: readonly Column[], widths: readonly number[]): string[] {
  const wrapped = columns.map((_, i) => wrapText(row[i] ?? '', widths[i]!));
  const height = Math.max(...wrapped.map((lines) => lines.length));
  return Array.from({ length: height }, (_, line) =>
    columns
      .map(({ right }, i) => {
        const text = wrapped[i]![line] ?? '';
        const space = ' '.repeat(Math.max(0, widths[i]! - textWidth(text)));
        return right ? space + text : text + space;
      })
      .join(GAP)
      .trimEnd(),
  );
}
