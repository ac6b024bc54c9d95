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
  const words = tokens.map((token) => ({ token, comment: false }));
  const comments = hidden.map((token) => ({ token, comment: true }));
  const all = [...words, ...comments].sort((a, b) => a.token.startOffset - b.token.startOffset);
  let end = 0;
  return all.map(({ token, comment }) => {
    const start = token.startOffset;
    const newlines = text.slice(end, start).match(/\r?\n|\r/g)?.length ?? 0;
    end = start + token.image.length;
    return { start, end, text: token.image, kind: token.tokenType.name, comment, newlines };
  });
}
