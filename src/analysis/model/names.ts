/** Names: what is declared, what is declared twice, what is spoken of but not declared. */
import type { Statement } from '../../plan/plan.ts';
import type { Node } from './plant.ts';

/** Names of one space never stand for two things. Nodes, sources, destinations, links, circuits and uplinks share one. */
export type Space = 'things' | 'places' | 'kits' | 'cables' | 'interfaces' | 'segments' | 'cases';

/** What a name was expected to be where it is used. */
export type Wanted =
  | 'place'
  | 'kit'
  | 'cable'
  | 'interface'
  | 'segment'
  | 'node'
  | 'source'
  | 'destination'
  | 'link'
  | 'circuit'
  | 'uplink'
  /** A destination, or a node whose input port is named. */
  | 'target'
  /** Anything of the shared space. */
  | 'thing'
  /** What an acceptance or a measurement may speak of: anything that has a name. */
  | 'subject';

/** Where a statement speaks of something: the part as `Source.range` takes it. */
export interface Use {
  readonly statement: Statement;
  readonly part: string;
}

/** A name that several statements declare. The first counts, the others are read as if they were not there. */
export interface DuplicateName {
  readonly space: Space;
  readonly name: string;
  readonly first: Statement;
  readonly others: readonly Statement[];
}

/** A name that nothing declares, or nothing of the wanted kind; once, with all its places. */
export interface UnknownName {
  readonly wanted: Wanted;
  readonly name: string;
  readonly uses: readonly Use[];
  /** What the name stands for instead, when it is declared as another kind of thing. */
  readonly declaredAs: Statement | undefined;
}

/** A port that a node's kit does not have; once for each node, with all its places. */
export interface UnknownPort {
  readonly node: Node;
  readonly name: string;
  readonly uses: readonly Use[];
}

/** Everything about names that a check tells. */
export interface NameReport {
  readonly duplicates: readonly DuplicateName[];
  readonly unknown: readonly UnknownName[];
  readonly unknownPorts: readonly UnknownPort[];
}
