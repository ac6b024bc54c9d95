/** What happens with the pictures: wishes, routes, flows, loads, formats, delay, reach. */
import type { Format } from '../../physics/raster.ts';
import type { Duration } from '../../plan/facts.ts';
import type { StatementOf } from '../../plan/plan.ts';
import type { Carried, Interface } from './library.ts';
import type { Circuit, Destination, Link, Node, Port, Source, Uplink } from './plant.ts';

export interface Segment {
  readonly index: number;
  readonly name: string;
  readonly statement: StatementOf<'segment'>;
  readonly without: readonly (Node | Source | Destination | Link | Circuit | Uplink)[];
}

/** Where a feed ends: a destination's connector or an input of a node. */
export type Target = Destination | Port;

/** One wish: one source to one target. A feed statement with three targets is three of them. */
export interface Feed {
  readonly index: number;
  /** `program -> judges`, `scores -> mixer.in1`, as written. */
  readonly name: string;
  readonly statement: StatementOf<'feed'>;
  /** Which target of the statement. */
  readonly targetIndex: number;
  readonly sourceName: string;
  readonly targetName: string;
  readonly source: Source | undefined;
  readonly target: Target | undefined;
  readonly via: readonly Port[];
  readonly redundant: boolean;
  readonly seamless: boolean;
  /** Holds whenever nothing takes its place. */
  readonly always: boolean;
  readonly segments: readonly Segment[];
  readonly insteadOf: Source | undefined;
  /** Another feed sends the same source to the same target whenever this one does: this one does not count. */
  readonly repeats: Feed | undefined;
  readonly measured: StatementOf<'measured'> | undefined;
  readonly proofs: readonly StatementOf<'proved'>[];
}

/** The plan as it is without any segment, or in one of its segments. */
export interface Situation {
  /** Undefined: the always-on feeds alone. */
  readonly segment: Segment | undefined;
  /** Deliveries that hold here and are not those of the plan without segments, in order of statements. */
  readonly own: readonly Delivery[];
  /** Deliveries of the plan without segments that do not hold here as they are. */
  readonly ended: ReadonlySet<Delivery>;
  readonly lostLinks: ReadonlySet<Link>;
  readonly lostNodes: ReadonlySet<Node>;
  /** Standbys plugged in for lost links. */
  readonly standbys: readonly Link[];
}

/** A feed in one situation: how the picture gets there, or why it does not. */
export interface Delivery {
  readonly index: number;
  readonly feed: Feed;
  readonly segment: Segment | undefined;
  /** Why it stands here apart from the plan without segments: undefined there and for a segment's own feed. */
  readonly because: 'rerouted' | 'delay' | undefined;
  /** Empty when there is none; two for a seamless feed. */
  readonly routes: readonly Route[];
  readonly noRoute: NoRoute | undefined;
  /** Two equally short ways: which link was chosen by order of statements, and which others were not. */
  readonly ties: readonly Tie[];
  /** Another picture that is already where this one would go, when only that stops it. */
  readonly twoPictures: TwoPictures | undefined;
  /** For seamless feeds: the network links that both copies take. */
  readonly sharedLinks: readonly Link[];
  /** As it arrives; undefined when the source's format is not known or there is no route. */
  readonly format: Format | undefined;
  readonly formatFaults: readonly FormatFault[];
  readonly delay: Delay;
}

export interface Route {
  /** Every port on the way as it is met, the source's own first, the target last. */
  readonly ports: readonly Port[];
  readonly steps: readonly Step[];
}

/** One cable on a route. */
export interface Step {
  readonly link: Link;
  /** True: from the link's first end to its second. */
  readonly forward: boolean;
  /** On a network link the flow it rides in. */
  readonly flow: Flow | undefined;
  /** On this cable; undefined when the source's format is not known. */
  readonly format: Format | undefined;
}

