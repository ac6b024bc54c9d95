/** What stands in the house: places, runs, nodes with their ports, cables between them. No picture is in here. */
import type { StatedFormat } from '../../physics/raster.ts';
import type { Duration, Fact } from '../../plan/facts.ts';
import type { Statement, StatementOf } from '../../plan/plan.ts';
import type { Cable, Interface, Kit, KitPort, PortRole } from './library.ts';

export interface Place {
  readonly index: number;
  readonly name: string;
  readonly statement: StatementOf<'place'>;
}

export interface Run {
  readonly kind: 'run';
  readonly index: number;
  /** By its places as written: `desk <-> platform`. */
  readonly name: string;
  readonly statement: StatementOf<'run'>;
  readonly from: Place | undefined;
  readonly to: Place | undefined;
  /** As found on site, else as planned. */
  readonly length_m: number | undefined;
  readonly planned_m: number | undefined;
  readonly measured: StatementOf<'measured'> | undefined;
  readonly temperature_c: number | undefined;
}

export interface Circuit {
  readonly kind: 'circuit';
  readonly index: number;
  readonly name: string;
  readonly statement: StatementOf<'circuit'>;
  readonly place: Place | undefined;
  /** The circuit that feeds it; undefined also where that would close a circle. */
  readonly from: Circuit | undefined;
  readonly fromCycle: boolean;
}

export interface Uplink {
  readonly kind: 'uplink';
  readonly index: number;
  readonly name: string;
  readonly statement: StatementOf<'uplink'>;
  readonly place: Place | undefined;
  readonly stated_bits_per_second: number | undefined;
  readonly measured_bits_per_second: number | undefined;
}

/** What nodes, sources and destinations have in common: they stand somewhere and take power. */
export interface Owner {
  readonly name: string;
  readonly statement: Statement;
  readonly kit: Kit | undefined;
  readonly place: Place | undefined;
  readonly poweredBy: readonly Circuit[];
}

export interface Node extends Owner {
  readonly kind: 'node';
  readonly index: number;
  readonly statement: StatementOf<'node'>;
  /** Ports that something is plugged into or speaks of, by their index in the kit; `socketsOf` tells all. */
  readonly usedPorts: readonly (Port | undefined)[];
  /** Ports that are spoken of while the kit is not known. */
  readonly loosePorts: readonly Port[];
}

export interface Source extends Owner {
  readonly kind: 'source';
  readonly index: number;
  readonly statement: StatementOf<'source'>;
  /** The port that it comes out of, when it is the output of a node. */
  readonly from: Port | undefined;
  /** Its own connector, when it is plugged into something. */
  readonly port: Port | undefined;
  /** The short-form link that plugs it in. */
  readonly link: Link | undefined;
  /** As stated; completed when it is known what it rides on. */
  readonly format: StatedFormat | undefined;
  readonly encrypted: boolean;
  /** Sends into the network by itself. */
  readonly sendsByItself: boolean;
  /** What it is made of as stated; undefined: all that is fed to its node. */
  readonly madeOf: readonly Source[] | undefined;
  readonly delay: Duration | undefined;
}

export interface Destination extends Owner {
  readonly kind: 'destination';
  readonly index: number;
  readonly statement: StatementOf<'destination'>;
  readonly port: Port | undefined;
  readonly link: Link | undefined;
  readonly takes: readonly StatedFormat[];
  /** Receives from the network by itself. */
  readonly receivesByItself: boolean;
  readonly limit: Duration | undefined;
  readonly delay: Duration | undefined;
}

export interface Port {
  readonly index: number;
  readonly owner: Node | Source | Destination;
  /** The port's own name; empty for the one connector of a source or destination. */
  readonly name: string;
  /** `box_d.net1`; for a source or destination its name. */
  readonly text: string;
  readonly role: PortRole;
  /** The interface it has; undefined when its kit names none. */
  readonly interface: Interface | undefined;
  /** The kit's declaration; undefined for sources and destinations and where the kit is not known. */
  readonly kitPort: KitPort | undefined;
  readonly label: string | undefined;
  /** What an output turns every picture into. */
  readonly gives: StatedFormat | undefined;
  readonly follows: Port | undefined;
  readonly joined: Port | undefined;
  /** The links plugged in here, in order of statements; more than one (standbys aside) is a mistake. */
  readonly links: readonly Link[];
}

export interface LinkEnd {
  /** As written, `box_d.net1`, or the name of the source or destination. */
  readonly text: string;
  /** Undefined when the node or the port is not known. */
  readonly port: Port | undefined;
}

