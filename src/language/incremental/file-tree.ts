import { EOF, type ILexingError, type IRecognitionException, type IToken } from 'chevrotain';
import type { LangiumDocument, Mutable, ParseResult } from 'langium';
import type { Import, PlanFile, Statement } from '../generated/ast.ts';
import { Patience, type Refusal } from '../refusal.ts';
import { adopt } from './node-builder.ts';
import type { Piece, PieceError } from './piece.ts';
import type { Text } from './text.ts';
import { FileRoot } from './tree.ts';

/** An error of a file's text, with its place in the file. */
export interface FileError extends Pick<PieceError, 'from' | 'message' | 'length'> {
  readonly offset: number;
  readonly line: number;
  readonly column: number;
}

/** A run of pieces that others take the place of, and how far everything behind them moves. */
export interface Change {
  readonly text: Text;
  readonly first: number;
  readonly count: number;
  readonly pieces: readonly Piece[];
  readonly movedBy: { readonly offset: number; readonly line: number };
}

/** What of a file decides which files belong together. */
export interface Heads {
  readonly imports: readonly Import[];
  readonly hasPlan: boolean;
}

/**
 * What was read from a file: Langium's parse result, made of pieces. It stays the same object while the file is
 * edited, with the same root; `pieces` is a new array after each edit, so that what was there before can be compared.
 */
export class FileTree implements ParseResult<PlanFile> {
  text: Text;
  /** Why the text is not read at all. */
  refusal: Refusal | undefined = undefined;
  readonly #value: PlanFile;
  #pieces: readonly Piece[] = [];
  readonly #root: FileRoot;
  readonly #broken = new Set<Piece>();
  readonly #patience = new Patience();
  #heads: Heads | undefined;

  constructor(text: Text) {
    this.text = text;
    this.#root = new FileRoot(this);
    this.#value = { $type: 'PlanFile', statements: [], $cstNode: this.#root.asNode() };
    this.#root.astNode = this.#value;
  }

  get value(): PlanFile {
    return this.#value;
  }

  get pieces(): readonly Piece[] {
    return this.#pieces;
  }

  get parserErrors(): IRecognitionException[] {
    return this.errors()
      .filter((error) => error.from === 'parser')
      .map((error) => parserErrorOf(error, this.text));
  }

  get lexerErrors(): ILexingError[] {
    return this.errors()
      .filter((error) => error.from === 'lexer')
      .map(({ message, offset, line, column, length }) => ({
        message,
        offset,
        line: line + 1,
        column: column + 1,
        length,
      }));
  }

