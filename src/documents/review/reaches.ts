import type { Analysis, Link } from '../../analysis/model.ts';
import type { Comparison } from './comparison.ts';
import type { ReachChange, ReachState } from './review.ts';
import { placeOf } from './thing-changes.ts';

/** Cables that come nearer to what they may be at most, or further from it; the nearest to it first. */
export function reachChangesOf(comparison: Comparison): ReachChange[] {
  const changes = comparison.links.flatMap(({ before, after }): ReachChange[] => {
    if (!before || !after) return [];
    const [was, is] = [stateOf(comparison.was, before), stateOf(comparison.is, after)];
    if (isSame(was, is)) return [];
    return [
      {
        change: usedOf(is) > usedOf(was) ? 'less margin' : 'more margin',
        ...comparison.link(after),
        before: was,
        after: is,
        place: placeOf(after.statement, 'new'),
      },
    ];
  });
  return changes.sort((a, b) => usedOf(b.after) - usedOf(a.after));
}

function stateOf({ reaches }: Analysis, link: Link): ReachState {
  const reach = reaches[link.chain.index];
  return {
    length_m: link.length.length_m,
    reach_m: reach?.reach_m,
    share: reach?.share,
    verdict: reach?.verdict ?? 'not known',
  };
}

/** How much of what is allowed is used; where nothing is said of that, the length tells which is more. */
function usedOf({ share, length_m }: ReachState): number {
  return share ?? (length_m === undefined ? 0 : length_m / 1e9);
}

/** Lengths to the half centimetre, shares to the half per mille. */
function isSame(was: ReachState, is: ReachState): boolean {
  return (
    near(was.length_m, is.length_m, 0.005) &&
    near(was.reach_m, is.reach_m, 0.005) &&
    near(was.share, is.share, 0.0005) &&
    was.verdict === is.verdict
  );
}

function near(a: number | undefined, b: number | undefined, tolerance: number): boolean {
  return a === b || (a !== undefined && b !== undefined && Math.abs(a - b) < tolerance);
}
