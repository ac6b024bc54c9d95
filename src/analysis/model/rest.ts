/** Figures that are worked out when asked for: failure, power, uplink, sound, recording, addresses, cables, cost, cases. */
import type { StatementOf } from '../../plan/plan.ts';
import type { Cable, FirmwareState, Kit } from './library.ts';
import type {
  Case,
  Circuit,
  Destination,
  Link,
  Node,
  Owner,
  Place,
  Port,
  Run,
  Source,
  Thing,
  Uplink,
} from './plant.ts';
import type { Delivery, Feed, Segment } from './show.ts';

/** What happens when one thing is lost. */
export interface Failure {
  readonly kind: 'link' | 'node' | 'run';
  /** For a link with others in its sheath, the first of them. */
  readonly lost: Link | Node | Run;
  /** Every cable that is lost with it. */
  readonly links: readonly Link[];
  readonly segment: Segment | undefined;
  /** Feeds that go dark and stay dark. */
  readonly dark: readonly Delivery[];
  /** Feeds that it concerns and that are seen again, some of them once standbys are plugged. */
  readonly kept: readonly Delivery[];
  /** Those of the kept ones that need a standby. */
  readonly afterReplugging: readonly Delivery[];
  /** Standbys that are plugged for it. */
  readonly standbys: readonly Link[];
  /** Links that then carry more than they can. */
  readonly overloaded: readonly Link[];
}

/** Whether a `redundant` feed survives what it must. */
export interface Redundancy {
  readonly delivery: Delivery;
  readonly segment: Segment | undefined;
  /** Losses of one network link, or of the network links of one run, that it does not survive. */
  readonly brokenBy: readonly Break[];
  /** Losses of one node that only forwards, that it does not survive: a warning. */
  readonly weakenedBy: readonly Break[];
  /** Standbys that keep it, after re-plugging. */
  readonly standbys: readonly Link[];
}

/** A loss that a redundant feed does not survive. */
export interface Break {
  readonly kind: Failure['kind'];
  readonly lost: Link | Node | Run;
  /** Links that are too full then; empty when there is no way at all. */
  readonly overloaded: readonly Link[];
}

export interface CircuitLoad {
  readonly circuit: Circuit;
  readonly load_w: number;
  readonly limit_w: number | undefined;
  readonly share: number | undefined;
  readonly devices: readonly Owner[];
  /** What the load is the sum of: each device with its share, then each circuit that this one feeds. */
  readonly parts: readonly { readonly name: string; readonly load_w: number }[];
}

export interface PoweredBy {
  readonly kind: 'circuit' | 'network' | 'none';
  readonly name: string | undefined;
}

export interface NetworkPower {
  readonly link: Link;
  readonly supply: Port;
  readonly device: Node | Source | Destination;
  readonly poeClass: number;
  /** What the supply sets aside for the class. */
  readonly setAside_w: number;
  /** What the kit states that it draws; more than the class allows cannot be had. */
  readonly draws_w: number | undefined;
  readonly allowed_w: number;
  /** What the supply really gives; undefined while the length is not known or so much does not arrive. */
  readonly supply_w: number | undefined;
  readonly device_w: number;
  readonly device_v: number | undefined;
  /** Of one conductor of the cables on the way. */
  readonly conductor_ohm_per_m: number;
}

/** A node that supplies power over its network ports. */
export interface NetworkSupply {
  readonly node: Node;
  readonly fed: readonly NetworkPower[];
  readonly perPort_w: number;
  readonly inAll_w: number | undefined;
  readonly setAside_w: number;
  readonly supply_w: number;
  /** Those whose class is above what a port gives. */
  readonly portsOver: readonly NetworkPower[];
}

/** What feeds what. */
export interface Powering {
  readonly network: {
    readonly powers: readonly NetworkPower[];
    readonly supplies: readonly NetworkSupply[];
    /** By what is fed. */
    readonly fedBy: ReadonlyMap<Owner, NetworkPower>;
  };
  readonly circuits: readonly CircuitLoad[];
  /** What draws power and is fed by nothing. */
  readonly unpowered: readonly Owner[];
  readonly places: readonly PlacePower[];
}

export interface UplinkLoad {
  readonly uplink: Uplink;
  readonly stated_bits_per_second: number | undefined;
  readonly measured_bits_per_second: number | undefined;
  readonly usable_bits_per_second: number | undefined;
  readonly needed_bits_per_second: number;
  readonly share: number | undefined;
  /** The stated rate of one more stream that still fits; undefined while no upload is known. */
  readonly fits_bits_per_second: number | undefined;
  /** Stated rates of all streams over it. */
  readonly streams_bits_per_second: readonly number[];
  readonly destinations: readonly Destination[];
}

