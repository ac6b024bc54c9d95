import type { Lexer } from 'langium';
import { HOPELESS, Patience } from '../refusal.ts';
import type { FeedplotParser } from './parser.ts';
import { type Piece, type Place, placeIn, start } from './piece.ts';
import type { Text } from './text.ts';
import { lexStretch } from './tokens.ts';

/**
 * Tokens are many times larger than their text, so a file is read window by window and the tokens of one are gone
 * before those of the next are made.
 */
const WINDOW = 1 << 16;

/**
 * The pieces of a whole file: the reference that reading an edit must agree with.
 *
 * @returns why the file cannot be a plan, once that is clear: what is hopeless is not read to its end.
 */
export function readAll(parser: FeedplotParser, lexer: Lexer, text: Text): Piece[] | string {
  const pieces: Piece[] = [];
  const patience = new Patience();
  let from: Place = start;
  let window = WINDOW;
  while (true) {
    const to = text.nextLine(Math.min(text.length, from.offset + window));
    const stretch = lexStretch(lexer, text, from, to);
    if (patience.isOverWith(stretch.errors)) return HOPELESS;
    const close = stretch.opensComment && to < text.length ? text.indexOf('*/', to - 1) : -1;
    if (close >= 0) {
      window = close + 2 - from.offset;
      continue;
    }
    // The last statement, and comments behind it, may go on in the next window.
    const whole =
      to === text.length ? stretch.runs.length : stretch.runs.findLastIndex((run) => run.tokens.length > 0);
    for (const run of stretch.runs.slice(0, Math.max(0, whole))) {
      const piece = parser.readPiece(run, stretch);
      pieces.push(piece);
      patience.add(piece);
      const refusal = patience.refusal();
      if (refusal !== undefined) return refusal;
    }
    if (to === text.length) return pieces;
    if (whole <= 0) {
      window *= 2;
      continue;
    }
    from = placeIn(from, stretch.runs[whole]!.begin);
    window = WINDOW;
  }
}
