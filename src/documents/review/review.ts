/** What a change of a plan does to the show: a tree of plain values, apart from how it is told. */
import type { Analysis } from '../../analysis/model.ts';
import type { Finding } from '../../checks/finding.ts';
import type { AcceptedFinding } from '../../checks/findings.ts';
import type { StatementOf, TextRange } from '../../plan/plan.ts';

/** One of the two plans that are compared. */
export interface Side {
  readonly analysis: Analysis;
  readonly findings: readonly Finding[];
  readonly accepted: readonly AcceptedFinding[];
  /** How many places of its text could not be read: what stands there is not compared. */
  readonly unreadable: number;
  /** What it is called: a revision, a file. */
  readonly name: string;
}

/** A thing by its name in the plan, and as people call it on every paper. */
export interface Named {
  readonly name: string;
  readonly title: string;
}

/** Where something stands, so that an editor can open it. Removed things stand in the old text only. */
export interface ReviewPlace {
  readonly side: 'old' | 'new';
  readonly file: string;
  readonly range: TextRange;
}

export type ThingKind =
  | 'plan'
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
  | 'accept'
  | 'measured'
  | 'proved';

/** One property before and after, in words; undefined: it was not said. */
export interface Difference {
  readonly what: string;
  readonly before: string | undefined;
  readonly after: string | undefined;
}

export const thingChangeKinds = ['added', 'removed', 'renamed', 'moved', 'changed'] as const;

export interface ThingChange extends Named {
  /** `moved`: it stands in another place, or a cable is plugged elsewhere. */
  readonly change: (typeof thingChangeKinds)[number];
  readonly kind: ThingKind;
  /** Its name before, when that was another. */
  readonly was: string | undefined;
  readonly differences: readonly Difference[];
  readonly place: ReviewPlace;
}

/** One direction of a network link at its worst. */
export interface LoadState {
  readonly load_bits_per_second: number;
  readonly share: number | undefined;
  readonly capacity_bits_per_second: number | undefined;
  readonly segment: Named | null;
}

export const loadChangeKinds = ['added', 'removed', 'raised', 'lowered'] as const;

export interface LoadChange extends Named {
  readonly change: (typeof loadChangeKinds)[number];
  readonly direction: 'forward' | 'backward';
  /** From which socket to which, of the new plan where it is there. */
  readonly from: string;
  readonly to: string;
  /** Undefined: the link was not there, or is gone. */
  readonly before: LoadState | undefined;
  readonly after: LoadState | undefined;
  /** Pictures that ride on it in any segment and did not before, and those that no longer do. */
  readonly gains: readonly Named[];
  readonly loses: readonly Named[];
  readonly place: ReviewPlace;
}

/** What a destination or input shows in one part of the show. */
export interface PictureState {
  readonly source: Named;
  /** The cables that it rides, one after another; both copies of a seamless feed. */
  readonly way: readonly Named[];
  readonly delay_s: number | undefined;
  readonly limit_s: number | undefined;
  readonly over: boolean;
}

export const pictureChangeKinds = [
  'loses its picture',
  'shows another',
  'gains a picture',
  'another way',
  'later',
  'sooner',
] as const;

export interface PictureChange extends Named {
  readonly change: (typeof pictureChangeKinds)[number];
  /** Null: whenever no segment differs. */
  readonly segment: Named | null;
  readonly before: PictureState | undefined;
  readonly after: PictureState | undefined;
  readonly place: ReviewPlace;
}

export interface ReachState {
  readonly length_m: number | undefined;
  readonly reach_m: number | undefined;
  /** Of what is allowed, by length or by loss. */
  readonly share: number | undefined;
  readonly verdict: string;
}

export const reachChangeKinds = ['less margin', 'more margin'] as const;

export interface ReachChange extends Named {
  readonly change: (typeof reachChangeKinds)[number];
  readonly before: ReachState;
  readonly after: ReachState;
  readonly place: ReviewPlace;
}

