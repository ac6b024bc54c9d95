import { judgeLoad } from '../physics/capacity.ts';
import { append, type Building, grown, nothing } from './building.ts';
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
  Traffic,
} from './model.ts';
import { type Rider, RiderBook } from './riders.ts';

/** Loads of every link in every situation. */
export class TrafficCount {
  /** By the link's index. */
  readonly traffic: Building<Traffic>[];
  readonly #links: readonly Link[];
  readonly #book: RiderBook;
  readonly #headroomShare: number;

  constructor(
    links: readonly Link[],
    [base, ...segments]: Situations,
    formats: FormatTable,
    headroomShare: number,
  ) {
    this.#links = links;
    this.#headroomShare = headroomShare;
    this.#book = new RiderBook(links, base, formats);
    this.traffic = links.map((link) => baseTraffic(link, this.#book));
    for (const situation of segments) addSegment(situation, this.#book, links, this.traffic);
    for (const one of this.traffic) judge(one, headroomShare);
  }

  /** Counts anew what goes over some links. @param over The always-on deliveries that do, in order. */
  countAgain(links: ReadonlySet<Link>, over: readonly Delivery[], [, ...segments]: Situations): void {
    if (links.size === 0) return;
    this.#book.countAgain(links, over);
    for (const link of links) this.traffic[link.index] = baseTraffic(link, this.#book);
    for (const situation of segments) addSegment(situation, this.#book, this.#links, this.traffic, links);
    for (const { index } of links) judge(this.traffic[index]!, this.#headroomShare);
  }
}

type Situations = readonly [Situation, ...Situation[]];

/** The load of a link in a segment. */
export function loadIn({ base, differing }: Traffic, segment: Segment | undefined): Load {
  return differing.find((load) => load.segment === segment) ?? base;
}

function baseTraffic(link: Link, book: RiderBook): Building<Traffic> {
  const forward = loadOf(link, book.on(link.index * 2));
  const backward = loadOf(link, book.on(link.index * 2 + 1));
  const base = forward === idle && backward === idle ? idleLoad : { segment: undefined, forward, backward };
  return { link, base, differing: nothing, worst: noWorst, judgement: 'not judged', unused: false };
}

/** Only the directions over which something begins or ends; all others are as without segments. */
function addSegment(
  { segment, own, ended }: Situation,
  book: RiderBook,
  links: readonly Link[],
  traffic: readonly Building<Traffic>[],
  some?: ReadonlySet<Link>,
): void {
  const changes = book.changesBy(ended, own, some);
  const loads = new Map<number, { forward?: DirectionLoad; backward?: DirectionLoad }>();
  for (const direction of changes.keys()) {
    const riders = book.after(direction, [changes]);
    if (riders === undefined) continue;
    const link = direction >> 1;
    const load = loads.get(link) ?? {};
    loads.set(link, load);
    load[direction % 2 === 0 ? 'forward' : 'backward'] = loadOf(links[link]!, riders);
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

function loadOf(link: Link, riders: readonly Rider[]): DirectionLoad {
  const capacity = link.chain.capacity_bits_per_second;
  if (riders.length === 0) return capacity === undefined ? idleUnknown : idle;
  let load_bits_per_second = 0;
  let flows: readonly Flow[] = nothing;
  let pictures: readonly Source[] = nothing;
  for (const rider of riders) {
    load_bits_per_second += rider.load_bits_per_second;
    if (rider.flow) flows = grown(flows, rider.flow);
    else pictures = grown(pictures, rider.source);
  }
  return {
    load_bits_per_second,
    flows,
    pictures,
    share: capacity === undefined ? undefined : load_bits_per_second / capacity,
  };
}

function judge(traffic: Building<Traffic>, headroomShare: number): void {
  const { link } = traffic;
  let worst = worstOf(traffic.base);
  for (const load of traffic.differing) {
    const other = worstOf(load);
    if (other.load_bits_per_second > worst.load_bits_per_second) worst = other;
  }
  traffic.worst = worst;
  const capacity = link.chain.capacity_bits_per_second;
  if (link.network && capacity !== undefined) {
    traffic.judgement = judgeLoad(worst.load_bits_per_second, capacity, headroomShare);
  }
  const endsKnown = link.from.port !== undefined && link.to.port !== undefined;
  traffic.unused = endsKnown && isIdle(traffic.base) && traffic.differing.every(isIdle);
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

const idle: DirectionLoad = { load_bits_per_second: 0, flows: nothing, pictures: nothing, share: 0 };
const idleUnknown: DirectionLoad = { ...idle, share: undefined };
const idleLoad: Load = { segment: undefined, forward: idle, backward: idle };
const noWorst: Traffic['worst'] = {
  segment: undefined,
  direction: 'forward',
  share: undefined,
  load_bits_per_second: 0,
};