/** One picture as it rides on the network: counted once on every link and direction, however many it serves. */
export interface Flow {
  readonly index: number;
  readonly source: Source;
  /** The node that puts it onto the network; the source itself when it sends by itself. */
  readonly entry: Node | Source;
  /** 0; 1 for the second copy of a seamless feed. */
  readonly copy: 0 | 1;
  readonly carried: Carried;
  readonly format: Format | undefined;
  readonly load_bits_per_second: number;
}

/** Why a picture does not arrive; `howFar` tells where it gets to and what is missing there. */
export interface NoRoute {
  readonly kind:
    | 'source not known'
    | 'target not known'
    | 'target is no input'
    | 'source not plugged in'
    | 'target not plugged in'
    | 'via cannot be met'
    | 'out of service'
    | 'no way';
  /** The port that is not met. */
  readonly via: Port | undefined;
}

/** How far a picture without a route gets. */
export interface HowFar {
  /** The ports it passes up to where it stops, the source's own first; empty when it does not leave its source. */
  readonly reaches: readonly Port[];
  readonly missing: Missing;
}

/** What would have to be there for the picture to go on. */
export type Missing =
  | { readonly kind: 'nothing' }
  /** A port that leads on, but with no cable in it. */
  | { readonly kind: 'no cable'; readonly port: Port }
  /** The picture comes into this node, which passes it nowhere. */
  | { readonly kind: 'passes nothing'; readonly node: Node }
  | {
      readonly kind: 'other carriage';
      readonly entry: Carried;
      readonly node: Node;
      readonly exit: Carried | undefined;
    }
  /** Only a standby would lead on. */
  | { readonly kind: 'standby'; readonly link: Link }
  | { readonly kind: 'kit not known'; readonly node: Node }
  /** The network before and the network behind are not joined. */
  | { readonly kind: 'not joined'; readonly from: Port; readonly to: Port }
  | { readonly kind: 'wrong way'; readonly link: Link }
  /** A link leads on, but its other end is not known. */
  | { readonly kind: 'broken link'; readonly link: Link };

export interface Tie {
  /** Where the ways part. */
  readonly port: Port;
  readonly chosen: Link;
  readonly others: readonly Link[];
}

export interface TwoPictures {
  /** The output, non-network input or destination that would show two. */
  readonly port: Port;
  /** Who is there already. */
  readonly other: Delivery;
}

/** Where a picture does not fit on its way, in the order in which it is met. */
export type FormatFault =
  | {
      /** `doubtful`: it depends on the devices. */
      readonly kind: 'too big' | 'doubtful' | 'not carried';
      readonly step: Step;
      readonly interface: Interface;
      readonly format: Format;
      /** What it needs and what there is, in `unit`; undefined when the interface does not carry its like at all. */
      readonly needs: number | undefined;
      readonly limit: number | undefined;
      readonly unit: 'bits_per_second' | 'hz';
    }
  /** The network takes it off in another way than it was put on. */
  | {
      readonly kind: 'other carriage';
      readonly node: Node;
      readonly entered: Carried;
      readonly left: Carried;
    }
  /** A copy-protected picture may not leave display links. */
  | { readonly kind: 'protected'; readonly step: Step }
  | { readonly kind: 'not taken'; readonly format: Format; readonly destination: Destination };

export interface Delay {
  /** From where the picture begins to where it is watched; undefined when a part is not known. */
  readonly delay_s: number | undefined;
  readonly from: 'computed' | 'measured';
  /** What it would be without a measurement. */
  readonly computed_s: number | undefined;
  /** Up to the source's own output. */
  readonly beginning: Beginning | undefined;
  /** From there to where it is watched. */
  readonly path_s: number | undefined;
  /** Every item that takes time, in the order of the way; what is measured replaces their sum. */
  readonly parts: readonly DelayPart[];
  readonly limit_s: number | undefined;
  /** As it was stated, the stricter of the feed's and the destination's. */
  readonly limit: Duration | undefined;
  readonly limitOn: 'feed' | 'destination' | undefined;
  readonly over: boolean;
}

/** How old a picture is where its source puts it out. */
export interface Beginning {
  readonly source: Source;
  /** Undefined when a part is not known. */
  readonly delay_s: number | undefined;
  /** The source's own delay in it. */
  readonly own_s: number | undefined;
  /** The slowest that it is made of; undefined when it begins by itself. */
  readonly slowest: Ingredient | undefined;
}

