import type { Destination, Feed, Node, Plant, Source } from './model.ts';
import { Picked } from './remarkable.ts';

/** What is in the plan without a part in it: no feed, or no cable. */
export class Unused {
  readonly unusedNodes: readonly Node[];
  /** By source, destination and whatever else a feed or a source names: how often. */
  readonly #uses = new Map<unknown, number>();
  readonly #sources: Picked<Source>;
  readonly #destinations: Picked<Destination>;

  constructor(plant: Plant, feeds: readonly Feed[]) {
    for (const { source, target } of feeds) {
      this.#count(source, 1);
      this.#count(target, 1);
    }
    for (const source of plant.sources.values())
      for (const member of source.madeOf ?? []) this.#count(member, 1);
    const isUnused = (thing: unknown) => (this.#uses.get(thing) ?? 0) === 0;
    this.#sources = new Picked([...plant.sources.values()], isUnused);
    this.#destinations = new Picked([...plant.destinations.values()], isUnused);
    this.unusedNodes = [...plant.nodes.values()].filter(isBare);
  }

  get unfedDestinations(): readonly Destination[] {
    return this.#destinations.list;
  }

  get unusedSources(): readonly Source[] {
    return this.#sources.list;
  }

  /** Follows a change of the feeds. */
  follow(gone: readonly Feed[], added: readonly Feed[]): void {
    for (const [feeds, by] of [
      [gone, -1],
      [added, 1],
    ] as const) {
      for (const { source, target } of feeds) {
        this.#count(source, by);
        this.#count(target, by);
        if (source) this.#sources.look(source);
        if (target && 'takes' in target) this.#destinations.look(target);
      }
    }
  }

  #count(thing: unknown, by: number): void {
    this.#uses.set(thing, (this.#uses.get(thing) ?? 0) + by);
  }
}

/** Nothing is plugged into it and nothing comes out of it. */
function isBare({ usedPorts, loosePorts }: Node): boolean {
  // A source that begins at one of its outputs makes that port one that is spoken of.
  return usedPorts.every((port) => port === undefined) && loosePorts.length === 0;
}
