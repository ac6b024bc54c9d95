import type { Building } from './building.ts';
import { Deliverer } from './deliverer.ts';
import type { FormerDeliveries } from './former-deliveries.ts';
import { add } from './lists.ts';
import { type Loss, Losses, nothingLost } from './losses.ts';
import type { Delivery, Feed, Link, Plant, Segment, Situation, Source, Target, Unmatched } from './model.ts';
import type { Router } from './router.ts';
import type { Black, Wishes } from './wishes.ts';

/** Where every picture goes, without segments and in each. */
export interface Deliveries {
  /** The plan without segments first. */
  readonly situations: readonly [Building<Situation>, ...Building<Situation>[]];
  readonly all: Building<Delivery>[];
  readonly unmatched: readonly Unmatched[];
  /** See `Deliverer`. */
  readonly blocked: ReadonlySet<Delivery>;
  readonly found: readonly Building<Delivery>[];
}

/** @param former Deliveries of before, to be taken over where they still hold. */
export function deliveriesOf(
  plant: Plant,
  wishes: Wishes,
  router: Router,
  former?: FormerDeliveries,
): Deliveries {
  return new Director(plant, wishes, router, former).direct();
}

/** A feed to be delivered in a segment, and why it stands apart there. */
interface Task {
  readonly feed: Building<Feed>;
  readonly because: Delivery['because'];
}

const nothingEnded: ReadonlySet<Delivery> = new Set();

class Director {
  readonly #plant: Plant;
  readonly #wishes: Wishes;
  readonly #router: Router;
  readonly #deliverer: Deliverer;
  readonly #former: FormerDeliveries | undefined;
  readonly #unmatched: Unmatched[] = [];
  /** Always-on deliveries by their target. */
  readonly #at = new Map<Target, Building<Delivery>[]>();
  /** Always-on deliveries by their source and target together. */
  readonly #always = new Map<number, Building<Delivery>>();
  /** Feeds of segments that are needed in one of them at least. */
  readonly #needed = new Set<Feed>();
  /** Always-on deliveries by the links that they take; made when the first segment loses a link. */
  #over: Map<Link, Building<Delivery>[]> | undefined;
  /** Always-on deliveries by their source; made when the first segment loses one. */
  #from: Map<Source, Building<Delivery>[]> | undefined;
  #losses: Losses | undefined;

  constructor(plant: Plant, wishes: Wishes, router: Router, former: FormerDeliveries | undefined) {
    this.#plant = plant;
    this.#wishes = wishes;
    this.#router = router;
    this.#deliverer = new Deliverer(plant, router, former);
    this.#former = former;
  }

