import type { Analysis, Delivery, Feed, Segment } from '../analysis/model.ts';

/** What is wrong with a feed: where it holds first, and in which segments it holds too. */
export interface FeedTrouble<T> {
  readonly feed: Feed;
  readonly delivery: Delivery;
  readonly trouble: T;
  /** Empty when it holds in the plan without segments. */
  readonly segments: readonly Segment[];
}

/**
 * Looks at every feed once, however many segments it is worked out in: what is wrong without segments is told for
 * that, what is wrong only in segments is told with their names.
 */
export function feedTroubles<T>(
  { remarkable }: Pick<Analysis, 'remarkable'>,
  look: (delivery: Delivery) => T | undefined,
): FeedTrouble<T>[] {
  const byFeed = new Map<Feed, FeedTrouble<T> & { segments: Segment[] }>();
  for (const delivery of remarkable.deliveries) {
    const { feed, segment } = delivery;
    const known = byFeed.get(feed);
    if (known && known.segments.length === 0) continue;
    const trouble = look(delivery);
    if (trouble === undefined) continue;
    if (!known) byFeed.set(feed, { feed, delivery, trouble, segments: segment ? [segment] : [] });
    else if (segment) known.segments.push(segment);
  }
  return [...byFeed.values()];
}

/** The part of a feed's statement that names its target. */
export function targetPart({ targetIndex }: Feed): string {
  return `targets/${targetIndex}`;
}