/** One of the pictures that a source is made of, as it comes through the node. */
export interface Ingredient {
  readonly source: Source;
  /** How it gets to the node; undefined when no feed brings it there. */
  readonly delivery: Delivery | undefined;
  readonly arrives_s: number;
  readonly node: Node | undefined;
  /** The node's own delay, in frames of this picture. */
  readonly node_s: number;
}

/** One item of a delay, for its working. */
export interface DelayPart {
  readonly what: 'made of' | 'source' | 'node' | 'cable' | 'destination';
  /** The source that it is made of, the source itself, the node, the link or the destination. */
  readonly name: string;
  readonly time_s: number;
  /** When it is stated in frames. */
  readonly frames: number | undefined;
}

/** What one direction of a link carries. */
export interface DirectionLoad {
  readonly load_bits_per_second: number;
  /** Network: flows in order of their sources. */
  readonly flows: readonly Flow[];
  /** Other links: the source whose picture is on it. */
  readonly pictures: readonly Source[];
  /** Of the capacity; undefined when the link has none. */
  readonly share: number | undefined;
}

export interface Load {
  readonly segment: Segment | undefined;
  readonly forward: DirectionLoad;
  readonly backward: DirectionLoad;
}

export interface Traffic {
  readonly link: Link;
  /** Without segments. */
  readonly base: Load;
  /** Segments in which it differs from `base`; in all others it is as there. */
  readonly differing: readonly Load[];
  readonly worst: {
    readonly segment: Segment | undefined;
    readonly direction: 'forward' | 'backward';
    readonly share: number | undefined;
    readonly load_bits_per_second: number;
  };
  readonly judgement: 'fits' | 'over headroom' | 'over capacity' | 'not judged';
  /** Nothing ever goes over it; also true of a standby. False while one of its ends is not known. */
  readonly unused: boolean;
}

/** Whether the chain of cables is short enough for what it carries. */
export interface Reach {
  readonly verdict: 'good' | 'near the limit' | 'doubtful' | 'beyond' | 'not known';
  /** At most so long (the one link of its kind of cable); undefined when no table or budget says. */
  readonly reach_m: number | undefined;
  readonly good_m: number | undefined;
  readonly loss_db: number | undefined;
  readonly loss_limit_db: number | undefined;
  /** On coax: the part of the loss that each cable of the chain has, in its order; empty where it is not known. */
  readonly losses_db: readonly number[];
  /** Of what is allowed, by whichever decides: 1 is the limit. */
  readonly share: number | undefined;
  readonly decidedBy: 'length' | 'loss' | undefined;
  /** The interface it was judged at: for coax that of the fastest picture carried. */
  readonly judgedAs: Interface | undefined;
  /** On coax: the fastest picture carried in any segment; undefined when there is none. */
  readonly picture: Format | undefined;
  /** The loss is that at this frequency. */
  readonly frequency_hz: number | undefined;
  /** The hottest run, when that shortens it. */
  readonly temperature_c: number | undefined;
  /** A value that decides is only remembered. */
  readonly fromMemory: boolean;
  /** Were that value a quarter worse than it is remembered, the cable would be too long. */
  readonly memoryDecides: boolean;
  readonly source: string | undefined;
}

/** Figures of a source, for its hover and the table. */
export interface SourceFigures {
  readonly source: Source;
  readonly format: Format | undefined;
  readonly carried: Carried;
  readonly active_bits_per_second: number | undefined;
  readonly packets_per_frame: number | undefined;
  readonly picture_bits_per_second: number | undefined;
  readonly sound_bits_per_second: number | undefined;
  readonly ancillary_bits_per_second: number | undefined;
  readonly network_bits_per_second: number | undefined;
  /** On the cable it leaves by when that is no network. */
  readonly interface_bits_per_second: number | undefined;
  /** Its rate is not the house rate. */
  readonly rateDiffers: boolean;
}
