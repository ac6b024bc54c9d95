import type { Chain, Delivery, Link, Reach } from './model.ts';

/** Items of a list that stand out, kept while single items change. */
export class Picked<T extends { readonly index: number }> {
  readonly #byIndex = new Map<number, T>();
  readonly #standsOut: (item: T) => boolean;
  #list: readonly T[] | undefined;

  constructor(items: readonly T[], standsOut: (item: T) => boolean) {
    this.#standsOut = standsOut;
    for (const item of items) this.look(item);
  }

  /** Judges an item that is new, or not as it was. */
  look(item: T): void {
    const is = this.#standsOut(item);
    if (!is && !this.#byIndex.has(item.index)) return;
    this.#list = undefined;
    if (is) this.#byIndex.set(item.index, item);
    else this.#byIndex.delete(item.index);
  }

  /** In order. */
  get list(): readonly T[] {
    this.#list ??= [...this.#byIndex.values()].sort((a, b) => a.index - b.index);
    return this.#list;
  }
}

/** Something is missing at it, or it is no link like others. */
export function linkStandsOut({ from, to, cable, length, directionFault, standbyFor }: Link): boolean {
  return (
    !from.port ||
    !to.port ||
    !cable ||
    length.length_m === undefined ||
    directionFault !== undefined ||
    standbyFor !== undefined
  );
}

/** It is not simply short enough, or its ends do not simply agree. */
export function chainStandsOut(chain: Chain, reach: Reach): boolean {
  return (
    chain.interfaceFault !== undefined ||
    chain.slowedFrom !== undefined ||
    reach.verdict !== 'good' ||
    reach.memoryDecides
  );
}

/** The picture does not simply arrive. */
export function deliveryStandsOut(delivery: Delivery): boolean {
  return (
    delivery.noRoute !== undefined ||
    delivery.twoPictures !== undefined ||
    delivery.delay.over ||
    delivery.formatFaults.length > 0 ||
    delivery.ties.length > 0 ||
    delivery.sharedLinks.length > 0
  );
}
