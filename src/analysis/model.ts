/**
 * Everything that is worked out about a plan, as plain objects that point at each other. Checks, tables, sheets,
 * drawings and reviews read it and compute nothing.
 *
 * It has two halves: the plant (what stands and is plugged where) and the show (which pictures go where). The plant
 * never points at the show, so it can be kept while only wishes change.
 *
 * All lists are in order of statements. Maps are by name; the first declaration of a name is the one that counts.
 */
import type { Plan, StatementOf } from '../plan/plan.ts';
import type { Cable, Carried, Interface, Kit } from './model/library.ts';
import type { NameReport, Use } from './model/names.ts';
import type {
  Case,
  Chain,
  Circuit,
  Cycle,
  Destination,
  Link,
  Node,
  Place,
  Port,
  PortTaken,
  Run,
  Settings,
  Source,
  StockPiece,
  Thing,
  Uplink,
} from './model/plant.ts';
import type { Acceptance, Measurement, Proof } from './model/rest.ts';
import type {
  Delivery,
  Feed,
  Flow,
  Reach,
  Segment,
  Situation,
  SourceFigures,
  Traffic,
} from './model/show.ts';

export type * from './model/library.ts';
export type * from './model/names.ts';
export type * from './model/plant.ts';
export type * from './model/rest.ts';
export type * from './model/show.ts';

/** What stands in the house. */
export interface Plant {
  readonly settings: Settings;
  readonly places: ReadonlyMap<string, Place>;
  readonly runs: readonly Run[];
  readonly circuits: ReadonlyMap<string, Circuit>;
  readonly uplinks: ReadonlyMap<string, Uplink>;
  readonly interfaces: ReadonlyMap<string, Interface>;
  readonly cables: ReadonlyMap<string, Cable>;
  readonly kits: ReadonlyMap<string, Kit>;
  readonly carriedKinds: readonly Carried[];
  readonly nodes: ReadonlyMap<string, Node>;
  readonly sources: ReadonlyMap<string, Source>;
  readonly destinations: ReadonlyMap<string, Destination>;
  /** Everything of the shared space by its name, unnamed links by their derived one. */
  readonly things: ReadonlyMap<string, Thing>;
  readonly links: readonly Link[];
  readonly chains: readonly Chain[];
  /** Ports that something speaks of. */
  readonly ports: readonly Port[];
  readonly portsTaken: readonly PortTaken[];
  readonly stock: readonly StockPiece[];
  readonly cycles: readonly Cycle[];
}

export interface Analysis extends Plant {
  readonly plan: Plan;
  readonly names: NameReport;
  readonly segments: ReadonlyMap<string, Segment>;
  readonly cases: ReadonlyMap<string, Case>;
  readonly feeds: readonly Feed[];
  /** `instead of` and `black` that match nothing. */
  readonly unmatched: readonly Unmatched[];
  /** The plan without segments first, then each segment. */
  readonly situations: readonly [Situation, ...Situation[]];
  /** All deliveries: without segments first, then by segment; each in order of statements. */
  readonly deliveries: readonly Delivery[];
  readonly flows: readonly Flow[];
  /** By the link's index. */
  readonly traffic: readonly Traffic[];
  /** By the chain's index. */
  readonly reaches: readonly Reach[];
  readonly sourceFigures: ReadonlyMap<string, SourceFigures>;
  readonly unfedDestinations: readonly Destination[];
  readonly unusedSources: readonly Source[];
  readonly unusedNodes: readonly Node[];
  readonly measurements: readonly Measurement[];
  readonly acceptances: readonly Acceptance[];
  readonly proofs: readonly Proof[];
  readonly remarkable: Remarkable;
}

/**
 * What is not simply right, in order: checks that run on every keystroke look at these alone, and the lists of all are
 * long. Which they are is written in `remarkable.ts`.
 */
export interface Remarkable {
  readonly links: readonly Link[];
  readonly chains: readonly Chain[];
  readonly deliveries: readonly Delivery[];
}

/** An `instead of` or `black` that finds nothing to take the place of. */
export interface Unmatched extends Use {
  readonly statement: StatementOf<'feed'> | StatementOf<'black'>;
  readonly kind: 'instead of' | 'black';
  /** The source or target that was looked for. */
  readonly wanted: string;
  readonly segment: Segment | undefined;
}
