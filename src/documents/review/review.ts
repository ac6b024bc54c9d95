/** What a change of a plan does to the show: a tree of plain values, apart from how it is told. */
import type { Analysis } from '../../analysis/model.ts';
import type { Finding } from '../../checks/finding.ts';
import type { TextRange } from '../../plan/plan.ts';

/** One of the two plans that are compared. */
export interface Side {
  readonly analysis: Analysis;
  readonly findings: readonly Finding[];
  /** What it is called: a revision, a file. */
  readonly name: string;
}

/** Where something stands, so that an editor can open it. Removed things stand in the old text only. */
export interface ReviewPlace {
  readonly side: 'old' | 'new';
  readonly file: string;
  readonly range: TextRange;
}

export type ThingKind =
  | 'place'
  | 'run'
  | 'circuit'
  | 'kit'
  | 'cable'
  | 'interface'
  | 'node'
  | 'source'
  | 'destination'
  | 'link'
  | 'feed'
  | 'black'
  | 'segment'
  | 'uplink'
  | 'stock'
  | 'case'
  | 'plan';

/** One property before and after, in words; undefined: it was not said. */
export interface Difference {
  readonly what: string;
  readonly before: string | undefined;
  readonly after: string | undefined;
}

export interface ThingChange {
  /** `moved`: it stands in another place, or a cable is plugged elsewhere. */
  readonly change: 'added' | 'removed' | 'renamed' | 'moved' | 'changed';
  readonly kind: ThingKind;
  readonly name: string;
  /** Its name before, when that was another. */
  readonly was: string | undefined;
  readonly differences: readonly Difference[];
  readonly place: ReviewPlace;
}

/** One direction of a network link at its worst. */
export interface LoadState {
  readonly load_bits_per_second: number;
  readonly share: number | undefined;
  readonly segment: string | null;
}

export interface LoadChange {
  readonly link: string;
  readonly direction: 'forward' | 'backward';
  /** From which end to which, of the new plan where it is there. */
  readonly from: string;
  readonly to: string;
  /** Undefined: the link was not there, or is gone. */
  readonly before: LoadState | undefined;
  readonly after: LoadState | undefined;
  readonly capacity_bits_per_second: number | undefined;
}

/** What a destination or input shows in one part of the show. */
export interface PictureState {
  readonly source: string;
  readonly way: readonly string[];
  readonly delay_s: number | undefined;
}

export interface PictureChange {
  readonly change:
    | 'gains a picture'
    | 'loses its picture'
    | 'shows another'
    | 'goes another way'
    | 'later'
    | 'sooner';
  readonly target: string;
  readonly segment: string | null;
  readonly before: PictureState | undefined;
  readonly after: PictureState | undefined;
}

export interface ReachState {
  readonly length_m: number | undefined;
  readonly reach_m: number | undefined;
  readonly share: number | undefined;
  readonly verdict: string;
}

export interface ReachChange {
  readonly link: string;
  readonly before: ReachState;
  readonly after: ReachState;
}

/** A picture that a loss would take, and did not before; or no longer takes. */
export interface CoverChange {
  readonly change: 'cover gained' | 'cover lost';
  readonly feed: string;
  readonly segment: string | null;
  readonly losses: readonly string[];
}

export interface Total {
  readonly what: 'cost' | 'weight' | 'power';
  readonly before: number;
  readonly after: number;
}

export interface CableToBuy {
  readonly cable: string;
  readonly link: string;
  readonly needed_m: number | undefined;
}

export type StepKind = 'set up' | 'lay' | 'unplug' | 'plug' | 'switch' | 'take out' | 'look';

/** One thing to do on site, naming place, box, port and cable. */
export interface Step {
  readonly kind: StepKind;
  /** Where the hands are. */
  readonly place: string;
  readonly text: string;
  /** Where a running picture goes dark with this step, until a later one. */
  readonly dark: readonly string[];
}

export interface Review {
  readonly title: string;
  readonly old: { readonly name: string; readonly revision: string | undefined };
  readonly new: { readonly name: string; readonly revision: string | undefined };
  readonly things: readonly ThingChange[];
  readonly loads: readonly LoadChange[];
  readonly pictures: readonly PictureChange[];
  readonly reaches: readonly ReachChange[];
  readonly newFindings: readonly Finding[];
  readonly mendedFindings: readonly Finding[];
  readonly cover: readonly CoverChange[];
  readonly totals: readonly Total[];
  readonly buy: readonly CableToBuy[];
  readonly steps: readonly Step[];
}
