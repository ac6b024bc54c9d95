/** What our extension and our server say to each other about the comparison of two plans. */
import type { ComparedScenes } from '../../documents/drawing/compare-scenes.ts';
import type { TextSpan } from '../protocol.ts';

export const reviewRequests = {
  /** `ReviewQuestion` -> `ReviewAnswer`: what has changed in a plan, and what that does. */
  review: 'feedplot/review',
  /** `TextThenQuestion` -> `string | null`: the text of a file at a commit. */
  textThen: 'feedplot/textThen',
} as const;

/** What a plan is compared with. */
export type Against =
  /** A commit, branch or tag of the repository that the plan lies in. */
  | { readonly kind: 'revision'; readonly revision: string }
  /** Another file. */
  | { readonly kind: 'file'; readonly uri: string };

export interface ReviewQuestion {
  /** Any file of the plan. */
  readonly uri: string;
  readonly against: Against;
}

/** Why there is none, in words for the person who asked; or the review. */
export type ReviewAnswer =
  | { readonly kind: 'trouble'; readonly reason: string }
  | { readonly kind: 'review'; readonly review: ShownReview };

export interface ShownReview {
  /** URI of the plan's own file. */
  readonly plan: string;
  readonly title: string;
  /** What matters in one line. */
  readonly headline: string;
  /** What was compared with what. */
  readonly compared: string;
  readonly sections: readonly ShownSection[];
  readonly scenes: ComparedScenes;
  /** Network links whose load differs, to be told beside their text. */
  readonly loads: readonly ShownLoad[];
}

export interface ShownSection {
  readonly name: string;
  readonly title: string;
  readonly about: string;
  readonly open: boolean;
  readonly numbered: boolean;
  readonly entries: readonly ShownEntry[];
  readonly cautions: readonly string[];
}

export interface ShownEntry {
  readonly lead: string;
  readonly text: string;
  readonly notes: readonly string[];
  readonly grave: boolean;
  readonly place: ShownPlace | null;
}

export interface ShownPlace {
  /** `old`: in the text before the change, because it is gone since. */
  readonly side: 'old' | 'new';
  readonly uri: string;
  readonly range: TextSpan;
}

export interface ShownLoad {
  readonly place: ShownPlace;
  /** `backward 53.7 % → 80.5 %`, for each direction that differs. */
  readonly text: string;
}

export interface TextThenQuestion {
  readonly uri: string;
  readonly revision: string;
}
