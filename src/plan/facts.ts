/**
 * What one statement says, as plain values in SI units.
 *
 * A fact is a pure function of its statement's own text: it follows no reference (names stay text), knows no
 * position and no other statement. So it stays right for as long as the statement does, and two readings of a
 * statement that mean the same give equal facts. What was written wrongly inside the statement is not in the fact;
 * it is told apart, as a `Fault` of the statement.
 */

/** A length of time, as the plan writes it: picture frames are not seconds until a rate is known. */
export type Duration = { readonly frames: number } | { readonly seconds: number };

/** A picture or sound format as written; what is left out takes the default of the signal it rides on. */
export interface FormatFact {
  /** As written, spaces normalised: `1080p59.94 4:4:4 10 bit`, `audio 2`. */
  readonly text: string;
  /** `1080p59.94`, `1920x1200p60`; undefined for sound alone. */
  readonly raster?: string;
  readonly sampling?: string;
  readonly depth_bits?: number;
  readonly audioChannels?: number;
}

/** A port of a node, by names as written. */
export interface EndFact {
  readonly node: string;
  readonly port: string;
}

/** A destination, or an input port of a node. */
export interface TargetFact {
  readonly thing: string;
  readonly port?: string;
}

/** The cable of a link, a source or a destination, as far as stated. */
export interface CableRunFact {
  readonly cable?: string;
  readonly length_m?: number;
  readonly interface?: string;
  /** Places that the cable is laid through, in this order. */
  readonly by: readonly string[];
  readonly shares?: string;
  readonly installed: boolean;
  readonly connections?: number;
  readonly splices?: number;
}

export interface PlanFact {
  readonly kind: 'plan';
  readonly title: string;
  readonly revision?: string;
  /** ISO 8601, a real day. */
  readonly date?: string;
  readonly lasts_s?: number;
  /** House rate as written, such as `59.94`. */
  readonly rate?: string;
  readonly headroomShare?: number;
  readonly slack_m?: number;
  readonly sparesShare?: number;
  readonly units?: 'metric' | 'feet';
  readonly currency?: string;
  /** IPv4 prefixes, `10.20.0.0/24`. */
  readonly subnet?: string;
  readonly multicast?: string;
  readonly timingDomain?: number;
  readonly packing?: 'equal' | 'block';
  readonly tagged: boolean;
  readonly lipsync?: 'bt1359' | 'r37' | 'is191';
  /** Version of the VESA reduced-blanking formula that laptops use here. */
  readonly blanking?: 1 | 2;
}

export interface ImportFact {
  readonly kind: 'import';
  readonly path: string;
}

export interface PlaceFact {
  readonly kind: 'place';
  readonly name: string;
}

export interface RunFact {
  readonly kind: 'run';
  readonly from: string;
  readonly to: string;
  readonly length_m?: number;
  readonly route?: string;
  readonly temperature_c?: number;
}

export interface CircuitFact {
  readonly kind: 'circuit';
  readonly name: string;
  readonly place?: string;
  readonly current_a?: number;
  readonly voltage_v?: number;
  /** The circuit that feeds it. */
  readonly from?: string;
}

/** `in[1..4]` is { name: 'in', low: 1, high: 4 }; `usb` is { name: 'usb' } alone. */
export interface PortNamesFact {
  readonly name: string;
  readonly low?: number;
  readonly high?: number;
}

export interface PortGroupFact {
  readonly role: 'input' | 'output' | 'network';
  readonly ports: readonly PortNamesFact[];
  readonly interface?: string;
  /** Ports that these outputs copy, one by one. */
  readonly follows?: PortNamesFact;
  readonly gives?: FormatFact;
}

/** Ports that pass either way without regenerating. */
export interface JoinFact {
  readonly front: PortNamesFact;
  readonly rear: PortNamesFact;
  readonly interface?: string;
}

export type CarriesFact =
  | { readonly kind: 'uncompressed'; readonly sampling?: string; readonly depth_bits?: number }
  | { readonly kind: 'compressed'; readonly rate_bits_per_second: number }
  | { readonly kind: 'compressed'; readonly ratio: number }
  | { readonly kind: 'compressed'; readonly bitsPerPixel: number };

export interface KitFact {
  readonly kind: 'kit';
  readonly name: string;
  readonly groups: readonly PortGroupFact[];
  readonly joins: readonly JoinFact[];
  readonly carries?: CarriesFact;
  readonly forwards: boolean;
  readonly routes: boolean;
  readonly delay?: Duration;
  readonly draws_w?: number;
  readonly poeClass?: number;
  readonly supplies?: { readonly perPort_w: number; readonly inAll_w?: number };
  readonly weight_kg?: number;
  readonly cost?: number;
  readonly firmware?: string;
}

/** Where a stated value comes from: the words in quotes behind it, and whether it was written from memory. */
export interface Provenance {
  readonly source?: string;
  readonly fromMemory: boolean;
}

export interface CableLossFact extends Provenance {
  readonly loss_db_per_m: number;
  readonly frequency_hz?: number;
  readonly wavelength_m?: number;
}

export interface CableFact {
  readonly kind: 'cable';
  readonly name: string;
  readonly medium?: string;
  /** The cable whose reaches, losses and other values it has where it states none. */
  readonly like?: string;
  readonly screened: boolean;
  /** How much more it loses than the solid cable that the tables are for: 0.2 is 20 % more. */
  readonly strandedShare?: number;
  readonly losses: readonly CableLossFact[];
  readonly delay_s_per_m?: number;
  readonly weight_kg_per_m?: number;
  readonly resistance_ohm_per_m?: number;
}

