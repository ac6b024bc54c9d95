import type { LexerResult } from 'langium';

/** A word, a sign or a comment of a file. */
export interface Item {
  readonly start: number;
  readonly end: number;
  readonly text: string;
  /** The kind of token: a keyword's own text, or `STRING`, `NUMBER`, … */
  readonly kind: string;
  readonly comment: boolean;
  /** How many line ends stand between the item before and this one. */
  readonly newlines: number;
}

/** Everything that is written in a file but white space, in order. */
export function itemsOf(text: string, { tokens, hidden }: LexerResult): Item[] {
  const comments = new Set(hidden);
  const all =
    hidden.length > 0 ? [...tokens, ...hidden].sort((a, b) => a.startOffset - b.startOffset) : tokens;
  let end = 0;
  return all.map((token) => {
    const start = token.startOffset;
    const gap = text.slice(end, start);
    const newlines = gap === ' ' ? 0 : (gap.match(/\r?\n|\r/g)?.length ?? 0);
    end = start + token.image.length;
    const comment = comments.has(token);
    return { start, end, text: token.image, kind: token.tokenType.name, comment, newlines };
  });
}
