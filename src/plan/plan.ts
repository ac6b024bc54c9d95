/**
 * A plan as the analysis sees it: statements in order, each with its fact. Where the text lies and how it was read is
 * behind `Source`; nothing after this folder knows a syntax tree.
 */
import type { Fact, FactOf } from './facts.ts';

/** Lines and columns count from zero, columns in UTF-16 units, as the language server protocol does. */
export interface TextRange {
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
}

/**
 * Where a statement is written. Ranges are looked up when asked for, because they move with every line typed above
 * while what the statement says stays the same.
 */
export interface Source {
  /** URI of the file. */
  readonly file: string;
  /**
   * The range of a part of the statement: a property of its syntax (`name`, `cables`), an item of a list
   * (`targets/1`), a property of a child (`from.port`, `groups/0.interfaces`). Without a part, and where the part is
   * not written, the statement's first line.
   */
  range(part?: string): TextRange;
  /** The whole statement, its block included. */
  whole(): TextRange;
}

/** Characters of a name that every paper has room for. */
export const LONGEST_NAME = 100;

/** Something written wrongly in one statement, told without looking at any other. */
export interface Fault {
  /** The check that speaks of it. */
  readonly check: string;
  readonly part: string;
  readonly message: string;
  /** A replacement of the part's text that mends it, and what it is called. */
  readonly fix?: { readonly title: string; readonly text: string };
}

/** A statement of a plan. Its identity lasts as long as its meaning: retyping a comment or moving it keeps it. */
export interface Statement<F extends Fact = Fact> {
  readonly fact: F;
  /** The words in quotes behind the name, for people. */
  readonly label: string | undefined;
  /** The comment between slash-star-star and star-slash directly above. */
  readonly description: string | undefined;
  readonly faults: readonly Fault[];
  readonly source: Source;
}

export type StatementOf<K extends Fact['kind']> = Statement<FactOf<K>>;

/** A file of a plan that could not be had, and the statement that asked for it. */
export interface MissingFile {
  readonly statement: StatementOf<'import'>;
  readonly reason: 'not found' | 'outside' | 'has a plan' | 'unreadable' | 'too large' | 'too many';
}

/** A place in the text that could not be read as a statement. */
export interface Unreadable {
  readonly file: string;
  readonly range: TextRange;
  readonly message: string;
}

/** A plan: the statements of its own file, then of the files it imports in order, then of the shipped library. */
export interface Plan {
  /** URI of the plan's own file. */
  readonly file: string;
  /** URIs of all its files, the own one first, the library's last. */
  readonly files: readonly string[];
  readonly statements: readonly Statement[];
  readonly missingFiles: readonly MissingFile[];
  /** Files of the shipped library: what is declared there is not reported as unused. */
  readonly libraryFiles: ReadonlySet<string>;
}