  /** The same object until a statement that counts for it comes, goes or changes. */
  get heads(): Heads {
    this.#heads ??= {
      imports: this.value.statements.filter((s): s is Import => s.$type === 'Import'),
      hasPlan: this.value.statements.some((s) => s.$type === 'PlanHead'),
    };
    return this.#heads;
  }

  /** All errors of the text, in order of pieces. */
  errors(): FileError[] {
    if (this.refusal !== undefined) return [wholeFile(this.refusal)];
    return this.brokenPieces().flatMap((piece) => piece.errors.map((error) => inFile(piece, error)));
  }

  /** The pieces that have errors, in order. */
  brokenPieces(): Piece[] {
    return [...this.#broken].sort((a, b) => a.offset - b.offset);
  }

  /** Index of the first piece with a comment that is never closed; -1 for none. */
  firstOpenComment(): number {
    for (const piece of this.#broken)
      if (piece.opensComment) return this.pieces.findIndex((p) => p.opensComment);
    return -1;
  }

  /** Whether there is so much wrong with the text, or so much of it, that it cannot be a plan. */
  get isHopeless(): boolean {
    return this.#patience.refusal() !== undefined;
  }

  apply({ text, first, count, pieces, movedBy }: Change): void {
    const old = this.#pieces;
    const removed = old.slice(first, first + count);
    const behind = old.slice(first + count);
    this.#replaceItems(old, first, removed, pieces);
    this.#replaceStatements(old, first, removed, pieces);
    for (const piece of removed) {
      this.#broken.delete(piece);
      this.#patience.remove(piece);
    }
    for (const piece of pieces) {
      if (piece.errors.length > 0) this.#broken.add(piece);
      this.#patience.add(piece);
    }
    if (movedBy.offset !== 0 || movedBy.line !== 0) {
      for (const piece of behind) {
        piece.offset += movedBy.offset;
        piece.line += movedBy.line;
      }
    }
    this.#pieces = [...old.slice(0, first), ...pieces, ...behind];
    this.text = text;
    if (removed.some(isHead) || pieces.some(isHead)) this.#heads = undefined;
  }

  #replaceItems(
    old: readonly Piece[],
    first: number,
    removed: readonly Piece[],
    added: readonly Piece[],
  ): void {
    const items = added.flatMap((piece) => piece.items);
    for (const item of items) adopt(this.#root.asNode(), item);
    const count = removed.reduce((sum, piece) => sum + piece.items.length, 0);
    const begin = old[first];
    const at = begin
      ? firstAtOrBehind(this.#root.content, begin.offset, (item) => item.offset)
      : this.#root.content.length;
    splice(this.#root.content, at, count, items);
  }

  #replaceStatements(
    old: readonly Piece[],
    first: number,
    removed: readonly Piece[],
    added: readonly Piece[],
  ): void {
    const { statements } = this.value;
    const items = added.flatMap((piece) => piece.statement ?? []);
    const count = removed.reduce((sum, piece) => sum + (piece.statement ? 1 : 0), 0);
    const begin = old[first];
    const at = begin
      ? firstAtOrBehind(statements, begin.offset, (node) => node.$cstNode!.offset)
      : statements.length;
    splice(statements, at, count, items);
    const to = items.length === count ? at + count : statements.length;
    for (let i = at; i < to; i++) place(statements[i]!, this.value, i);
  }
}

/** The tree of a document; none while nobody has read it. */
export function treeOf(document: LangiumDocument): FileTree | undefined {
  return document.parseResult instanceof FileTree ? document.parseResult : undefined;
}

function isHead({ statement }: Piece): boolean {
  return statement?.$type === 'Import' || statement?.$type === 'PlanHead';
}

function wholeFile({ message, line, column }: Refusal): FileError {
  return { from: 'lexer', message, offset: 0, line, column, length: 1 };
}

function place(statement: Statement, file: PlanFile, index: number): void {
  const node = statement as Mutable<Statement> & { $containerProperty: string; $containerIndex: number };
  node.$container = file;
  node.$containerProperty = 'statements';
  node.$containerIndex = index;
}

function inFile(piece: Piece, { from, message, length, at, line, column }: PieceError): FileError {
  const position = piece.position(line, column);
  return {
    from,
    message,
    length,
    offset: piece.offset + at,
    line: position.line,
    column: position.character,
  };
}

/** The error as Langium's users know it, as far as they look at it. */
function parserErrorOf(
  { message, offset, length, line, column }: FileError,
  text: Text,
): IRecognitionException {
  const token: IToken = {
    image: text.slice(offset, offset + length),
    startOffset: offset,
    endOffset: offset + length - 1,
    startLine: line + 1,
    endLine: line + 1,
    startColumn: column + 1,
    endColumn: column + length,
    tokenType: EOF,
    tokenTypeIdx: EOF.tokenTypeIdx!,
  };
  const context = { ruleStack: [], ruleOccurrenceStack: [] };
  return { name: 'RecognitionException', message, token, resyncedTokens: [], context };
}

/** Index of the first item that begins at or behind an offset. */
function firstAtOrBehind<T>(items: readonly T[], offset: number, offsetOf: (item: T) => number): number {
  let low = 0;
  let high = items.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (offsetOf(items[middle]!) < offset) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Array.splice for any number of items: as arguments there can be too many of them for the stack. */
function splice<T>(array: T[], at: number, count: number, items: readonly T[]): void {
  if (items.length < 1000) {
    array.splice(at, count, ...items);
    return;
  }
  const behind = array.slice(at + count);
  array.length = at;
  for (const item of items) array.push(item);
  for (const item of behind) array.push(item);
}
