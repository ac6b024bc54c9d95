/**
 * A paper before it is written as HTML, CSV or Markdown: tables of cells, with what a reader has to know above them.
 */
import type { Analysis } from '../../analysis/model.ts';
import type { Titles } from './titles.ts';

/** What every sheet is made from. */
export interface SheetInput {
  readonly analysis: Analysis;
  readonly titles: Titles;
}

export interface Sheet {
  readonly id: string;
  readonly title: string;
  /** Who uses it for what, in a sentence or two. */
  readonly about: string;
  /** What could hurt somebody who works from this sheet. */
  readonly cautions?: readonly string[];
  readonly tables: readonly SheetTable[];
  /** Stands where there is no table with a row. */
  readonly empty: string;
  /** Each table is a card of its own, in large letters, never broken over two pages. */
  readonly cards?: true;
}

export interface SheetTable {
  /** Name of its file among the tables; those of one sheet that share a name are one file. */
  readonly file: string;
  /** A card like those of a sheet of cards, among other tables. */
  readonly large?: true;
  /** A heading above all tables that follow one another with the same part; a column of its own in the file. */
  readonly part?: Group;
  /** What its rows have in common, told above it; a column of its own in the file. */
  readonly group?: Group;
  readonly columns: readonly SheetColumn[];
  readonly rows: readonly SheetRow[];
  /** Stands above it; the file has its own name for that. */
  readonly caption?: string;
  /** Below the table. */
  readonly notes?: readonly string[];
}

export interface Group {
  /** `Way`, `Box`: head of the column. */
  readonly heading: string;
  readonly title: string;
  readonly subtitle?: string | undefined;
}

export interface SheetColumn {
  readonly title: string;
  /** short: on one line, as narrow as can be. strong: bold; large: in large letters; wide: those, and room for a box and its socket on one line. */
  readonly kind?: 'tick' | 'short' | 'quantity' | 'write' | 'strong' | 'large' | 'wide';
  /** How much of the paper's width it takes, in percent; the others share the rest as they need. */
  readonly percent?: number;
  /** On paper, equal cells below one another are one. */
  readonly joined?: true;
}

export interface SheetRow {
  /** Name of what the row is about, as the plan and its JSON call it. */
  readonly of?: string;
  readonly cells: readonly Cell[];
}

export type Cell = string | RichCell;

export interface RichCell {
  readonly text: string;
  /** The figure behind the text, in the unit of the analysis. */
  readonly value?: number | undefined;
  /** A second line in smaller letters. */
  readonly small?: string | undefined;
  readonly tick?: 'open' | 'done';
  /** Room for a pen. */
  readonly write?: true;
  /** Number of a picture, as its badge in the drawing. */
  readonly picture?: number | undefined;
}

export const openBox: RichCell = { text: '', tick: 'open' };
export const doneBox: RichCell = { text: '', tick: 'done' };

export function tickBox(done: boolean): RichCell {
  return done ? doneBox : openBox;
}

/** A figure as it is read, with its value; a word instead while it is not known. */
export function quantity(
  value: number | undefined,
  format: (value: number) => string,
  unknown = 'not known',
): Cell {
  return value === undefined ? unknown : { text: format(value), value };
}
