import type { AstNode } from 'langium';
import type { Statement } from './generated/ast.ts';
import { changedPieces } from './incremental/changed-pieces.ts';
import type { FileTree } from './incremental/file-tree.ts';
import type { Piece } from './incremental/piece.ts';

/** The spaces in which a name stands for one thing. */
export type Space = 'thing' | 'place' | 'kit' | 'cable' | 'interface' | 'segment' | 'case';

const spaceOf: Partial<Record<Statement['$type'], Space>> = {
  Node: 'thing',
  Source: 'thing',
  Destination: 'thing',
  Link: 'thing',
  Circuit: 'thing',
  Uplink: 'thing',
  Place: 'place',
  Kit: 'kit',
  Cable: 'cable',
  Interface: 'interface',
  Segment: 'segment',
  Case: 'case',
};

export const allSpaces = [...new Set(Object.values(spaceOf))] as Space[];

/** What the statements of one file declare, by name. Kept, and brought up to date by what has changed when it is asked. */
export class FileNames {
  readonly #tree: FileTree;
  #pieces: readonly Piece[] = [];
  readonly #spaces = new Map<Space, Map<string, AstNode[]>>(allSpaces.map((space) => [space, new Map()]));

  constructor(tree: FileTree) {
    this.#tree = tree;
  }

  /** The first declaration of a name, which is the one that counts. */
  find(space: Space, name: string): AstNode | undefined {
    return firstOf(this.#upToDate().get(space)?.get(name));
  }

  /** All declarations of one space, the first of each name. */
  *all(space: Space): Iterable<[string, AstNode]> {
    for (const [name, nodes] of this.#upToDate().get(space) ?? []) yield [name, firstOf(nodes)!];
  }

  #upToDate(): ReadonlyMap<Space, ReadonlyMap<string, readonly AstNode[]>> {
    if (this.#pieces !== this.#tree.pieces) {
      const { removed, added } = changedPieces(this.#pieces, this.#tree.pieces);
      for (const { statement } of removed) if (statement) this.#remove(statement);
      for (const { statement } of added) if (statement) this.#add(statement);
      this.#pieces = this.#tree.pieces;
    }
    return this.#spaces;
  }

  #add(statement: Statement): void {
    const [names, name] = this.#placeOf(statement);
    if (!names || !name) return;
    const nodes = names.get(name);
    if (nodes) nodes.push(statement);
    else names.set(name, [statement]);
  }

  #remove(statement: Statement): void {
    const [names, name] = this.#placeOf(statement);
    const nodes = name ? names?.get(name) : undefined;
    if (!names || !name || !nodes) return;
    const rest = nodes.filter((node) => node !== statement);
    if (rest.length > 0) names.set(name, rest);
    else names.delete(name);
  }

  #placeOf(statement: Statement): [Map<string, AstNode[]> | undefined, string | undefined] {
    const space = spaceOf[statement.$type];
    return [space && this.#spaces.get(space), 'name' in statement ? statement.name : undefined];
  }
}

function firstOf(nodes: readonly AstNode[] | undefined): AstNode | undefined {
  if (!nodes || nodes.length < 2) return nodes?.[0];
  return nodes.reduce((a, b) => ((a.$containerIndex ?? 0) <= (b.$containerIndex ?? 0) ? a : b));
}
