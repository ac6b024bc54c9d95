/** Kinds of things: interfaces, cables, kits. */
import type { Carriage } from '../../physics/flows.ts';
import type { StatedFormat } from '../../physics/raster.ts';
import type { CableLossFact, Duration } from '../../plan/facts.ts';
import type { StatementOf } from '../../plan/plan.ts';
import type { Node } from './plant.ts';

/** What rides on an interface. `display` is HDMI and its like; `sound` carries no picture. */
export type Signal = 'sdi' | 'display' | 'network' | 'sound' | 'unknown';

export interface Interface {
  /** Place among the interfaces, in order of statements. */
  readonly index: number;
  readonly name: string;
  readonly statement: StatementOf<'interface'>;
  readonly signal: Signal;
  /** By which the faster of two interfaces is told; 0 when it states neither rate nor clock nor lanes. */
  readonly rate_bits_per_second: number;
  /** Everything that a port of this interface takes, itself first, then in breadth-first order of `accepts`. */
  readonly accepts: readonly Interface[];
}

export type Medium = 'coax' | 'twisted pair' | 'fibre' | 'direct attach' | 'display' | 'sound' | 'unknown';

/** A cable with what it has from the cable it is `like`. */
export interface Cable {
  readonly index: number;
  readonly name: string;
  readonly statement: StatementOf<'cable'>;
  readonly medium: Medium;
  readonly screened: boolean;
  /** How much more it loses than the solid cable that the tables are for. */
  readonly strandedShare: number | undefined;
  readonly losses: readonly CableLossFact[];
  readonly delay_s_per_m: number | undefined;
  readonly weight_kg_per_m: number | undefined;
  readonly resistance_ohm_per_m: number | undefined;
  /** Its own name and those of the cables it is like, nearest first: interfaces list reaches by any of them. */
  readonly knownAs: readonly string[];
  /** The chain of `like` comes back to itself. */
  readonly likeCycle: boolean;
}

export type PortRole = 'input' | 'output' | 'network' | 'pass' | 'unknown';

/** A port as its kit declares it. */
export interface KitPort {
  /** Place among the kit's ports. */
  readonly index: number;
  readonly name: string;
  readonly role: PortRole;
  readonly interface: Interface | undefined;
  /** The port that this output copies. */
  readonly follows: KitPort | undefined;
  /** The port that this one passes to and from without regenerating. */
  readonly joined: KitPort | undefined;
  readonly gives: StatedFormat | undefined;
}

/** Something wrong with the ports that a kit declares. */
export interface KitFault {
  readonly kind:
    | 'port declared twice'
    | 'range too large'
    | 'range backwards'
    | 'follows nothing'
    | 'follows an output'
    | 'follow counts differ'
    | 'join counts differ';
  /** The port or range that is meant. */
  readonly name: string;
  readonly part: string;
}

export interface Kit {
  readonly index: number;
  readonly name: string;
  readonly statement: StatementOf<'kit'>;
  readonly ports: readonly KitPort[];
  readonly portsByName: ReadonlyMap<string, KitPort>;
  readonly carries: Carried | undefined;
  /** Joins its network ports, as a switch does. */
  readonly forwards: boolean;
  /** Joins inputs to outputs, as a matrix does. */
  readonly routes: boolean;
  readonly delay: Duration | undefined;
  readonly faults: readonly KitFault[];
}

/** How pictures ride on the network; the same must stand where they enter and where they leave. */
export interface Carried {
  /** Place among the kinds of the plan. */
  readonly index: number;
  /** In words: `uncompressed 4:2:2 10 bit`, `compressed 8:1`. */
  readonly text: string;
  readonly carriage: Carriage;
  /** What an uncompressed picture is turned into. */
  readonly sampling: '4:2:2' | '4:4:4' | '4:2:0' | 'RGB';
  readonly depth_bits: number;
}

/** Which version of its firmware a node has and which the crew wants, see `Node`. */
export interface FirmwareState {
  readonly node: Node;
  readonly wanted: string | undefined;
  readonly found: string | undefined;
}
