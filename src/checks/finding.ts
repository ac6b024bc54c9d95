import type { Statement, TextRange } from '../plan/plan.ts';

/**
 * error: it cannot work, or breaks a stated limit. warning: it works but is doubtful. info: a choice that the
 * planner should know of.
 */
export type Severity = 'error' | 'warning' | 'info';

/** A place in the plan's text: a part of a statement, or a range of a file where nothing could be read. */
export type Place =
  | { readonly statement: Statement; readonly part?: string | undefined }
  | { readonly file: string; readonly range: TextRange };

/** One thing that is wrong with a plan, in one wording for every face of the tool. */
export interface Finding {
  /** Name of the check that speaks. */
  readonly check: string;
  readonly severity: Severity;
  /** What is wrong, with its figures, and what would mend it. */
  readonly message: string;
  readonly place: Place;
  /** What it is about: a name, `a.out1 -> b.in1` or `source -> destination`, as `accept` writes it. */
  readonly subject: string | null;
  /** The segment in which it holds; null: always. */
  readonly segment: string | null;
  /** Other places that have a part in it. */
  readonly related: readonly { readonly place: Place; readonly message: string }[];
  /** Made when they are asked for. */
  readonly fixes: readonly Fix[];
}

/** A change of the text that mends a finding. */
export interface Fix {
  /** What it does, as a menu shows it: `Use a cable that reaches: os2`. */
  readonly title: string;
  readonly edits: readonly Edit[];
}

export type Edit =
  /** Other text in place of a part of a statement. */
  | { readonly kind: 'replace'; readonly statement: Statement; readonly part: string; readonly text: string }
  /** A clause added at the end of a statement, before its block if it has one. */
  | { readonly kind: 'append'; readonly statement: Statement; readonly text: string }
  /** A line inside a statement's block, which is made if it has none. */
  | { readonly kind: 'insertInside'; readonly statement: Statement; readonly text: string }
  /** A line of its own behind a statement. */
  | { readonly kind: 'insertAfter'; readonly statement: Statement; readonly text: string }
  /** Lines at the top of a file. */
  | { readonly kind: 'insertOnTop'; readonly file: string; readonly text: string }
  /** The statement's lines taken out. */
  | { readonly kind: 'delete'; readonly statement: Statement };

/** Where a place is now. */
export function locate(place: Place): { readonly file: string; readonly range: TextRange } {
  if ('range' in place) return place;
  const { source } = place.statement;
  return { file: source.file, range: source.range(place.part) };
}
