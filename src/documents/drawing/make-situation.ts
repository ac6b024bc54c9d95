import { deliveriesHolding } from '../../analysis/holding.ts';
import { add } from '../../analysis/lists.ts';
import type {
  Analysis,
  Delay,
  Delivery,
  DirectionLoad,
  Feed,
  Link,
  Port,
  Route,
  Situation,
  Source,
  Target,
} from '../../analysis/model.ts';
import { loadIn } from '../../analysis/traffic.ts';
import { heaviestLinkIn } from '../../analysis/worst.ts';
import { formatFrames, formatRate, formatShare } from '../../physics/display.ts';
import { framesPerSecond } from '../../physics/rate.ts';
import { delayTime } from '../sheets/durations.ts';
import type { Titles } from '../sheets/titles.ts';
import type { Chosen, PortOwner } from './choose-things.ts';
import type { Lane, RibbonLoad, SceneSituation, Trace, Watched, WireLoad } from './scene.ts';
import { apart, joined, nameText, outOf } from './words.ts';

/** So many feeds are followed at a step. */
const AT_A_STEP = 100;

/** Tells what rides where in one part of the show, and what is watched. */
export class SituationMaker {
  readonly #analysis: Analysis;
  readonly #titles: Titles;
  readonly #chosen: Chosen;
  readonly #situation: Situation;

  constructor(analysis: Analysis, titles: Titles, chosen: Chosen, situation: Situation) {
    this.#analysis = analysis;
    this.#titles = titles;
    this.#chosen = chosen;
    this.#situation = situation;
  }

