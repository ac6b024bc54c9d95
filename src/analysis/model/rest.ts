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
  Uplink,
} from './plant.ts';
import type { Delivery, Feed, Segment } from './show.ts';

export interface Failure {
  readonly kind: 'link' | 'node' | 'run';
  readonly lost: Link | Node | Run;
  readonly segment: Segment | undefined;
  readonly dark: readonly Delivery[];
  readonly kept: readonly Delivery[];
  readonly standbys: readonly Link[];
  readonly overloaded: readonly Link[];
}

export interface CircuitLoad {
  readonly circuit: Circuit;
  readonly load_w: number;
  readonly limit_w: number | undefined;
  readonly share: number | undefined;
  readonly devices: readonly Owner[];
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
  readonly network: { readonly powers: readonly NetworkPower[]; readonly supplies: readonly NetworkSupply[] };
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
  readonly address: string | undefined;
}

export interface Group {
  readonly source: Source;
  readonly group: string;
  readonly hardwareAddress: string;
}

export interface CablePiece {
  readonly cable: Cable;
  readonly link: Link;
  readonly needed_m: number | undefined;
  readonly piece_m: number | undefined;
  readonly from: 'stock' | 'any' | 'get';
  readonly stock: StatementOf<'stock'> | undefined;
}

export interface Cost {
  readonly currency: string | undefined;
  readonly total: number;
  readonly lines: readonly CostLine[];
}

export interface CostLine {
  readonly what: string;
  readonly kit: Kit | undefined;
  readonly count: number;
  readonly each: number | undefined;
  readonly sum: number | undefined;
}

export interface CaseWeight {
  readonly case: Case;
  readonly weight_kg: number;
  readonly limit_kg: number | undefined;
  readonly unknown: readonly string[];
}

export interface PlacePower {
  readonly place: Place;
  readonly load_w: number;
}

export interface Firmware {
  readonly states: readonly FirmwareState[];
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
  readonly useless: 'matches nothing' | 'wrong quantity' | 'measured before' | undefined;
}

export interface Acceptance {
  readonly statement: StatementOf<'accept'>;
  readonly of: Spoken;
}

export interface Proof {
  readonly statement: StatementOf<'proved'>;
  readonly feeds: readonly Feed[];
}
