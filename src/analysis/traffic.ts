import { judgeLoad } from '../physics/capacity.ts';
import { append, type Building } from './building.ts';
import type { FormatTable } from './formats.ts';
import type {
  Delivery,
  DirectionLoad,
  Flow,
  Link,
  Load,
  Segment,
  Situation,
  Source,
  Step,
  Traffic,
} from './model.ts';

/** One picture in one direction of a link, and how many deliveries it serves beyond. */
interface Rider {
  readonly source: Source;
  readonly flow: Flow | undefined;
  readonly load_bits_per_second: number;
  uses: number;
}

/** What is added to or taken from the riders of a direction in a segment. */
interface Change {
  readonly rider: Rider;
  uses: number;
}

/** Loads of every link in every situation. A direction has the number `link * 2`, and one more for backward. */
export function trafficOf(
  links: readonly Link[],
  situations: readonly Situation[],
  formats: FormatTable,
  headroomShare: number,
): Traffic[] {
  return new Counter(links, formats, headroomShare).count(situations);
}

class Counter {
  readonly #links: readonly Link[];
  readonly #formats: FormatTable;
  readonly #headroomShare: number;
  readonly #riders: (Rider[] | undefined)[];

  constructor(links: readonly Link[], formats: FormatTable, headroomShare: number) {
    this.#links = links;
    this.#formats = formats;
    this.#headroomShare = headroomShare;
    this.#riders = new Array(links.length * 2);
  }

  count([base, ...segments]: readonly Situation[]): Traffic[] {
    for (const delivery of inOrderOfSources(base?.own ?? [])) this.#board(delivery);
    const traffic = this.#links.map((link) => this.#baseTraffic(link));
    for (const situation of segments) this.#countSegment(situation, traffic);
    return traffic.map((one) => this.#judge(one));
  }

  #board(delivery: Delivery): void {
    for (const { steps } of delivery.routes) {
      for (const step of steps) {
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

  #baseTraffic(link: Link): Building<Traffic> {
    const forward = this.#load(link, this.#riders[link.index * 2]);
    const backward = this.#load(link, this.#riders[link.index * 2 + 1]);
    const base: Load =
      forward === idle && backward === idle ? idleLoad : { segment: undefined, forward, backward };
    return { link, base, differing: none, worst: noWorst, judgement: 'not judged', unused: false };
  }

  #load(link: Link, riders: readonly Rider[] | undefined): DirectionLoad {
    const capacity = link.chain.capacity_bits_per_second;
    if (riders === undefined || riders.length === 0) return capacity === undefined ? idleUnknown : idle;
    let load_bits_per_second = 0;
    const flows: Flow[] = [];
    const pictures: Source[] = [];
    for (const rider of riders) {
      load_bits_per_second += rider.load_bits_per_second;
      if (rider.flow) flows.push(rider.flow);
      else pictures.push(rider.source);
    }
    return {
      load_bits_per_second,
      flows: flows.length === 0 ? none : flows,
      pictures: pictures.length === 0 ? none : pictures,
      share: capacity === undefined ? undefined : load_bits_per_second / capacity,
    };
  }

  /** Only the directions over which something begins or ends; all others are as without segments. */
  #countSegment({ segment, own, ended }: Situation, traffic: Building<Traffic>[]): void {
    const changes = new Map<number, Map<number, Change>>();
    for (const delivery of ended) this.#change(changes, delivery, -1);
    for (const delivery of own) this.#change(changes, delivery, 1);
    const loads = new Map<number, { forward?: DirectionLoad; backward?: DirectionLoad }>();
    for (const [direction, ofDirection] of changes) {
      const riders = changed(this.#riders[direction] ?? none, ofDirection);
      if (riders === undefined) continue;
      const link = direction >> 1;
      const load = loads.get(link) ?? {};
      loads.set(link, load);
      load[direction % 2 === 0 ? 'forward' : 'backward'] = this.#load(this.#links[link]!, riders);
    }
    for (const [link, { forward, backward }] of loads) {
      const ofLink = traffic[link]!;
      if (ofLink.differing.length === 0) ofLink.differing = [];
      append(ofLink.differing, {
        segment,
        forward: forward ?? ofLink.base.forward,
        backward: backward ?? ofLink.base.backward,
      });
    }
  }

  #change(changes: Map<number, Map<number, Change>>, delivery: Delivery, uses: number): void {
    for (const { steps } of delivery.routes) {
      for (const step of steps) {
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

  #judge(traffic: Building<Traffic>): Traffic {
    const { link } = traffic;
    let worst = worstOf(traffic.base);
    for (const load of traffic.differing) {
      const other = worstOf(load);
      if (other.load_bits_per_second > worst.load_bits_per_second) worst = other;
    }
    traffic.worst = worst;
    const capacity = link.chain.capacity_bits_per_second;
    if (link.network && capacity !== undefined) {
      traffic.judgement = judgeLoad(worst.load_bits_per_second, capacity, this.#headroomShare);
    }
    const endsKnown = link.from.port !== undefined && link.to.port !== undefined;
    traffic.unused = endsKnown && isIdle(traffic.base) && traffic.differing.every(isIdle);
    return traffic;
  }
}

const none: readonly never[] = [];
const idle: DirectionLoad = { load_bits_per_second: 0, flows: none, pictures: none, share: 0 };
const idleLoad: Load = { segment: undefined, forward: idle, backward: idle };
const idleUnknown: DirectionLoad = { ...idle, share: undefined };
const noWorst: Traffic['worst'] = {
  segment: undefined,
  direction: 'forward',
  share: undefined,
  load_bits_per_second: 0,
};

function directionOf({ link, forward }: Step): number {
  return link.index * 2 + (forward ? 0 : 1);
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

/** What tells a rider from the others of its direction. */
function keyOf({ source, flow }: Rider): number {
  return flow ? flow.index * 2 + 1 : source.index * 2;
}

/** The riders after the changes, in order of sources; undefined when they are the same as before. */
function changed(riders: readonly Rider[], changes: ReadonlyMap<number, Change>): Rider[] | undefined {
  const after: Rider[] = [];
  const there = new Set<number>();
  let differs = false;
  for (const rider of riders) {
    const key = keyOf(rider);
    there.add(key);
    if (rider.uses + (changes.get(key)?.uses ?? 0) > 0) after.push(rider);
    else differs = true;
  }
  for (const [key, { rider, uses }] of changes) {
    if (uses <= 0 || there.has(key)) continue;
    after.push(rider);
    differs = true;
  }
  if (!differs) return undefined;
  return after.sort((a, b) => a.source.index - b.source.index || (a.flow?.index ?? 0) - (b.flow?.index ?? 0));
}

function worstOf({ segment, forward, backward }: Load): Traffic['worst'] {
  const direction = backward.load_bits_per_second > forward.load_bits_per_second ? 'backward' : 'forward';
  const { share, load_bits_per_second } = direction === 'forward' ? forward : backward;
  return { segment, direction, share, load_bits_per_second };
}

function isIdle({ forward, backward }: Load): boolean {
  return carriesNothing(forward) && carriesNothing(backward);
}

function carriesNothing({ flows, pictures }: DirectionLoad): boolean {
  return flows.length === 0 && pictures.length === 0;
}

/** The load of a link in a segment. */
export function loadIn({ base, differing }: Traffic, segment: Segment | undefined): Load {
  return differing.find((load) => load.segment === segment) ?? base;
}