export interface ReachFact extends Provenance {
  readonly cable: string;
  readonly length_m: number;
  /** Up to here without doubt; undefined: up to `length_m`. */
  readonly good_m?: number;
  /** Channel insertion loss allowed, and whether that is only remembered. */
  readonly loss_db?: number;
  readonly lossFromMemory: boolean;
}

export interface InterfaceFact {
  readonly kind: 'interface';
  readonly name: string;
  readonly signal?: string;
  readonly rate_bits_per_second?: number;
  /** Highest TMDS character rate. */
  readonly clock_hz?: number;
  readonly lanes?: { readonly count: number; readonly rate_bits_per_second: number };
  readonly wavelength_m?: number;
  readonly budgets: readonly (Provenance & { readonly loss_db: number; readonly frequency_hz?: number })[];
  readonly accepts: readonly string[];
  readonly reaches: readonly ReachFact[];
}

export interface NodeFact {
  readonly kind: 'node';
  readonly name: string;
  readonly kit?: string;
  readonly place?: string;
  readonly poweredBy: readonly string[];
  readonly labels: readonly { readonly port: string; readonly text: string }[];
  readonly gives: readonly { readonly port: string; readonly format: FormatFact }[];
  readonly firmware?: string;
  readonly address?: string;
}

export interface SourceFact extends CableRunFact {
  readonly kind: 'source';
  readonly name: string;
  readonly kit?: string;
  readonly place?: string;
  readonly format?: FormatFact;
  /** The input it is plugged into. */
  readonly into?: EndFact;
  /** The output or network port it comes out of. */
  readonly from?: EndFact;
  /** What it is made of; undefined: all that is fed to its node. */
  readonly madeOf?: readonly string[];
  readonly delay?: Duration;
  readonly poweredBy: readonly string[];
  readonly encrypted: boolean;
}

export interface DestinationFact extends CableRunFact {
  readonly kind: 'destination';
  readonly name: string;
  readonly kit?: string;
  readonly place?: string;
  readonly formats: readonly FormatFact[];
  readonly from?: EndFact;
  readonly limit?: Duration;
  readonly delay?: Duration;
  /** When the sound is heard: electrical delay and distance to the loudspeaker, both added. */
  readonly sound?: { readonly after_s?: number; readonly distance_m?: number };
  readonly streams: readonly {
    readonly rates_bits_per_second: readonly number[];
    readonly uplinks: readonly string[];
  }[];
  readonly records_bits_per_second?: number;
  readonly poweredBy: readonly string[];
}

export interface LinkFact extends CableRunFact {
  readonly kind: 'link';
  readonly name?: string;
  readonly from: EndFact;
  readonly to: EndFact;
  readonly bothWays: boolean;
  readonly standbyFor?: string;
}

export interface FeedFact {
  readonly kind: 'feed';
  readonly source: string;
  readonly targets: readonly TargetFact[];
  readonly via: readonly EndFact[];
  readonly redundant: boolean;
  readonly seamless: boolean;
  readonly limit?: Duration;
  /** Empty: always. */
  readonly segments: readonly string[];
  readonly insteadOf?: string;
}

export interface SegmentFact {
  readonly kind: 'segment';
  readonly name: string;
  readonly without: readonly string[];
}

export interface BlackFact {
  readonly kind: 'black';
  readonly targets: readonly TargetFact[];
  readonly segments: readonly string[];
}

export interface UplinkFact {
  readonly kind: 'uplink';
  readonly name: string;
  readonly place?: string;
  readonly rate_bits_per_second?: number;
}

export interface StockFact {
  readonly kind: 'stock';
  readonly cable: string;
  /** undefined: any number can be had. */
  readonly count?: number;
  readonly length_m: number;
  readonly cost?: number;
}

export interface CaseFact {
  readonly kind: 'case';
  readonly name: string;
  readonly things: readonly string[];
  readonly loose: readonly string[];
  readonly weight_kg?: number;
  readonly limit_kg?: number;
}

/** What an accept, a measurement or a proof speaks of. */
export type SubjectFact =
  | { readonly kind: 'name'; readonly name: string }
  | { readonly kind: 'link'; readonly from: EndFact; readonly to: EndFact }
  | { readonly kind: 'run'; readonly from: string; readonly to: string }
  | { readonly kind: 'feed'; readonly source: string; readonly target: TargetFact };

export interface AcceptFact {
  readonly kind: 'accept';
  readonly check: string;
  readonly subject: SubjectFact;
  readonly reason?: string;
}

/** A quantity found on site; which of the values is set follows from the unit written. */
export interface MeasuredFact {
  readonly kind: 'measured';
  readonly subject: SubjectFact;
  readonly length_m?: number;
  readonly delay?: Duration;
  readonly rate_bits_per_second?: number;
}

export interface ProvedFact {
  readonly kind: 'proved';
  readonly source: string;
  readonly target: TargetFact;
  readonly date?: string;
}

export type Fact =
  | PlanFact
  | ImportFact
  | PlaceFact
  | RunFact
  | CircuitFact
  | KitFact
  | CableFact
  | InterfaceFact
  | NodeFact
  | SourceFact
  | DestinationFact
  | LinkFact
  | FeedFact
  | SegmentFact
  | BlackFact
  | UplinkFact
  | StockFact
  | CaseFact
  | AcceptFact
  | MeasuredFact
  | ProvedFact;

export type FactOf<K extends Fact['kind']> = Extract<Fact, { kind: K }>;
