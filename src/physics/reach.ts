/** Judging a length against what is allowed. */
import { exceeds } from './decimal.ts';
import { requireLength, requireWithin } from './physics-error.ts';

/** `near limit`: it works but fails suddenly; `doubtful`: it may or may not work; `beyond`: it does not. */
export type ReachJudgement = 'fits' | 'near limit' | 'doubtful' | 'beyond';

export interface AllowedLength {
  /** The limit. */
  readonly most_m: number;
  /** Up to here without doubt; undefined: up to the limit. */
  readonly good_m?: number | undefined;
  /** Share of the limit beyond which it is near: 0.9 for coax; undefined where a limit holds as stated. */
  readonly near_share?: number | undefined;
}

/** Judges a length; the limit itself still fits. @throws PhysicsError for lengths that cannot be */
export function judgeLength(length_m: number, { most_m, good_m, near_share }: AllowedLength): ReachJudgement {
  requireLength(length_m);
  if (exceeds(length_m, requireWithin('reach', most_m, 0, Number.MAX_VALUE, 'm'))) return 'beyond';
  if (good_m !== undefined && exceeds(length_m, good_m)) return 'doubtful';
  if (near_share !== undefined && exceeds(length_m, most_m * near_share)) return 'near limit';
  return 'fits';
}

/** A piece of a chain of cables that are joined without an active port between. */
export interface JoinedPiece {
  readonly length_m: number;
  /** How far the interface would reach on this cable alone. */
  readonly reach_m: number;
}

/**
 * Share of the reach that joined cables use up: the sum of each length over its own reach, which for one budget is
 * the summed loss over the budget (derived). 1 is the limit.
 *
 * @throws PhysicsError for a length that cannot be or a reach of 0
 */
export function joinedShare(pieces: readonly JoinedPiece[]): number {
  let share = 0;
  for (const { length_m, reach_m } of pieces) {
    share += requireLength(length_m) / requireWithin('reach', reach_m, 0.001, Number.MAX_VALUE, 'm');
  }
  return share;
}