export const coverChangeKinds = ['cover lost', 'cover gained'] as const;

/** What becomes of a picture when something fails, the best first. */
export const coverStates = ['goes on', 'back after re-plugging', 'dark'] as const;
export type CoverState = (typeof coverStates)[number];

/** A picture that a failure hurts more than before, or less. */
export interface CoverChange extends Named {
  readonly change: (typeof coverChangeKinds)[number];
  readonly segment: Named | null;
  readonly before: CoverState;
  readonly after: CoverState;
  /** The cables, boxes and runs of which the loss of any one does that. */
  readonly losses: readonly Named[];
  readonly place: ReviewPlace;
}

/** A finding that is no longer in the list because the crew accepts it, or is again because they no longer do. */
export interface AcceptanceChange {
  readonly finding: Finding;
  readonly acceptance: StatementOf<'accept'>;
}

export const totalKinds = ['cost', 'weight', 'power', 'circuit', 'case'] as const;

/** A sum over the plan, or the watts of one circuit, the weight of one case; undefined on a side that does not have it. */
export interface Total extends Named {
  readonly what: (typeof totalKinds)[number];
  readonly before: number | undefined;
  readonly after: number | undefined;
  readonly limit: number | undefined;
}

export const purchaseKinds = ['to buy', 'no longer to buy'] as const;

/** Pieces of cable that are not at hand. */
export interface Purchase extends Named {
  readonly change: (typeof purchaseKinds)[number];
  readonly length_m: number | undefined;
  readonly count: number;
}

export const stepKinds = [
  'label',
  'set up',
  'lay',
  'plug',
  'unplug',
  'move',
  'carry',
  'power',
  'set',
  'take up',
  'take out',
  'look',
] as const;

/** A socket as hands find it. */
export interface Socket {
  readonly place: string;
  readonly box: string;
  /** Undefined: the thing has one connector. */
  readonly socket: string | undefined;
}

/** One thing to do on site. */
export interface Step {
  readonly kind: (typeof stepKinds)[number];
  /** Where the hands are; where they are at both ends of a cable, at its first. */
  readonly place: string;
  /** The whole step in words, place and all. */
  readonly text: string;
  readonly cable: {
    readonly title: string;
    readonly kind: string;
    readonly length_m: number | undefined;
  } | null;
  readonly sockets: readonly Socket[];
  /** Where a running picture goes dark with this step, until a later one brings it back. */
  readonly dark: readonly string[];
  /** Where a picture that an earlier step took comes back. */
  readonly back: readonly string[];
  /** Where a picture ends that the new plan does not show there any more. */
  readonly ends: readonly string[];
}

export interface ReviewedPlan {
  readonly name: string;
  readonly revision: string | undefined;
  readonly unreadable: number;
}

/** A merge of several histories: what it brings that none of them has. */
export interface MergeReview {
  readonly parents: readonly string[];
  readonly findings: readonly Finding[];
}

export interface Review {
  readonly title: string;
  readonly old: ReviewedPlan;
  readonly new: ReviewedPlan;
  readonly newFindings: readonly Finding[];
  readonly mendedFindings: readonly Finding[];
  readonly acceptedFindings: readonly AcceptanceChange[];
  readonly noLongerAccepted: readonly AcceptanceChange[];
  /** What people call the things that findings are about, by the names that stand in the messages. */
  readonly subjects: ReadonlyMap<string, string>;
  readonly merge: MergeReview | undefined;
  readonly pictures: readonly PictureChange[];
  readonly loads: readonly LoadChange[];
  readonly reaches: readonly ReachChange[];
  readonly cover: readonly CoverChange[];
  readonly totals: readonly Total[];
  readonly currency: string | undefined;
  readonly purchases: readonly Purchase[];
  readonly things: readonly ThingChange[];
  readonly steps: readonly Step[];
  /** What hands have to know before they begin. */
  readonly cautions: readonly string[];
  readonly units: 'metric' | 'feet';
}