export interface Recording {
  readonly destination: Destination;
  readonly bytes: number | undefined;
}

export interface SoundMatch {
  readonly destination: Destination;
  readonly segment: Segment | undefined;
  readonly picture_s: number;
  readonly sound_s: number;
  /** Positive: the sound is late. */
  readonly offset_s: number;
  readonly rule: 'bt1359' | 'r37' | 'is191';
  readonly ok: boolean;
  readonly warning: boolean;
  readonly delayToSet_s: number;
}

export interface NodeAddress {
  readonly node: Node;
  /** Undefined when the prefix has no place left. */
  readonly address: string | undefined;
  /** Written in the plan, not assigned. */
  readonly stated: boolean;
  /** Stated, and not in the plan's prefix. */
  readonly outside: boolean;
  /** Other nodes for which the same address is stated. */
  readonly sharedWith: readonly Node[];
}

export interface Group {
  readonly source: Source;
  /** Undefined when the prefix has no place left. */
  readonly group: string | undefined;
  readonly hardwareAddress: string | undefined;
  /** Switches send it to every port. */
  readonly flooded: boolean;
}

export interface Addressing {
  readonly nodes: readonly NodeAddress[];
  /** How many addresses the prefix has for nodes, and for groups. */
  readonly nodePlaces: number | undefined;
  readonly groups: readonly Group[];
  readonly groupPlaces: number | undefined;
  readonly groupPrefixFault: 'no multicast' | 'not administratively scoped' | undefined;
  /** The prefix as written cannot be one. */
  readonly subnetFault: boolean;
  readonly multicastFault: boolean;
}

export interface CablePiece {
  readonly cable: Cable;
  /** The first link of the sheath. */
  readonly link: Link;
  readonly needed_m: number | undefined;
  readonly piece_m: number | undefined;
  readonly from: 'stock' | 'any' | 'get';
  readonly stock: StatementOf<'stock'> | undefined;
}

/** A piece that is carried for the case that another fails: as long as the longest need of its kind. */
export type SpareCable = Omit<CablePiece, 'link'>;

/** Pieces at hand that nothing takes. */
export interface PieceOfStock {
  readonly cable: Cable;
  readonly statement: StatementOf<'stock'>;
  readonly length_m: number;
  readonly count: number;
}

export interface CableStock {
  readonly pieces: readonly CablePiece[];
  readonly spares: readonly SpareCable[];
  readonly left: readonly PieceOfStock[];
  /** Cables of network links of which no other piece would do. */
  readonly withoutSpare: readonly Cable[];
}

export interface Cost {
  readonly currency: string | undefined;
  readonly total: number;
  readonly lines: readonly CostLine[];
}

export interface CostLine {
  readonly what: string;
  /** Undefined: pieces of cable of one length. */
  readonly kit: Kit | undefined;
  readonly length_m?: number | undefined;
  readonly count: number;
  /** How many of them are spares. */
  readonly spare: number;
  readonly each: number | undefined;
  readonly sum: number | undefined;
}

export interface CaseWeight {
  readonly case: Case;
  readonly weight_kg: number;
  readonly limit_kg: number | undefined;
  /** What is in it and has no known weight. */
  readonly unknown: readonly string[];
}

export interface Packing {
  readonly cases: readonly CaseWeight[];
  /** What travels and is in no case; empty while the plan has no case at all. */
  readonly unpacked: readonly Thing[];
}

export interface PlacePower {
  readonly place: Place;
  readonly load_w: number;
}

export interface Firmware {
  readonly states: readonly FirmwareState[];
  /** Found in another version than the crew wants. */
  readonly toUpdate: readonly FirmwareState[];
  /** Kits of which the plan has several versions. */
  readonly mixed: readonly { readonly kit: Kit; readonly nodes: readonly FirmwareState[] }[];
}

/** Something found on site or accepted, and what of the plan it speaks of. */
export type Spoken =
  | { readonly kind: 'link'; readonly link: Link }
  | { readonly kind: 'run'; readonly run: Run }
  | { readonly kind: 'feed'; readonly feeds: readonly Feed[] }
  | { readonly kind: 'uplink'; readonly uplink: Uplink }
  | { readonly kind: 'other'; readonly name: string }
  | { readonly kind: 'nothing' };

export interface Measurement {
  readonly statement: StatementOf<'measured'>;
  readonly of: Spoken;
  /** Why the value has no effect. */
  readonly useless: 'matches nothing' | 'wrong quantity' | 'measured before' | 'no way' | undefined;
}

export interface Acceptance {
  readonly statement: StatementOf<'accept'>;
  readonly of: Spoken;
}

export interface Proof {
  readonly statement: StatementOf<'proved'>;
  readonly feeds: readonly Feed[];
}
