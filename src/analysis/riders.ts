import type { FormatTable } from './formats.ts';
import type { Delivery, Flow, Link, Situation, Source, Step } from './model.ts';

/** One picture in one direction of a link, and how many deliveries it serves beyond. */
export interface Rider {
  readonly source: Source;
  /** On a network link. */
  readonly flow: Flow | undefined;
  readonly load_bits_per_second: number;
  uses: number;
}

/** What is added to or taken from the riders of a direction. */
interface Change {
  readonly rider: Rider;
  uses: number;
}

/** Changes by direction. */
export type Changes = ReadonlyMap<number, ReadonlyMap<number, Change>>;

/**
 * Who rides on which link in which direction. A direction has the number `link * 2`, and one more for backward. What
 * holds without segments is kept; a segment or a loss is told by what changes.
 */
export class RiderBook {
  readonly #formats: FormatTable;
  readonly #riders: (Rider[] | undefined)[];

  constructor(links: readonly Link[], base: Situation, formats: FormatTable) {
    this.#formats = formats;
    this.#riders = new Array(links.length * 2);
    for (const delivery of inOrderOfSources(base.own)) this.#board(delivery, undefined);
  }

  /** Counts anew who rides on some links. @param over The always-on deliveries that do, in order. */
  countAgain(links: ReadonlySet<Link>, over: readonly Delivery[]): void {
    for (const { index } of links) {
      this.#riders[index * 2] = undefined;
      this.#riders[index * 2 + 1] = undefined;
    }
    for (const delivery of inOrderOfSources(over)) this.#board(delivery, links);
  }

  /** In order of sources. */
  on(direction: number): readonly Rider[] {
    return this.#riders[direction] ?? none;
  }

  /**
   * What it means for every direction when some deliveries end and others begin.
   *
   * @param links Only for these links; undefined: for all.
   */
  changesBy(ended: Iterable<Delivery>, begun: Iterable<Delivery>, links?: ReadonlySet<Link>): Changes {
    const changes = new Map<number, Map<number, Change>>();
    for (const delivery of ended) this.#change(changes, delivery, -1, links);
    for (const delivery of begun) this.#change(changes, delivery, 1, links);
    return changes;
  }

  /** The riders of a direction after changes, in order of sources; undefined when they are the same as before. */
  after(direction: number, changes: readonly Changes[]): readonly Rider[] | undefined {
    const ofDirection = changes.flatMap((one) => one.get(direction) ?? []);
    return ofDirection.length === 0 ? undefined : changed(this.on(direction), ofDirection);
  }

  #board(delivery: Delivery, links: ReadonlySet<Link> | undefined): void {
    for (const { steps } of delivery.routes) {
      for (const step of steps) {
        if (links && !links.has(step.link)) continue;
        const direction = directionOf(step);
        const riders = this.#riders[direction];
        if (riders === undefined) this.#riders[direction] = [this.#riderOf(delivery, step)];
        else this.#boardAmong(riders, delivery, step);
      }
    }
  }

  /** Riders come in order of sources, so those of this source are the last. */
  #boardAmong(riders: Rider[], delivery: Delivery, step: Step): void {
    const { source } = delivery.feed;
    for (let i = riders.length - 1; i >= 0; i--) {
      const rider = riders[i]!;
      if (rider.source !== source) break;
      if (rider.flow !== step.flow) continue;
      rider.uses++;
      return;
    }
    riders.push(this.#riderOf(delivery, step));
  }

  #change(
    changes: Map<number, Map<number, Change>>,
    delivery: Delivery,
    uses: number,
    links: ReadonlySet<Link> | undefined,
  ): void {
    for (const { steps } of delivery.routes) {
      for (const step of steps) {
        if (links && !links.has(step.link)) continue;
        const direction = directionOf(step);
        let ofDirection = changes.get(direction);
        if (!ofDirection) {
          ofDirection = new Map();
          changes.set(direction, ofDirection);
        }
        const rider = this.#riderOf(delivery, step);
        const known = ofDirection.get(keyOf(rider));
        if (known) known.uses += uses;
        else ofDirection.set(keyOf(rider), { rider, uses });
      }
    }
  }

  #riderOf({ feed }: Delivery, { link, flow, format }: Step): Rider {
    return {
      source: feed.source!,
      flow,
      load_bits_per_second: flow?.load_bits_per_second ?? this.#onCable(link, format),
      uses: 1,
    };
  }

  #onCable(link: Link, format: Step['format']): number {
    const known = format && this.#formats.known(format);
    const signal = link.chain.interface?.signal;
    return (known && signal && this.#formats.onInterface_bits_per_second(known, signal)) ?? 0;
  }
}

const none: readonly never[] = [];

export function directionOf({ link, forward }: Step): number {
  return link.index * 2 + (forward ? 0 : 1);
}

/** What tells a rider from the others of its direction. */
function keyOf({ source, flow }: Rider): number {
  return flow ? flow.index * 2 + 1 : source.index * 2;
}

/** Stable: deliveries of one source stay in order of statements. */
function inOrderOfSources(deliveries: readonly Delivery[]): Delivery[] {
  const bySource: Delivery[][] = [];
  for (const delivery of deliveries) {
    const { source } = delivery.feed;
    if (!source || delivery.routes.length === 0) continue;
    const list = bySource[source.index];
    if (list) list.push(delivery);
    else bySource[source.index] = [delivery];
  }
  return bySource.flat();
}

function changed(
  riders: readonly Rider[],
  changes: readonly ReadonlyMap<number, Change>[],
): Rider[] | undefined {
  const usesChanged = new Map<number, number>();
  for (const ofDirection of changes) {
    for (const [key, { uses }] of ofDirection) usesChanged.set(key, (usesChanged.get(key) ?? 0) + uses);
  }
  const after: Rider[] = [];
  const there = new Set<number>();
  let differs = false;
  for (const rider of riders) {
    const key = keyOf(rider);
    there.add(key);
    if (rider.uses + (usesChanged.get(key) ?? 0) > 0) after.push(rider);
    else differs = true;
  }
  for (const ofDirection of changes) {
    for (const [key, { rider }] of ofDirection) {
      if (there.has(key) || usesChanged.get(key)! <= 0) continue;
      there.add(key);
      after.push(rider);
      differs = true;
    }
  }
  if (!differs) return undefined;
  return after.sort((a, b) => a.source.index - b.source.index || (a.flow?.index ?? 0) - (b.flow?.index ?? 0));
}
