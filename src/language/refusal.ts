import type { Piece } from './incremental/piece.ts';
import type { Text } from './incremental/text.ts';

/** Why a file is not read, and the place in it where that shows, counted from zero. */
export interface Refusal {
  readonly message: string;
  readonly line: number;
  readonly column: number;
  /** Set where the file could not even be had. */
  readonly reason?: 'outside' | 'unreadable' | 'too large';
}

/** A plan of 20,000 statements has under two million characters. */
export const MOST_CHARACTERS = 4_000_000;
const MOST_STATEMENTS = 100_000;
/** A statement of a hundred clauses is far shorter. */
const MOST_IN_A_LINE = 20_000;
/** So many places that cannot be read are not a plan with slips in it. */
const MOST_ERRORS = 3000;
/** Characters that mean nothing. */
const MOST_JUNK = 50_000;

/** Why a text cannot be a plan at all and is not read, in words; undefined for one that is read. */
export function refuse(text: Text): string | undefined {
  if (text.length > MOST_CHARACTERS) {
    return `This file has ${(text.length / 1e6).toFixed(1)} million characters; at most ${MOST_CHARACTERS / 1e6} million are read. Is it a plan?`;
  }
  if (text.indexOf('\u0000', 0) >= 0)
    return 'This is no text: it holds bytes that no editor writes. Is it a plan?';
  return refuseLines(text.toString());
}

/** Why a stretch of whole lines is not read. */
export function refuseLines(lines: string): string | undefined {
  for (let at = 0; at < lines.length; ) {
    const end = lines.indexOf('\n', at);
    const next = end < 0 ? lines.length : end + 1;
    if (next - at > MOST_IN_A_LINE && longest(lines.slice(at, next)) > MOST_IN_A_LINE)
      return `A line of this file has more than ${MOST_IN_A_LINE} characters. Is it a plan?`;
    at = next;
  }
  return undefined;
}

/** Lines can also end with a lone carriage return. */
function longest(lines: string): number {
  return Math.max(...lines.split('\r').map((line) => line.length));
}

export const HOPELESS = 'Almost nothing in this file can be read as a statement. Is it a plan?';

/** Counts what makes reading a text hopeless, so that it can be given up early. */
export class Patience {
  #statements = 0;
  #errors = 0;
  #junk = 0;

  add({ statement, errors }: Piece): void {
    if (statement) this.#statements++;
    this.#errors += errors.length;
    for (const { from, length } of errors) if (from === 'lexer') this.#junk += length;
  }

  remove({ statement, errors }: Piece): void {
    if (statement) this.#statements--;
    this.#errors -= errors.length;
    for (const { from, length } of errors) if (from === 'lexer') this.#junk -= length;
  }

  /** Whether what means nothing in a stretch is too much already, before anything is made of it. */
  isOverWith(errors: readonly { readonly length: number }[]): boolean {
    const junk = errors.reduce((sum, { length }) => sum + length, 0);
    return this.#errors + errors.length > MOST_ERRORS || this.#junk + junk > MOST_JUNK;
  }

  /** Why a text with all that is not read; undefined while it is. */
  refusal(): string | undefined {
    if (this.#errors > MOST_ERRORS || this.#junk > MOST_JUNK) return HOPELESS;
    if (this.#statements > MOST_STATEMENTS)
      return `This file has more than ${MOST_STATEMENTS} statements. Spread the plan over files that it imports.`;
    return undefined;
  }
}
