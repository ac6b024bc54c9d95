import type { TokenType } from 'chevrotain';
import {
  AbstractCstNode,
  type AstNode,
  type CompositeCstNode,
  CompositeCstNodeImpl,
  type CstNode,
  type RootCstNode,
  RootCstNodeImpl,
} from 'langium';
import type { Range } from 'vscode-languageserver-types';
import type { Piece } from './piece.ts';
import type { Text } from './text.ts';

/**
 * A token in the syntax tree. Its position is kept relative to its piece, so that moving a statement moves one piece
 * and none of its tokens.
 */
export class PieceLeaf extends AbstractCstNode {
  readonly piece: Piece;
  readonly at: number;
  readonly length: number;
  readonly line: number;
  readonly column: number;
  readonly tokenType: TokenType;

  constructor(piece: Piece, at: number, length: number, line: number, column: number, tokenType: TokenType) {
    super();
    this.piece = piece;
    this.at = at;
    this.length = length;
    this.line = line;
    this.column = column;
    this.tokenType = tokenType;
  }

  get offset(): number {
    return this.piece.offset + this.at;
  }

  get end(): number {
    return this.piece.offset + this.at + this.length;
  }

  get hidden(): boolean {
    return false;
  }

  get astNode(): AstNode {
    if (!this.container) throw new Error('This node has no associated AST element');
    return this.container.astNode;
  }

  get range(): Range {
    const start = this.piece.position(this.line, this.column);
    return { start, end: { line: start.line, character: start.character + this.length } };
  }

  override get text(): string {
    return textOf(this);
  }
}

/** A comment: the only token that can reach over several lines. */
export class PieceComment extends PieceLeaf {
  endLine = 0;
  endColumn = 0;

  override get hidden(): boolean {
    return true;
  }

  override get range(): Range {
    return {
      start: this.piece.position(this.line, this.column),
      end: this.piece.position(this.endLine, this.endColumn),
    };
  }
}

/** What a rule of the grammar has read. Langium's own remembers its absolute range, which moves here. */
export class PieceNode extends CompositeCstNodeImpl {
  override get range(): Range {
    return rangeOf(this.content);
  }

  override get text(): string {
    return textOf(this);
  }
}

/** The root of a file's tree. It does not hold the text but asks for it: the text changes, the root stays. */
export class FileRoot extends RootCstNodeImpl {
  readonly source: { readonly text: Text };

  constructor(source: { readonly text: Text }) {
    super('');
    this.source = source;
  }

  override get fullText(): string {
    return this.source.text.toString();
  }

  /** Itself: Langium's interfaces have optional properties that may not be undefined, which its classes do not promise. */
  asNode(): RootCstNode {
    return this as unknown as RootCstNode;
  }

  override get text(): string {
    return this.source.text.slice(this.offset, this.end);
  }

  override get range(): Range {
    return rangeOf(this.content);
  }
}

function textOf(node: AbstractCstNode): string {
  return (node.root as FileRoot).source.text.slice(node.offset, node.end);
}

function rangeOf(content: readonly CstNode[]): Range {
  const first = content.find(isShown) ?? content[0];
  const last = content.findLast(isShown) ?? content.at(-1);
  if (!first || !last) return { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };
  return { start: first.range.start, end: last.range.end };
}

function isShown(node: CstNode): boolean {
  return !node.hidden;
}

/** The piece that a node of the tree stands in; undefined for the root of a file. */
export function pieceOf(node: CstNode): Piece | undefined {
  let at: CstNode | undefined = node;
  while (at && !(at instanceof PieceLeaf)) at = (at as CompositeCstNode).content[0];
  return node.container && at ? (at as unknown as PieceLeaf).piece : undefined;
}
