import type { Lexer } from 'langium';
import { MOST_CHARACTERS, refuseLines } from '../refusal.ts';
import type { FileTree } from './file-tree.ts';
import type { FeedplotParser } from './parser.ts';
import { type Piece, type Place, placeIn, start } from './piece.ts';
import type { Text } from './text.ts';
import { lexStretch, opensStatement, type Run, type Stretch } from './tokens.ts';

/** [start, end) of a text was replaced; `text` is the text after it. */
export interface TextEdit {
  readonly start: number;
  readonly end: number;
  readonly before: Text;
  readonly text: Text;
}

/** What an edit touches, in pieces of the tree before it. */
interface Bounds {
  /** The first piece that is looked at again. */
  readonly first: number;
  /** The piece whose keyword must come out where it was; the number of pieces for the end of the file. */
  readonly sync: number;
}

/**
 * Brings a tree to the text after an edit. Only the stretch around the edit is lexed again, and only pieces whose text
 * is new are parsed; the result is the same as reading all of the text afresh.
 *
 * The stretch begins with the last statement whose keyword stands above the edited line: what is above that line and
 * begins a statement still does. It ends with a statement whose keyword stands below, once the lexer has come
 * out there with the same token: from there on it would go on as before. Only a block comment can prevent that.
 */
export function applyEdit(tree: FileTree, edit: TextEdit, parser: FeedplotParser, lexer: Lexer): void {
  const { before } = edit;
  const delta = edit.text.length - before.length;
  if (tree.refusal !== undefined || isRefused(edit, delta)) {
    parser.readAgain(tree, edit.text);
    return;
  }
  const { pieces } = tree;
  let bounds = boundsOf(pieces, before.lineStart(edit.start), before.nextLine(edit.end));
  let stretch = lex(tree, bounds, edit.text, delta, lexer);
  for (let grow = 1; ; grow *= 2) {
    const wider = widen(tree, bounds, stretch, edit.text, delta, grow);
    if (!wider) break;
    bounds = wider;
    stretch = lex(tree, bounds, edit.text, delta, lexer);
  }
  const old = pieces.slice(bounds.first, bounds.sync + 1);
  const { ahead, behind } = unchanged(old, stretch, edit, delta);
  const last = stretch.runs.length - behind;
  tree.apply({
    text: edit.text,
    first: bounds.first + ahead,
    count: old.length - ahead - behind,
    pieces: stretch.runs.slice(ahead, last).map((run) => parser.readPiece(run, stretch)),
    movedBy: { offset: delta, line: linesMoved(pieces[bounds.sync], stretch, delta) },
  });
  // Those on the edited line have moved sideways as well.
  stretch.runs.slice(last).forEach((run, i) => {
    old[old.length - behind + i]!.moveTo(placeIn(stretch.from, run.begin));
  });
  if (tree.isHopeless) parser.readAgain(tree, edit.text);
}

/** Whether what an edit brought in makes the text one that is not read. */
function isRefused({ start, end, text }: TextEdit, delta: number): boolean {
  const typed = text.slice(start, end + delta);
  const lines = text.slice(text.lineStart(start), text.nextLine(end + delta));
  return text.length > MOST_CHARACTERS || typed.includes('\u0000') || refuseLines(lines) !== undefined;
}

function boundsOf(pieces: readonly Piece[], lineStart: number, nextLine: number): Bounds {
  return {
    first: Math.max(0, firstBehind(pieces, lineStart) - 1),
    sync: withKeyword(pieces, firstBehind(pieces, nextLine)),
  };
}

function lex(tree: FileTree, { first, sync }: Bounds, text: Text, delta: number, lexer: Lexer): Stretch {
  const from: Place = tree.pieces[first] ?? start;
  const last = tree.pieces[sync];
  return lexStretch(lexer, text, first === 0 ? start : from, last ? last.end + delta : text.length);
}

/** Wider bounds, where the stretch has not come out with its last statement in its place or a comment reaches out of it. */
function widen(
  tree: FileTree,
  { first, sync }: Bounds,
  stretch: Stretch,
  text: Text,
  delta: number,
  grow: number,
): Bounds | undefined {
  const { pieces } = tree;
  const last = pieces[sync];
  if (last && !comesOut(last.keywordOffset + delta, stretch)) {
    return { first, sync: withKeyword(pieces, sync + grow) };
  }
  if (last && stretch.opensComment) {
    const close = text.indexOf('*/', last.end + delta - 1);
    if (close >= 0) return { first, sync: withKeyword(pieces, firstBehind(pieces, close + 2 - delta)) };
  }
  // A comment that was open may close now, and take the keyword behind it with it.
  const open = tree.firstOpenComment();
  const ahead = Math.max(0, open - 1);
  if (open >= 0 && ahead < first && stretch.lexed.includes('*/')) return { first: ahead, sync };
  return undefined;
}

/** Whether a statement begins at this offset of the new text. */
function comesOut(offset: number, { tokens, from }: Stretch): boolean {
  const token = tokens.findLast(({ startOffset }) => from.offset + startOffset <= offset);
  return token !== undefined && from.offset + token.startOffset === offset && opensStatement(token);
}

/** How many pieces at each end of the stretch have the text they had. */
function unchanged(
  old: readonly Piece[],
  { from, runs }: Stretch,
  edit: TextEdit,
  delta: number,
): { ahead: number; behind: number } {
  const same = (piece: Piece | undefined, run: Run | undefined, moved: number) =>
    piece !== undefined &&
    run !== undefined &&
    piece.offset + moved === from.offset + run.begin.offset &&
    piece.length === run.length;
  let ahead = 0;
  while (same(old[ahead], runs[ahead], 0) && old[ahead]!.end <= edit.start) ahead++;
  let behind = 0;
  const most = Math.min(old.length, runs.length) - ahead;
  while (behind < most) {
    const piece = old.at(-1 - behind);
    if (!same(piece, runs.at(-1 - behind), delta) || piece!.offset < edit.end) break;
    behind++;
  }
  return { ahead, behind };
}

function linesMoved(sync: Piece | undefined, { from, tokens }: Stretch, delta: number): number {
  if (!sync) return 0;
  const keyword = tokens.findLast(
    ({ startOffset }) => from.offset + startOffset === sync.keywordOffset + delta,
  );
  return keyword ? from.line + keyword.startLine! - 1 - (sync.line + sync.keywordLine) : 0;
}

/** Index of the first piece whose first token stands at or behind an offset. */
function firstBehind(pieces: readonly Piece[], offset: number): number {
  let low = 0;
  let high = pieces.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (pieces[middle]!.keywordOffset < offset) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The piece itself, or the end of the file where it is comments alone. */
function withKeyword(pieces: readonly Piece[], index: number): number {
  return index < pieces.length && pieces[index]!.keywordAt >= 0 ? index : pieces.length;
}
