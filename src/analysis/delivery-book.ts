import type { Building } from './building.ts';
import { add } from './lists.ts';
import type { Delivery, Link, Source } from './model.ts';

/**
 * Deliveries by the links that they take and by their source, so that what an edit touches is found without looking at
 * all of them. Begun when first asked; deliveries that nobody has found a way for are not in it.
 */
export class DeliveryBook {
  #byLink: Map<Link, Building<Delivery>[]> | undefined;
  #bySource = new Map<Source, Building<Delivery>[]>();
  readonly #all: () => readonly Building<Delivery>[];

  constructor(all: () => readonly Building<Delivery>[]) {
    this.#all = all;
  }

  /** Those over any of these links, each once, in order. */
  over(links: Iterable<Link>): Building<Delivery>[] {
    const byLink = this.#begun();
    const over = new Set<Building<Delivery>>();
    for (const link of links) for (const delivery of byLink.get(link) ?? []) over.add(delivery);
    return [...over].sort(inOrder);
  }

  /** Those of any of these sources, in order. */
  of(sources: Iterable<Source>): Building<Delivery>[] {
    this.#begun();
    return [...sources].flatMap((source) => this.#bySource.get(source) ?? []).sort(inOrder);
  }

  /** Follows a change of the deliveries. */
  follow(gone: readonly Delivery[], found: readonly Building<Delivery>[]): void {
    const byLink = this.#byLink;
    if (!byLink) return;
    for (const delivery of gone) {
      remove(this.#bySource, delivery.feed.source, delivery);
      for (const { steps } of delivery.routes) for (const { link } of steps) remove(byLink, link, delivery);
    }
    for (const delivery of found) this.#enter(byLink, delivery);
  }

  #begun(): Map<Link, Building<Delivery>[]> {
    if (!this.#byLink) {
      this.#byLink = new Map();
      for (const delivery of this.#all()) this.#enter(this.#byLink, delivery);
    }
    return this.#byLink;
  }

  #enter(byLink: Map<Link, Building<Delivery>[]>, delivery: Building<Delivery>): void {
    const { source } = delivery.feed;
    if (!source || delivery.routes.length === 0) return;
    add(this.#bySource, source, delivery);
    for (const { steps } of delivery.routes) for (const { link } of steps) add(byLink, link, delivery);
  }
}

function inOrder(a: Delivery, b: Delivery): number {
  return a.index - b.index;
}

function remove<K>(map: ReadonlyMap<K, Delivery[]>, key: K | undefined, delivery: Delivery): void {
  const list = key === undefined ? undefined : map.get(key);
  const at = list?.indexOf(delivery) ?? -1;
  if (at >= 0) list!.splice(at, 1);
}
