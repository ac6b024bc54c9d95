/** Loads against the line rate of one direction of a network link. */
import { requireWithin } from './physics-error.ts';

/** How many equal loads go one way through a link of this rate, up to 100 %. */
export function flowsThatFit(capacity_bits_per_second: number, load_bits_per_second: number): number {
  requireWithin('load', load_bits_per_second, 1, 1e18, 'b/s');
  return Math.floor(capacity_bits_per_second / load_bits_per_second);
}

/** `over headroom`: doubtful; `over capacity`: cannot work. */
export type LoadJudgement = 'fits' | 'over headroom' | 'over capacity';

/** Judges a load against the line rate of one direction; nothing is rounded before the comparison. */
export function judgeLoad(
  load_bits_per_second: number,
  capacity_bits_per_second: number,
  headroom = 0.1,
): LoadJudgement {
  requireWithin('headroom', headroom, 0, 1);
  if (load_bits_per_second > capacity_bits_per_second) return 'over capacity';
  return load_bits_per_second > capacity_bits_per_second * (1 - headroom) ? 'over headroom' : 'fits';
}