  direct(): Deliveries {
    const situations: [Building<Situation>, ...Building<Situation>[]] = [this.#directAlways()];
    const own = this.#bySegment(this.#wishes.feeds, (feed) => feed.segments);
    const black = this.#bySegment(this.#wishes.blacks, (one) => one.segments ?? []);
    for (const segment of this.#wishes.segments.values()) {
      situations.push(this.#directSegment(segment, own.get(segment) ?? [], black.get(segment) ?? []));
    }
    for (const feed of this.#wishes.feeds) if (this.#needed.has(feed)) feed.repeats = undefined;
    const { all, blocked, found } = this.#deliverer;
    return { situations, all, unmatched: this.#unmatched, blocked, found };
  }

  #bySegment<T>(items: readonly T[], segmentsOf: (item: T) => readonly Segment[]): Map<Segment, T[]> {
    const map = new Map<Segment, T[]>();
    for (const item of items) {
      for (const segment of segmentsOf(item)) add(map, segment, item);
    }
    return map;
  }

  /** The plan without segments: the always-on feeds, in order. */
  #directAlways(): Building<Situation> {
    const always = this.#wishes.feeds.filter((feed) => feed.always);
    const replaced = this.#replacedForGood(always);
    const deliveries: Building<Delivery>[] = [];
    const toDo = replaced.size === 0 ? always : always.filter((feed) => !replaced.has(feed));
    this.#former?.enter(undefined, toDo, nothingEnded);
    for (const feed of toDo) {
      const key = this.#keyOf(feed);
      const first = key === undefined ? undefined : this.#always.get(key);
      if (first) {
        feed.repeats = first.feed;
        this.#former?.skip(feed);
        continue;
      }
      const delivery = this.#deliverer.deliver(feed, undefined, undefined, nothingLost);
      deliveries.push(delivery);
      if (feed.target) add(this.#at, feed.target, delivery);
      if (key !== undefined) this.#always.set(key, delivery);
    }
    return {
      segment: undefined,
      own: deliveries,
      ended: nothingEnded,
      lostLinks: nothingLost.links,
      lostNodes: nothingLost.nodes,
      standbys: [],
    };
  }

  /** Always-on feeds that another always-on feed or a `black` without a segment takes the place of. */
  #replacedForGood(always: readonly Feed[]): ReadonlySet<Feed> {
    const replaced = new Set<Feed>();
    const replacing = always.filter((feed) => feed.statement.fact.insteadOf !== undefined);
    const blacks = this.#wishes.blacks.filter((black) => black.segments === undefined);
    if (replacing.length === 0 && blacks.length === 0) return replaced;
    const at = new Map<Target, Feed[]>();
    for (const feed of always) if (feed.target) add(at, feed.target, feed);
    for (const feed of replacing) {
      const other =
        feed.target && at.get(feed.target)?.find((one) => one !== feed && one.source === feed.insteadOf);
      if (other && feed.insteadOf) replaced.add(other);
      else this.#tellUnmatchedFeed(feed, undefined);
    }
    for (const black of blacks) {
      const there = black.target ? (at.get(black.target) ?? []) : [];
      for (const feed of there) replaced.add(feed);
      if (there.length === 0) this.#tellUnmatchedBlack(black, undefined);
    }
    return replaced;
  }

  #directSegment(
    segment: Segment,
    own: readonly Building<Feed>[],
    blacks: readonly Black[],
  ): Building<Situation> {
    const loss = this.#lossOf(segment);
    const ended = new Set<Building<Delivery>>();
    for (const feed of own) {
      if (feed.statement.fact.insteadOf === undefined) continue;
      const other =
        feed.target && this.#at.get(feed.target)?.find((one) => one.feed.source === feed.insteadOf);
      if (other && feed.insteadOf) ended.add(other);
      else this.#tellUnmatchedFeed(feed, segment);
    }
    for (const black of blacks) {
      const there = black.target ? (this.#at.get(black.target) ?? []) : [];
      for (const delivery of there) ended.add(delivery);
      if (there.length === 0) this.#tellUnmatchedBlack(black, segment);
    }
    const broken = this.#brokenBy(loss, ended);
    const toDo: Task[] = own.map((feed) => ({ feed, because: undefined }));
    for (const { feed } of broken) toDo.push({ feed, because: 'rerouted' });
    toDo.sort((a, b) => a.feed.index - b.feed.index);
    for (const delivery of broken) ended.add(delivery);
    const deliveries = this.#router.during(loss.links, loss.standbys, () => {
      for (const delivery of ended) this.#router.vacate(delivery);
      this.#former?.enter(
        segment,
        toDo.map(({ feed }) => feed),
        ended,
      );
      return this.#deliverAll(toDo, segment, loss, ended);
    });
    return {
      segment,
      own: deliveries,
      ended,
      lostLinks: loss.links,
      lostNodes: loss.nodes,
      standbys: loss.standbys,
    };
  }

  /** One after the other; a feed that says what another says already is left out. */
  #deliverAll(
    tasks: readonly Task[],
    segment: Segment,
    loss: Loss,
    ended: ReadonlySet<Delivery>,
  ): Building<Delivery>[] {
    const deliveries: Building<Delivery>[] = [];
    const here = new Map<number, Feed>();
    for (const { feed, because } of tasks) {
      const key = this.#keyOf(feed);
      if (key !== undefined && because === undefined) {
        const always = this.#always.get(key);
        const first = here.get(key) ?? (always && !ended.has(always) ? always.feed : undefined);
        feed.repeats ??= first;
        if (first) {
          this.#former?.skip(feed);
          continue;
        }
        this.#needed.add(feed);
      }
      if (key !== undefined) here.set(key, feed);
      deliveries.push(this.#deliverer.deliver(feed, segment, because, loss));
    }
    return deliveries;
  }

  /** A number for a feed's source and target together; undefined when one of them has no place in the plant. */
  #keyOf({ source, target }: Feed): number | undefined {
    if (!source || !target || target.index < 0) return undefined;
    const { destinations, ports } = this.#plant;
    const ofTarget = 'takes' in target ? target.index : destinations.size + target.index;
    return source.index * (destinations.size + ports.length) + ofTarget;
  }

  /** Always-on deliveries that lose a cable and have to go another way; those of lost sources simply end. */
  #brokenBy(loss: Loss, ended: Set<Building<Delivery>>): Building<Delivery>[] {
    if (loss.links.size === 0 && loss.sources.size === 0) return [];
    const over = this.#deliveriesOver();
    const broken = new Set<Building<Delivery>>();
    for (const link of loss.links) for (const delivery of over.get(link) ?? []) broken.add(delivery);
    for (const destination of loss.destinations) {
      for (const delivery of this.#at.get(destination) ?? []) ended.add(delivery);
    }
    for (const source of loss.sources) for (const delivery of this.#fromSource(source)) ended.add(delivery);
    return [...broken].filter((delivery) => !ended.has(delivery));
  }

  #fromSource(source: Source): readonly Building<Delivery>[] {
    if (!this.#from) {
      this.#from = new Map();
      for (const delivery of this.#deliverer.all) {
        if (delivery.segment !== undefined) break;
        if (delivery.feed.source) add(this.#from, delivery.feed.source, delivery);
      }
    }
    return this.#from.get(source) ?? [];
  }

  #deliveriesOver(): Map<Link, Building<Delivery>[]> {
    if (this.#over) return this.#over;
    this.#over = new Map();
    for (const delivery of this.#deliverer.all) {
      if (delivery.segment !== undefined) break;
      for (const route of delivery.routes) {
        for (const { link } of route.steps) add(this.#over, link, delivery);
      }
    }
    return this.#over;
  }

  #lossOf(segment: Segment): Loss {
    if (segment.without.length === 0) return nothingLost;
    this.#losses ??= new Losses(this.#plant);
    return this.#losses.of(segment.without);
  }

  #tellUnmatchedFeed(feed: Feed, segment: Segment | undefined): void {
    const { statement } = feed;
    const wanted = statement.fact.insteadOf ?? '';
    this.#unmatched.push({ statement, part: 'insteadOf/0', kind: 'instead of', wanted, segment });
  }

  #tellUnmatchedBlack({ statement, part, targetName }: Black, segment: Segment | undefined): void {
    this.#unmatched.push({ statement, part, kind: 'black', wanted: targetName, segment });
  }
}
