import type { Analysis, Delivery, Situation } from './model.ts';

/** The deliveries that hold in a situation, in order of statements: those of the plan without segments that are not ended there, and its own. */
export function deliveriesHolding({ situations }: Analysis, { segment, own, ended }: Situation): Delivery[] {
  if (segment === undefined) return [...own];
  const always = situations[0]?.own ?? [];
  const here = ended.size === 0 ? always : always.filter((delivery) => !ended.has(delivery));
  if (own.length === 0) return [...here];
  return [...here, ...own].sort((a, b) => a.feed.index - b.feed.index || a.index - b.index);
}

/** The pictures that arrive in a situation: what has a way. */
export function arrivingIn(analysis: Analysis, situation: Situation): Delivery[] {
  return deliveriesHolding(analysis, situation).filter(({ routes }) => routes.length > 0);
}