export interface Link {
  readonly kind: 'link';
  readonly index: number;
  /** Its own name, or from its ends: `scores>mixer.in1`. */
  readonly name: string;
  readonly named: boolean;
  /** A link, or the source or destination whose short form it is. */
  readonly statement: StatementOf<'link'> | StatementOf<'source'> | StatementOf<'destination'>;
  readonly from: LinkEnd;
  readonly to: LinkEnd;
  readonly bothWays: boolean;
  /** A network link: the ends are network ports, or a source or destination plugged into one. */
  readonly network: boolean;
  /** The way round in which a picture can go: false where the ends' roles forbid it. */
  readonly carriesForward: boolean;
  readonly carriesBackward: boolean;
  readonly directionFault: DirectionFault | undefined;
  readonly cable: Cable | undefined;
  readonly installed: boolean;
  readonly connections: number | undefined;
  readonly splices: number | undefined;
  readonly standbyFor: Link | undefined;
  /** The first link of the sheath it lies in: itself, or the one that it shares in the end. */
  readonly sheath: Link;
  readonly length: CableLength;
  /** The cables between two active ports that count as one with this one. */
  readonly chain: Chain;
}

export type DirectionFault =
  | 'onto itself'
  | 'from an input'
  | 'to an output'
  | 'both ways on a one-way port'
  | 'a network port with another kind of port';

/** Where a length comes from. */
export interface CableLength {
  readonly length_m: number | undefined;
  readonly from: 'stated' | 'runs' | 'measured' | undefined;
  /** What it would be without anything measured. */
  readonly planned_m: number | undefined;
  /** The runs that the cable lies in, from its first end to its second. */
  readonly runs: readonly Run[];
  /** Why no length is known. */
  readonly missing: 'no place' | 'no run' | 'no slack' | undefined;
  readonly places: readonly [Place | undefined, Place | undefined];
  /** The hottest stated temperature among the runs. */
  readonly temperature_c: number | undefined;
}

/** One cable after another between two active ports, passing through joins: lengths and losses count as one. */
export interface Chain {
  readonly index: number;
  /** In order from the sending end (for both-way chains from the end that is written first). */
  readonly links: readonly Link[];
  /** True where the chain runs against the link as written. */
  readonly reversed: readonly boolean[];
  readonly ends: readonly [LinkEnd, LinkEnd];
  /** Sum over all links; undefined when one is not known. */
  readonly length_m: number | undefined;
  readonly interface: Interface | undefined;
  readonly interfaceFault: InterfaceFault | undefined;
  /** The faster interface that both ends have in common, where the cable does not list it. */
  readonly slowedFrom: Interface | undefined;
  /** Line rate one way of the interface; undefined when it has none. */
  readonly capacity_bits_per_second: number | undefined;
}

export type InterfaceFault =
  /** The two ends (or a join between) have nothing in common. */
  | { readonly kind: 'nothing in common'; readonly between: readonly Interface[] }
  /** They have, but no cable of the chain lists it. `cable` is the first that does not. */
  | { readonly kind: 'not on this cable'; readonly common: readonly Interface[]; readonly cable: Cable }
  /** The interface that the link pins is not among those in common. */
  | {
      readonly kind: 'pinned one not possible';
      readonly pinned: Interface;
      readonly common: readonly Interface[];
    };

/** A port with more cables than it has room for. */
export interface PortTaken {
  readonly port: Port;
  /** The first keeps the port, the others are too many. */
  readonly links: readonly Link[];
}

/** Lengths of cables at hand. */
export interface StockPiece {
  readonly statement: StatementOf<'stock'>;
  readonly cable: Cable | undefined;
}

export interface Case {
  readonly index: number;
  readonly name: string;
  readonly statement: StatementOf<'case'>;
  readonly things: readonly Thing[];
}

export type Thing = Node | Source | Destination | Link | Circuit | Uplink;

/** Settings of the plan, defaults filled in. */
export interface Settings {
  /** The statement, when there is one. */
  readonly statement: StatementOf<'plan'> | undefined;
  /** Further plan statements, which do not count. */
  readonly uncounted: readonly StatementOf<'plan'>[];
  readonly title: string;
  readonly headroomShare: number;
  readonly slack_m: number;
  readonly slackStated: boolean;
  readonly sparesShare: number;
  readonly units: 'metric' | 'feet';
  readonly currency: string | undefined;
  /** House rate as frames or fields a second; undefined when none is stated or it cannot be read. */
  readonly rate: { readonly numerator: number; readonly denominator: number } | undefined;
  readonly packing: 'equal' | 'block';
  readonly tagged: boolean;
  readonly blanking: 1 | 2;
  readonly lasts_s: number | undefined;
  readonly lipsync: 'bt1359' | 'r37' | 'is191';
}

/** A circle where none may be: the statements that close it, in order round the circle. */
export interface Cycle {
  readonly kind: 'like' | 'accepts' | 'shares' | 'standby for' | 'from' | 'of';
  readonly statements: readonly Statement<Fact>[];
}