  /** In short steps. */
  *making(): Generator<undefined, SceneSituation> {
    const { segment, lostLinks, lostNodes } = this.#situation;
    const deliveries = deliveriesHolding(this.#analysis, this.#situation);
    yield;
    const pictures = this.#picturesOnWires(deliveries);
    yield;
    const links = this.#chosen.links.map(({ link }) => link);
    const shown = this.#shownTargets(deliveries);
    const ribbons = links.filter((link) => link.network).map((link) => this.#ribbonLoad(link));
    yield;
    return {
      segment: segment?.name ?? null,
      title: nameText(this.#titles.segment(segment)),
      subtitle: this.#worstLink(),
      wires: links
        .filter((link) => !link.network)
        .map((link): WireLoad => ({ wire: link.name, pictures: [...(pictures.get(link) ?? [])] })),
      ribbons,
      watched: [...this.#chosen.owners]
        .filter((owner) => owner.kind === 'destination')
        .map((destination) => this.#watched(destination.name, shown.get(destination))),
      arrivals: [...shown]
        .filter(([target]) => !('kind' in target) && this.#chosen.owners.has(target.owner))
        .map(([target, arriving]) => this.#watched('text' in target ? target.text : target.name, arriving)),
      lost: [...lostLinks, ...lostNodes].map((thing) => thing.name),
      traces: yield* this.#traces(deliveries),
    };
  }

  #worstLink(): string {
    const heaviest = heaviestLinkIn(this.#analysis, this.#situation.segment);
    if (!heaviest) return '';
    return `worst link ${apart(this.#titles.link(heaviest.traffic.link))} ${formatShare(heaviest.share)}`;
  }

  #picturesOnWires(deliveries: readonly Delivery[]): ReadonlyMap<Link, ReadonlySet<number>> {
    const pictures = new Map<Link, Set<number>>();
    const put = (link: Link, source: Source | undefined) => {
      const number = this.#titles.numberOf(source);
      if (number === undefined || link.network) return;
      const here = pictures.get(link) ?? new Set();
      pictures.set(link, here.add(number));
    };
    for (const { feed, routes } of deliveries) {
      for (const { steps } of routes) for (const { link } of steps) put(link, feed.source);
    }
    // What is plugged in shows its picture on its own cable, even while nobody watches it.
    for (const source of this.#analysis.sources.values())
      if (source.link && !pictures.has(source.link)) put(source.link, source);
    return pictures;
  }

  #ribbonLoad(link: Link): RibbonLoad {
    const traffic = this.#analysis.traffic[link.index];
    const load = traffic && loadIn(traffic, this.#situation.segment);
    const capacity = link.chain.capacity_bits_per_second;
    return {
      ribbon: link.name,
      forward: this.#lane(load?.forward, capacity),
      backward: this.#lane(load?.backward, capacity),
    };
  }

  #lane(direction: DirectionLoad | undefined, capacity: number | undefined): Lane {
    if (!direction) return { strands: [], load_bits_per_second: 0, text: '', over: false, excess: '' };
    const { load_bits_per_second: load, share, flows } = direction;
    const strands = flows.map((flow) => ({
      picture: this.#titles.numberOf(flow.source) ?? 0,
      load_bits_per_second: flow.load_bits_per_second,
    }));
    if (share === undefined || capacity === undefined)
      return { strands, load_bits_per_second: load, text: formatRate(load), over: false, excess: '' };
    const free = `${formatShare(1 - share)} free`;
    if (share <= 1) return { strands, load_bits_per_second: load, text: free, over: false, excess: '' };
    const excess = `${formatRate(load - capacity)} too much`;
    const text = `${outOf(formatRate(load, capacity), formatRate(capacity, load))}: ${excess}`;
    return { strands, load_bits_per_second: load, text, over: true, excess };
  }

  /** The deliveries to each destination and to each input that a feed names. */
  #shownTargets(deliveries: readonly Delivery[]): ReadonlyMap<Target, readonly Delivery[]> {
    const shown = new Map<Target, Delivery[]>();
    for (const delivery of deliveries) if (delivery.feed.target) add(shown, delivery.feed.target, delivery);
    return shown;
  }

  #watched(box: string, deliveries: readonly Delivery[] = []): Watched {
    const [first] = deliveries;
    if (!first) return { box, picture: undefined, text: 'no picture', trouble: false };
    const arriving = deliveries.filter(({ routes }) => routes.length > 0);
    const shown = arriving[0];
    if (!shown) return { box, picture: undefined, text: 'no route', trouble: true };
    const picture = this.#titles.numberOf(shown.feed.source);
    const others = arriving.filter(({ feed }) => feed.source !== shown.feed.source);
    if (others.length > 0 || deliveries.some(({ twoPictures }) => twoPictures))
      return { box, picture, text: 'two pictures at once', trouble: true };
    return { box, picture, text: delayText(shown.delay, shown.feed), trouble: shown.delay.over };
  }

  /** Of every feed that passes something that is drawn. */
  *#traces(deliveries: readonly Delivery[]): Generator<undefined, Trace[]> {
    const { owners, links } = this.#chosen;
    const drawn = new Set<Passed>([...owners, ...links.map(({ link }) => link)]);
    const traces: Trace[] = [];
    for (const [i, { feed, routes, delay }] of deliveries.entries()) {
      if (i % AT_A_STEP === AT_A_STEP - 1) yield;
      const picture = this.#titles.numberOf(feed.source);
      const passed = routes.flatMap(passedBy).filter((thing) => drawn.has(thing));
      if (picture === undefined || passed.length === 0) continue;
      const passes = [...new Set(passed.map(({ name }) => name))];
      traces.push({ feed: feed.name, picture, passes, text: delayText(delay, feed) });
    }
    return traces;
  }
}

type Passed = PortOwner | Link;

/** Boxes and links of a route, each once, in the order in which the picture passes them. */
function passedBy({ ports, steps }: Route): Passed[] {
  const links = new Set(steps.map(({ link }) => link));
  const passed: Passed[] = [];
  let before: Port | undefined;
  for (const port of ports) {
    const link = before?.links.find((one) => links.has(one) && port.links.includes(one));
    if (link) passed.push(link);
    if (port.owner !== before?.owner) passed.push(port.owner);
    before = port;
  }
  return passed;
}

/** Less than this is no delay to speak of in frames. */
const LEAST_FRAMES = 0.01;

/** `5.5 frames measured of 6`: in the unit in which the limit is stated, else in frames of its picture. */
function delayText(delay: Delay, feed: Feed): string {
  const { delay_s, limit, limit_s } = delay;
  if (delay_s === undefined) return '';
  const format = feed.source?.format;
  const rate = format && 'rate' in format ? framesPerSecond(format.rate) : undefined;
  const inFrames = rate !== undefined && !(limit && 'seconds' in limit) && delay_s * rate >= LEAST_FRAMES;
  const write = (time_s: number, beside_s: number | undefined) =>
    inFrames
      ? formatFrames(time_s * rate, beside_s === undefined ? undefined : beside_s * rate)
      : delayTime(time_s, beside_s);
  const words = write(delay_s, limit_s);
  const figures = limit_s === undefined ? words : outOf(words, write(limit_s, delay_s));
  return joined(
    [figures, delay.from === 'measured' ? 'measured' : undefined, delay.over ? '— too late' : undefined],
    ' ',
  );
}
