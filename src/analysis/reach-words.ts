import type { ReachJudgement } from '../physics/reach.ts';
import type { Reach } from './model.ts';

/** Where a kind of cable, a length or a table is missing. */
export const notKnown: Reach = {
  verdict: 'not known',
  reach_m: undefined,
  good_m: undefined,
  loss_db: undefined,
  loss_limit_db: undefined,
  losses_db: [],
  share: undefined,
  decidedBy: undefined,
  judgedAs: undefined,
  picture: undefined,
  frequency_hz: undefined,
  temperature_c: undefined,
  fromMemory: false,
  memoryDecides: false,
  source: undefined,
};

export const VERDICTS: Readonly<Record<ReachJudgement, Reach['verdict']>> = {
  fits: 'good',
  'near limit': 'near the limit',
  doubtful: 'doubtful',
  beyond: 'beyond',
};

/** So far a remembered value may be off before it is told that it decides (common practice, no source). */
export const BADLY_REMEMBERED = 1.25;
