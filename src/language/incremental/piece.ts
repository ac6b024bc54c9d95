import type { CstNode } from 'langium';
import type { Position } from 'vscode-languageserver-types';
import type { Statement } from '../generated/ast.ts';

/** Something in a piece that could not be read; its position is relative to the piece. */
export interface PieceError {
  readonly from: 'lexer' | 'parser';
  readonly message: string;
  readonly at: number;
  readonly length: number;
  readonly line: number;
  readonly column: number;
}

/**
 * The smallest stretch of a file that is read alone: one statement with the comments above it. It begins where the
 * statement before it ends and ends with its own last token, so the pieces of a file cover all of its text up to the
 * last token or comment. What a piece holds follows from its own text alone; only where it lies can change.
 *
 * What stands before the first statement is a piece without one, and so are comments behind the last.
 */
export class Piece {
  /** Where it begins: offset, line and column (from zero) in the file. */
  offset: number;
  line: number;
  column: number;
  readonly length: number;
  /** Where its first token begins, and on which of its lines; -1 if it is comments alone. */
  readonly keywordAt: number;
  readonly keywordLine: number;
  /** Its nodes directly below the root of the file: comments and the statement. */
  items: readonly CstNode[] = [];
  statement: Statement | undefined = undefined;
  errors: readonly PieceError[] = none;
  /** An open comment in it reads to the end of the file as soon as somebody closes it there. */
  opensComment = false;

  constructor(place: Place, length: number, keywordAt: number, keywordLine: number) {
    this.offset = place.offset;
    this.line = place.line;
    this.column = place.column;
    this.length = length;
    this.keywordAt = keywordAt;
    this.keywordLine = keywordLine;
  }

  get end(): number {
    return this.offset + this.length;
  }

  /** Offset of the first token in the file; infinity for comments alone. */
  get keywordOffset(): number {
    return this.keywordAt < 0 ? Number.POSITIVE_INFINITY : this.offset + this.keywordAt;
  }

  /** A position in the file from one in the piece. Only what stands on its first line moves sideways with it. */
  position(line: number, column: number): Position {
    return { line: this.line + line, character: line === 0 ? this.column + column : column };
  }

  moveTo(place: Place): void {
    this.offset = place.offset;
    this.line = place.line;
    this.column = place.column;
  }
}

/** A place in a file, counted from zero. */
export interface Place {
  readonly offset: number;
  readonly line: number;
  readonly column: number;
}

export const start: Place = { offset: 0, line: 0, column: 0 };

const none: readonly PieceError[] = [];

/** A place in the file from one in a stretch that begins at `from`. */
export function placeIn(from: Place, place: Place): Place {
  return {
    offset: from.offset + place.offset,
    line: from.line + place.line,
    column: place.line === 0 ? from.column + place.column : place.column,
  };
}
