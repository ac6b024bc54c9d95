import type { IToken } from 'chevrotain';
import {
  type AbstractCstNode,
  type CompositeCstNode,
  type CstNode,
  CstNodeBuilder,
  type GrammarAST,
  type LeafCstNodeImpl,
  type RootCstNode,
  RootCstNodeImpl,
} from 'langium';
import type { BuilderInternals } from './internals.ts';
import { type Piece, type Place, start } from './piece.ts';
import { PieceComment, PieceLeaf, PieceNode } from './tree.ts';

/** Builds the tree of one piece, with positions relative to it. */
export class PieceNodeBuilder extends CstNodeBuilder {
  #piece: Piece | undefined;
  #begin: Place = start;

  /** @param begin Where the piece begins in the stretch that was lexed: the tokens count from there. */
  beginPiece(piece: Piece, begin: Place): void {
    this.#piece = piece;
    this.#begin = begin;
    this.buildRootNode('');
  }

  override buildRootNode(input: string): RootCstNode {
    const root = new RootCstNodeImpl(input);
    const self = this.#internals();
    self.rootNode = root;
    self.nodeStack = [root];
    return root as unknown as RootCstNode;
  }

  override buildCompositeNode(feature: GrammarAST.AbstractElement): CompositeCstNode {
    const node = new PieceNode();
    node.grammarSource = feature;
    this.appendChild(this.current as unknown as CompositeCstNode, node as unknown as CstNode);
    this.#internals().nodeStack.push(node);
    return node as unknown as CompositeCstNode;
  }

  protected override createLeafNode(token: IToken, hidden: boolean): LeafCstNodeImpl {
    const begin = this.#begin;
    const line = token.startLine! - 1 - begin.line;
    const column = token.startColumn! - 1 - (line === 0 ? begin.column : 0);
    const leaf = new (hidden ? PieceComment : PieceLeaf)(
      this.#piece!,
      (token.startOffset - begin.offset) | 0,
      token.image.length | 0,
      line | 0,
      column | 0,
      token.tokenType,
    );
    if (leaf instanceof PieceComment) {
      leaf.endLine = (token.endLine! - 1 - begin.line) | 0;
      leaf.endColumn = (token.endColumn! - (leaf.endLine === 0 ? begin.column : 0)) | 0;
    }
    // Langium's own leaf is a class with private fields; what its users see of it is the interface.
    return leaf as unknown as LeafCstNodeImpl;
  }

  /** Langium spreads its list into arguments, of which there can be too many for the stack. */
  override addHiddenNodes(tokens: IToken[]): void {
    for (const token of tokens) super.addHiddenNodes([token]);
  }

  /** Comments and the statement, in order. */
  endPiece(): readonly CstNode[] {
    return (this.#internals().rootNode as RootCstNodeImpl).content;
  }

  #internals(): BuilderInternals {
    return this as unknown as BuilderInternals;
  }
}

/** Puts a node below another one. */
export function adopt(parent: CompositeCstNode, child: CstNode): void {
  (child as AbstractCstNode).container = parent;
}
