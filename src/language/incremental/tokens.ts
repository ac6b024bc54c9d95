import type { ILexingError, IToken } from 'chevrotain';
import type { Lexer } from 'langium';
import { isStatementWord } from '../words.ts';
import type { Place } from './piece.ts';
import type { Text } from './text.ts';

/** The tokens of one piece, with positions as the lexer gives them: relative to the stretch that was lexed. */
export interface Run {
  /** Where the piece begins in the stretch. */
  readonly begin: Place;
  /** Its length in the text. */
  readonly length: number;
  readonly tokens: IToken[];
  readonly comments: IToken[];
  readonly errors: ILexingError[];
}

/** A stretch of a file, cut into pieces. */
export interface Stretch {
  readonly from: Place;
  readonly lexed: string;
  readonly tokens: readonly IToken[];
  readonly runs: readonly Run[];
  readonly errors: readonly ILexingError[];
  /** It holds a comment that is not closed in it. */
  readonly opensComment: boolean;
}

/**
 * Lexes [from, to) of a text and cuts the tokens before every word that opens a statement. These words are reserved
 * and stand nowhere inside a statement, so the cut needs no parser and no broken statement can hide the next.
 *
 * @param from The end of a token or the beginning of the file: the lexer starts afresh there.
 */
export function lexStretch(lexer: Lexer, text: Text, from: Place, to: number): Stretch {
  const lexed = text.slice(from.offset, to);
  const { tokens, hidden, errors } = lexer.tokenize(lexed);
  return {
    from,
    lexed,
    tokens,
    runs: cutRuns(tokens, hidden, errors, lexed.length),
    errors,
    opensComment: errors.some((error) => isOpenComment(error, lexed)),
  };
}

export function isOpenComment(error: ILexingError, lexed: string): boolean {
  return lexed.slice(error.offset, error.offset + error.length).includes('/*');
}

function cutRuns(tokens: IToken[], hidden: IToken[], errors: ILexingError[], length: number): Run[] {
  const runs: Run[] = [];
  let begin: Place = { offset: 0, line: 0, column: 0 };
  let comment = 0;
  let error = 0;
  const close = (first: number, next: number) => {
    const last = tokens[next - 1]!;
    const end = last.startOffset + last.image.length;
    const firstComment = comment;
    while (comment < hidden.length && hidden[comment]!.startOffset < end) comment++;
    const firstError = error;
    while (error < errors.length && errors[error]!.offset < end) error++;
    runs.push({
      begin,
      length: end - begin.offset,
      tokens: tokens.slice(first, next),
      comments: hidden.slice(firstComment, comment),
      errors: errors.slice(firstError, error),
    });
    begin = { offset: end, line: last.endLine! - 1, column: last.endColumn! };
  };
  let first = 0;
  for (let i = 1; i < tokens.length; i++) {
    if (!opensStatement(tokens[i]!)) continue;
    close(first, i);
    first = i;
  }
  if (first < tokens.length) close(first, tokens.length);
  if (comment < hidden.length || error < errors.length) {
    runs.push({
      begin,
      length: length - begin.offset,
      tokens: [],
      comments: hidden.slice(comment),
      errors: errors.slice(error),
    });
  }
  return runs;
}

/** The keyword, not a name that is spelled like it: keywords are their own type of token. */
export function opensStatement(token: IToken): boolean {
  return isStatementWord(token.tokenType.name);
}
