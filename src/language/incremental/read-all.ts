import type { Lexer } from 'langium';
import type { FeedplotParser } from './parser.ts';
import { type Piece, type Place, placeIn, start } from './piece.ts';
import type { Text } from './text.ts';
import { lexStretch } from './tokens.ts';

/**
 * Tokens are many times larger than their text, so a file is read window by window and the tokens of one are gone
 * before those of the next are made.
 */
const WINDOW = 1 << 16;

/** The pieces of a whole file: the reference that reading an edit must agree with. */
export function readAll(parser: FeedplotParser, lexer: Lexer, text: Text): Piece[] {
  const pieces: Piece[] = [];
  let from: Place = start;
  let window = WINDOW;
  while (true) {
    const to = text.nextLine(Math.min(text.length, from.offset + window));
    const stretch = lexStretch(lexer, text, from, to);
    const close = stretch.opensComment && to < text.length ? text.indexOf('*/', to - 1) : -1;
    if (close >= 0) {
      window = close + 2 - from.offset;
      continue;
    }
    // The last statement, and comments behind it, may go on in the next window.
    const whole =
      to === text.length ? stretch.runs.length : stretch.runs.findLastIndex((run) => run.tokens.length > 0);
    for (const run of stretch.runs.slice(0, Math.max(0, whole))) pieces.push(parser.readPiece(run, stretch));
    if (to === text.length) return pieces;
    if (whole <= 0) {
      window *= 2;
      continue;
    }
    from = placeIn(from, stretch.runs[whole]!.begin);
    window = WINDOW;
  }
}
