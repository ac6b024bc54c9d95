import { nothing } from './building.ts';
import { goneFrom } from './lists.ts';
import type { Delivery, Feed, Route, Segment, Tie } from './model.ts';
import type { Router } from './router.ts';

/** What came of an earlier search for ways in the same plant. */
export interface Delivered {
  readonly own: readonly Delivery[];
  readonly ended: ReadonlySet<Delivery>;
}

/**
 * Deliveries as they were before some feeds changed. Each is asked for again in order; it holds as it was unless another
 * picture has come to stand in its way, or one that stood there has gone.
 *
 * Why that is enough: a search that met no other picture finds the same shortest way while no new picture stands on
 * that way, for what stands elsewhere only takes other ways out of the choice. A search that did meet one, that had
 * equally short ways to tell, that had to pass given ports or that looked for two ways is done again as soon as any
 * spot is held otherwise than before.
 */
export class FormerDeliveries {
  readonly #router: Router;
  readonly #bySegment: ReadonlyMap<Segment | undefined, Delivered>;
  readonly #blocked: ReadonlySet<Delivery>;
  /** Spots that are, or may be, held otherwise than before. */
  readonly #spots = new Set<number>();
  /** Those of the situation that is looked at, the one that is probably asked for next, and the others by feed. */
  #own: readonly Delivery[] = nothing;
  #next = 0;
  #byFeed: Map<Feed, Delivery> | undefined;

  constructor(
    router: Router,
    bySegment: ReadonlyMap<Segment | undefined, Delivered>,
    blocked: ReadonlySet<Delivery>,
  ) {
    this.#router = router;
    this.#bySegment = bySegment;
    this.#blocked = blocked;
  }

  /** Goes on to a segment (undefined: the plan without segments) in which these feeds are to be delivered. */
  enter(segment: Segment | undefined, feeds: readonly Feed[], ended: ReadonlySet<Delivery>): void {
    const before = this.#bySegment.get(segment);
    this.#own = before?.own ?? nothing;
    this.#next = 0;
    this.#byFeed = undefined;
    for (const feed of goneFrom(
      this.#own.map((delivery) => delivery.feed),
      feeds,
    ))
      this.#router.addSpotsOf(this.#of(feed)!, this.#spots);
    for (const delivery of before?.ended ?? [])
      if (!ended.has(delivery)) this.#router.addSpotsOf(delivery, this.#spots);
    for (const delivery of ended)
      if (!before?.ended.has(delivery)) this.#router.addSpotsOf(delivery, this.#spots);
  }

  /** The delivery of a feed as it was; undefined where it has to be looked for again. */
  holding(feed: Feed, because: Delivery['because']): Delivery | undefined {
    const former = this.#of(feed);
    if (!former || former.because !== because || !this.#holds(former)) return undefined;
    return former;
  }

  /** A feed that is not delivered here, because another says the same. */
  skip(feed: Feed): void {
    const former = this.#of(feed);
    if (former) this.#router.addSpotsOf(former, this.#spots);
  }

  isBlocked(former: Delivery): boolean {
    return this.#blocked.has(former);
  }

  /** Takes note of a delivery that was looked for again. @returns the former one when it has come out the same. */
  note(found: Delivery): Delivery | undefined {
    const former = this.#of(found.feed);
    if (former && isAlike(former, found)) return former;
    if (former) this.#router.addSpotsOf(former, this.#spots);
    this.#router.addSpotsOf(found, this.#spots);
    return undefined;
  }

  /** Feeds are asked for in the order in which they were, most of the time. */
  #of(feed: Feed): Delivery | undefined {
    if (this.#own[this.#next]?.feed === feed) return this.#own[this.#next++];
    if (this.#own[this.#next - 1]?.feed === feed) return this.#own[this.#next - 1];
    this.#byFeed ??= new Map(this.#own.map((delivery) => [delivery.feed, delivery]));
    const former = this.#byFeed.get(feed);
    if (former) this.#next = this.#own.indexOf(former, this.#next) + 1;
    return former;
  }

  #holds(former: Delivery): boolean {
    if (this.#spots.size === 0) return true;
    const { feed, ties } = former;
    if (this.#blocked.has(former) || ties.length > 0 || feed.seamless || feed.via.length > 0) return false;
    return !this.#router.takesAny(former, this.#spots);
  }
}

function isAlike(a: Delivery, b: Delivery): boolean {
  if (a.because !== b.because || a.twoPictures || b.twoPictures) return false;
  if (a.noRoute?.kind !== b.noRoute?.kind || a.noRoute?.via !== b.noRoute?.via) return false;
  return (
    areEqual(a.routes, b.routes, isSameRoute) &&
    areEqual(a.ties, b.ties, isSameTie) &&
    areEqual(a.sharedLinks, b.sharedLinks)
  );
}

function isSameRoute(a: Route, b: Route): boolean {
  return areEqual(a.ports, b.ports) && areEqual(a.steps, b.steps, (one, other) => one.link === other.link);
}

function isSameTie(a: Tie, b: Tie): boolean {
  return a.port === b.port && a.chosen === b.chosen && areEqual(a.others, b.others);
}

function areEqual<T>(a: readonly T[], b: readonly T[], isSame = (x: T, y: T) => x === y): boolean {
  return a.length === b.length && a.every((one, i) => isSame(one, b[i]!));
}
