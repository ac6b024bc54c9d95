import { type Building, nothing } from './building.ts';
import type { FormerDeliveries } from './former-deliveries.ts';
import type { Loss } from './losses.ts';
import type { Delivery, Feed, NoRoute, Plant, Port, Segment, Source } from './model.ts';
import type { Router } from './router.ts';

/** Delivers feeds one after the other: what came before holds its outputs, inputs and destinations. */
export class Deliverer {
  readonly all: Building<Delivery>[] = [];
  /** Those whose search met another picture, or went round: they depend on more than what is on their way. */
  readonly blocked = new Set<Delivery>();
  /** Those that are not as they were before. */
  readonly found: Building<Delivery>[] = [];
  readonly #plant: Plant;
  readonly #router: Router;
  readonly #former: FormerDeliveries | undefined;

  /** @param former Deliveries of before, to be taken over where they still hold. */
  constructor(plant: Plant, router: Router, former?: FormerDeliveries) {
    this.#plant = plant;
    this.#router = router;
    this.#former = former;
  }

  /** Finds the way of one feed as things stand, and holds the spots on it for its picture. */
  deliver(
    feed: Feed,
    segment: Segment | undefined,
    because: Delivery['because'],
    loss: Loss,
  ): Building<Delivery> {
    const former = this.#former?.holding(feed, because) as Building<Delivery> | undefined;
    if (former) {
      this.#takeOver(former, this.all.length);
      this.#router.occupy(former);
      if (this.#former?.isBlocked(former)) this.blocked.add(former);
      return former;
    }
    const found = this.#find(feed, segment, because, loss);
    const same = this.#former?.note(found) as Building<Delivery> | undefined;
    if (same) {
      this.#takeOver(same, found.index);
      if (this.blocked.delete(found)) this.blocked.add(same);
      return same;
    }
    this.found.push(found);
    return found;
  }

  #takeOver(former: Building<Delivery>, index: number): void {
    former.index = index;
    this.all[index] = former;
  }

  #find(
    feed: Feed,
    segment: Segment | undefined,
    because: Delivery['because'],
    loss: Loss,
  ): Building<Delivery> {
    const { source, target } = feed;
    const delivery = newDelivery(this.all.length, feed, segment, because);
    this.all.push(delivery);
    const starts = source ? this.#router.startsOf(source) : nothing;
    const ends = target ? this.#router.endsOf(target) : nothing;
    const kind = impossible(feed, loss, starts, ends);
    if (kind) {
      delivery.noRoute = { kind, via: undefined };
      return delivery;
    }
    const found = this.#router.find(feed, source!, starts, ends);
    const { wasBlocked, wentAround } = this.#router.search;
    if (wasBlocked || wentAround) this.blocked.add(delivery);
    if (found.ways.length === 0) {
      const { missedVia } = found;
      delivery.noRoute = { kind: missedVia ? 'via cannot be met' : 'no way', via: missedVia };
      return delivery;
    }
    delivery.routes = found.ways.map((way) => this.#router.routeOf(way));
    delivery.sharedLinks = found.sharedLinks;
    const { ties } = found.ways[0]!;
    if (ties.length > 0) {
      delivery.ties = ties.map(({ vertex, chosen, others }) => ({
        port: this.#plant.ports[this.#router.graph.portOf[vertex]!]!,
        chosen: this.#plant.links[chosen]!,
        others: others.map((link) => this.#plant.links[link]!),
      }));
    }
    if (found.taken) {
      const other = this.#whoIsAt(found.taken, source!);
      if (other) delivery.twoPictures = { port: found.taken, other };
    }
    this.#router.occupy(delivery);
    return delivery;
  }

  /** The delivery of another source that holds a port now. */
  #whoIsAt(port: Port, source: Source): Delivery | undefined {
    const holder = this.#router.holderOf(port, source);
    if (holder === undefined) return undefined;
    if (holder.delivery >= 0) return this.all[holder.delivery];
    // The first to come has gone since: look for one that came after it.
    return this.all.findLast(
      ({ feed, routes }) =>
        feed.source?.index === holder.source && routes.some(({ ports }) => ports.includes(port)),
    );
  }
}

/** Why no search can help; undefined when one may. */
function impossible(
  { source, target }: Feed,
  loss: Loss,
  starts: readonly number[],
  ends: readonly number[],
): NoRoute['kind'] | undefined {
  if (source === undefined) return 'source not known';
  if (target === undefined) return 'target not known';
  if (loss.sources.has(source)) return 'out of service';
  if ('takes' in target ? loss.destinations.has(target) : isLost(target.owner, loss)) return 'out of service';
  if (!('takes' in target) && target.role !== 'input') return 'target is no input';
  if (starts.length === 0) return 'source not plugged in';
  return ends.length === 0 ? 'target not plugged in' : undefined;
}

function isLost(owner: { readonly kind: string }, loss: Loss): boolean {
  return loss.nodes.has(owner as never);
}

function newDelivery(
  index: number,
  feed: Feed,
  segment: Segment | undefined,
  because: Delivery['because'],
): Building<Delivery> {
  return {
    index,
    feed,
    segment,
    because,
    routes: nothing,
    noRoute: undefined,
    ties: nothing,
    twoPictures: undefined,
    sharedLinks: nothing,
    format: undefined,
    formatFaults: nothing,
    delay: undefined as never,
  };
}
