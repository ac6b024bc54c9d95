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
  /** Numbers stand to the right and are not wrapped. */
  readonly right?: boolean;
}

const GAP = '  ';
/** No column is squeezed below this. */
const NARROWEST = 8;
/** Nobody reads a longer name in a table; it is cut. */
const LONGEST_CELL = 200;

/**
 * A table as lines of at most `width` columns, nothing left out: where it is too wide, the widest columns are wrapped
 * between words, and within words only where that is not enough. The first line holds the titles.
 */
export function textTable({ columns, rows }: Table, width: number): string[] {
  const cells = rows.map((row) => row.map((cell) => oneLine(cell, LONGEST_CELL)));
  const titles = columns.map((column) => column.title);
  const widest = (measure: (text: string) => number) =>
    titles.map((title, i) =>
      cells.reduce((most, row) => Math.max(most, measure(row[i] ?? '')), textWidth(title)),
    );
  const words = widest((text) => Math.max(...text.split(' ').map(textWidth)));
  const whole = columns.map(({ right }, i) => (right ? Number.POSITIVE_INFINITY : words[i]!));
  const widths = squeeze(
    squeeze(widest(textWidth), whole, width),
    titles.map(() => NARROWEST),
    width,
  );
  return [titles, ...cells].flatMap((row) => drawRow(row, columns, widths));
}

/** Takes from the widest columns until all fit, but from none what it needs at least. */
function squeeze(wanted: readonly number[], least: readonly number[], width: number): number[] {
  const widths = [...wanted];
  let excess = widths.reduce((sum, one) => sum + one, 0) + GAP.length * (widths.length - 1) - width;
  for (; excess > 0; excess--) {
    let widest = -1;
    for (const [i, one] of widths.entries()) {
      if (one > least[i]! && one > (widths[widest] ?? 0)) widest = i;
    }
    if (widest < 0) break;
    widths[widest]!--;
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
