import { FileTree, type Heads } from './file-tree.ts';
import type { Piece } from './piece.ts';
import type { Text } from './text.ts';

const noHeads: Heads = { imports: [], hasPlan: false };

/**
 * A file of the shipped library. What it says is known without its tree, so it is parsed when somebody first looks into
 * it. Nothing in it is wrong, it imports nothing and is no plan.
 */
export class LibraryTree extends FileTree {
  readonly #shipped: Text;
  #read: ((tree: LibraryTree) => void) | undefined;

  /** @param read Reads the text into the tree. */
  constructor(text: Text, read: (tree: LibraryTree) => void) {
    super(text);
    this.#shipped = text;
    this.#read = read;
  }

  /** Whether nobody has edited it. */
  get isAsShipped(): boolean {
    return this.text === this.#shipped;
  }

  override get value() {
    this.#readOnce();
    return super.value;
  }

  override get pieces(): readonly Piece[] {
    this.#readOnce();
    return super.pieces;
  }

  override get heads(): Heads {
    return this.isAsShipped ? noHeads : super.heads;
  }

  #readOnce(): void {
    const read = this.#read;
    this.#read = undefined;
    read?.(this);
  }
}
