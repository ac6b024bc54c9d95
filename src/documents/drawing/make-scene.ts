import type {
  Analysis,
  Delivery,
  Destination,
  DirectionLoad,
  Link,
  LinkEnd,
  Load,
  Node,
  Port,
  Situation,
  Source,
  Traffic,
} from '../../analysis/model.ts';
import { formatFrames, formatLength, formatRate, formatShare, formatTime } from '../../physics/display.ts';
import { framesPerSecond } from '../../physics/rate.ts';
import type {
  Box,
  BoxPort,
  Lane,
  PictureKey,
  Ribbon,
  RibbonLoad,
  Room,
  Scene,
  SceneEnd,
  SceneSituation,
  Trace,
  Trouble,
  Watched,
  Wire,
  WireLoad,
} from './scene.ts';

/** What of a plan is drawn; all of it when nothing is said. */
export interface SceneChoice {
  /** Only what stands in this place, and what is plugged into it. */
  readonly place?: string;
  /** Only what carries this source's picture. */
  readonly source?: string;
}

/** So many free ports of each side are drawn; the others are counted. */
const FREE_PORTS_DRAWN = 3;

/** Everything that a drawing of a plan shows, figures in words included. */
export function makeScene(analysis: Analysis, choice: SceneChoice = {}): Scene {
  return new SceneMaker(analysis, choice).make();
}

class SceneMaker {
  readonly #analysis: Analysis;
  readonly #numbers: ReadonlyMap<Source, number>;
  readonly #links: readonly Link[];
  readonly #owners: ReadonlySet<Port['owner']>;

  constructor(analysis: Analysis, choice: SceneChoice) {
    this.#analysis = analysis;
    this.#numbers = new Map([...analysis.sources.values()].map((source, i) => [source, i + 1]));
    const { links, owners } = chosen(analysis, choice);
    this.#links = links;
    this.#owners = owners;
  }

  make(): Scene {
    const { settings, situations } = this.#analysis;
    const boxes = [...this.#owners].map((owner) => this.#box(owner));
    const used = new Set(boxes.map((box) => box.room));
    return {
      title: settings.title,
      pictures: this.#pictures(),
      rooms: [...this.#analysis.places.values()]
        .filter((place) => used.has(place.name))
        .map((place): Room => ({ id: place.name, title: place.statement.label ?? place.name })),
      boxes,
      wires: this.#links.filter((link) => !link.network).map((link) => this.#wire(link)),
      ribbons: this.#links.filter((link) => link.network).map((link) => this.#ribbon(link)),
      situations: situations.map((situation) => this.#situation(situation)),
    };
  }

  #pictures(): PictureKey[] {
    return [...this.#numbers].map(([source, number]) => ({
      number,
      name: source.name,
      title: source.statement.label ?? source.name,
    }));
  }

  #box(owner: Port['owner']): Box {
    const common = { id: owner.name, title: owner.statement.label ?? owner.name, room: owner.place?.name };
    if (owner.kind === 'node')
      return {
        ...common,
        kind: 'node',
        subtitle: kitTitle(owner),
        ...this.#ports(owner),
        picture: undefined,
      };
    const port: BoxPort = {
      id: owner.name,
      title: '',
      side: owner.kind === 'source' ? 'east' : 'west',
      free: false,
      begins: undefined,
    };
    const picture = owner.kind === 'source' ? this.#numbers.get(owner) : undefined;
    return { ...common, kind: owner.kind, subtitle: '', ports: [port], moreFree: 0, picture };
  }

  #ports(node: Node): Pick<Box, 'ports' | 'moreFree'> {
    const begins = new Map<Port, number>();
    for (const [source, number] of this.#numbers) if (source.from) begins.set(source.from, number);
    const ports: BoxPort[] = [];
    const freeDrawn = { west: 0, east: 0 };
    let moreFree = 0;
    for (const declared of node.kit?.ports ?? []) {
      const port = node.usedPorts[declared.index];
      const used = port !== undefined && (port.links.length > 0 || begins.has(port));
      const side = port ? sideOf(port) : declared.role === 'input' ? 'west' : 'east';
      if (!used && freeDrawn[side]++ >= FREE_PORTS_DRAWN) {
        moreFree++;
        continue;
      }
      const title = port?.label ? `${declared.name} ${port.label}` : declared.name;
      ports.push({
        id: `${node.name}.${declared.name}`,
        title,
        side,
        free: !used,
        begins: port && begins.get(port),
      });
    }
    return { ports, moreFree };
  }

  #wire(link: Link): Wire {
    return {
      id: link.name,
      from: sceneEnd(link.from),
      to: sceneEnd(link.to),
      text: [link.named ? (link.statement.label ?? link.name) : undefined, this.#length(link)]
        .filter(Boolean)
        .join(' · '),
      trouble: this.#reachTrouble(link),
      standbyFor: link.standbyFor && titleOf(link.standbyFor),
    };
  }

  #ribbon(link: Link): Ribbon {
    const reach = this.#analysis.reaches[link.chain.index]?.reach_m;
    const measured = link.length.from === 'measured' ? ' measured' : '';
    const length = this.#length(link);
    const reachText = reach === undefined || link.standbyFor ? '' : `, ${this.#metres(reach)} reach`;
    const words = [
      link.named ? titleOf(link) : undefined,
      link.cable?.statement.label ?? link.cable?.name,
      length && `${length}${measured}${reachText}`,
    ];
    return {
      id: link.name,
      from: sceneEnd(link.from),
      to: sceneEnd(link.to),
      title: words.filter(Boolean).join(' · '),
      capacity_bits_per_second: link.chain.capacity_bits_per_second,
      bothWays: link.bothWays,
      fromLeft: sideOf(link.from.port!) === 'east',
      standbyFor: link.standbyFor && titleOf(link.standbyFor),
      trouble: this.#reachTrouble(link),
    };
  }

  #length({ length }: Link): string | undefined {
    return length.length_m === undefined ? undefined : this.#metres(length.length_m);
  }

  #metres(length_m: number): string {
    return formatLength(length_m, this.#analysis.settings.units);
  }

  #reachTrouble(link: Link): Trouble | undefined {
    const reach = this.#analysis.reaches[link.chain.index];
    if (!reach || reach.verdict === 'good' || reach.verdict === 'not known') return undefined;
    const length = link.chain.length_m;
    const loss =
      reach.decidedBy === 'loss' && reach.loss_db !== undefined && reach.loss_limit_db !== undefined;
    const figures = loss
      ? `${reach.loss_db!.toFixed(1)} of ${reach.loss_limit_db!.toFixed(1)} dB`
      : length !== undefined && reach.reach_m !== undefined
        ? `${this.#metres(length)} of ${this.#metres(reach.reach_m)}`
        : '';
    const words = { beyond: 'too long', doubtful: 'doubtful', 'near the limit': 'near its limit' }[
      reach.verdict
    ];
    return { grave: reach.verdict === 'beyond', text: `${words}: ${figures}` };
  }

  #situation(situation: Situation): SceneSituation {
    const { segment } = situation;
    const deliveries = deliveriesOf(this.#analysis, situation);
    const worst = worstLink(this.#analysis.traffic, segment);
    return {
      segment: segment?.name ?? null,
      title: segment ? (segment.statement.label ?? segment.name) : 'always on',
      subtitle: worst,
      wires: this.#wireLoads(deliveries),
      ribbons: this.#links.filter((link) => link.network).map((link) => this.#ribbonLoad(link, segment)),
      watched: this.#watched(deliveries),
      lost: [...situation.lostLinks, ...situation.lostNodes].map((thing) => thing.name),
      traces: deliveries.flatMap((delivery) => this.#trace(delivery)),
    };
  }

  #wireLoads(deliveries: readonly Delivery[]): WireLoad[] {
    const pictures = new Map<Link, Set<number>>();
    for (const { feed, routes } of deliveries) {
      const number = feed.source && this.#numbers.get(feed.source);
      if (number === undefined) continue;
      for (const { link } of routes.flatMap((route) => route.steps)) {
        if (link.network) continue;
        const here = pictures.get(link) ?? new Set();
        pictures.set(link, here.add(number));
      }
    }
    return this.#links
      .filter((link) => !link.network)
      .map((link) => ({ wire: link.name, pictures: [...(pictures.get(link) ?? this.#plugged(link))] }));
  }

  /** What is plugged in shows its picture on its cable, even while nobody watches it. */
  #plugged(link: Link): Iterable<number> {
    const { kind, name } = link.statement.fact;
    const source = kind === 'source' && name !== undefined ? this.#analysis.sources.get(name) : undefined;
    const number = source && this.#numbers.get(source);
    return number === undefined ? [] : [number];
  }

  #ribbonLoad(link: Link, segment: Situation['segment']): RibbonLoad {
    const load = loadIn(this.#analysis.traffic[link.index], segment);
    const capacity = link.chain.capacity_bits_per_second;
    return {
      ribbon: link.name,
      forward: this.#lane(load?.forward, capacity),
      backward: this.#lane(load?.backward, capacity),
    };
  }

  #lane(direction: DirectionLoad | undefined, capacity: number | undefined): Lane {
    if (!direction) return { strands: [], load_bits_per_second: 0, text: '', over: false };
    const { load_bits_per_second: load, share, flows } = direction;
    const over = share !== undefined && share > 1 && capacity !== undefined;
    const text = over
      ? `${formatRate(load, capacity)} of ${formatRate(capacity)}: ${formatRate(load - capacity)} too much`
      : share === undefined
        ? formatRate(load)
        : `${formatShare(1 - share)} free`;
    return {
      strands: flows.map((flow) => ({
        picture: this.#numbers.get(flow.source) ?? 0,
        load_bits_per_second: flow.load_bits_per_second,
      })),
      load_bits_per_second: load,
      text,
      over,
    };
  }

  #watched(deliveries: readonly Delivery[]): Watched[] {
    const shown = new Map<Destination, Delivery>();
    for (const delivery of deliveries) {
      const { target } = delivery.feed;
      if (target && 'kind' in target && target.kind === 'destination' && !shown.has(target))
        shown.set(target, delivery);
    }
    return [...this.#owners]
      .filter((owner): owner is Destination => owner.kind === 'destination')
      .map((destination) => {
        const delivery = shown.get(destination);
        const arrives = delivery !== undefined && delivery.routes.length > 0;
        const number = arrives && delivery.feed.source ? this.#numbers.get(delivery.feed.source) : undefined;
        const text = !delivery ? 'no picture' : arrives ? delayText(delivery) : 'no route';
        return {
          box: destination.name,
          picture: number,
          text,
          trouble: delivery !== undefined && (!arrives || delivery.delay.over),
        };
      });
  }

  #trace({ feed, routes }: Delivery): Trace[] {
    const picture = feed.source && this.#numbers.get(feed.source);
    if (picture === undefined || routes.length === 0) return [];
    const passes = new Set<string>();
    for (const route of routes) {
      for (const port of route.ports) passes.add(port.owner.name);
      for (const step of route.steps) passes.add(step.link.name);
    }
    return [{ feed: feed.name, picture, passes: [...passes] }];
  }
}

/** The links that are drawn, and everything that they join or that stands alone. */
function chosen(
  analysis: Analysis,
  { place, source }: SceneChoice,
): { links: readonly Link[]; owners: ReadonlySet<Port['owner']> } {
  const drawable = analysis.links.filter(
    (link) => link.from.port && link.to.port && link.from.port.owner !== link.to.port.owner,
  );
  const touches = (link: Link) => [link.from, link.to].some((end) => end.port!.owner.place?.name === place);
  const onRoute = new Set(
    source === undefined
      ? []
      : analysis.deliveries
          .filter((d) => d.feed.source?.name === source)
          .flatMap((d) => d.routes.flatMap((r) => r.steps.map((s) => s.link))),
  );
  const links = drawable.filter(
    (link) => (place === undefined || touches(link)) && (source === undefined || onRoute.has(link)),
  );
  const joined = new Set(links.flatMap((link) => [link.from.port!.owner, link.to.port!.owner]));
  const all: Port['owner'][] = [
    ...analysis.nodes.values(),
    ...[...analysis.sources.values()].filter((s) => !s.from),
    ...analysis.destinations.values(),
  ];
  const standing = all.filter(
    (owner) =>
      joined.has(owner) || (source === undefined && (place === undefined || owner.place?.name === place)),
  );
  return { links, owners: new Set(standing) };
}

function kitTitle(node: Node): string {
  return node.kit?.statement.label ?? node.kit?.name ?? '';
}

function titleOf(link: Link): string {
  return link.statement.fact.kind === 'link' ? (link.statement.label ?? link.name) : link.name;
}

/**
 * Inputs stand left, outputs right. A port that is neither stands where its cable leaves: towards the rooms that are
 * written later to the right, and within one room to the right when the cable begins here.
 */
function sideOf(port: Port): 'west' | 'east' {
  if (port.role === 'input') return 'west';
  if (port.role === 'output') return 'east';
  const [link] = port.links;
  if (!link) return 'east';
  const begins = link.from.port === port;
  const far = begins ? link.to.port : link.from.port;
  const [here, there] = [port.owner.place?.index, far?.owner.place?.index];
  if (here === undefined || there === undefined || here === there) return begins ? 'east' : 'west';
  return there > here ? 'east' : 'west';
}

function sceneEnd(end: LinkEnd): SceneEnd {
  const { owner, text } = end.port!;
  return { box: owner.name, port: text };
}

/** The deliveries that hold in a situation: those of the plan without segments that are not ended, and its own. */
function deliveriesOf(analysis: Analysis, situation: Situation): Delivery[] {
  const { segment, own, ended } = situation;
  if (!segment) return [...own];
  const always = analysis.situations[0]?.own ?? [];
  return [...always.filter((delivery) => !ended.has(delivery)), ...own];
}

function loadIn(traffic: Traffic | undefined, segment: Situation['segment']): Load | undefined {
  return traffic?.differing.find((load) => load.segment === segment) ?? traffic?.base;
}

function worstLink(traffic: readonly Traffic[], segment: Situation['segment']): string {
  let worst: { link: Link; share: number } | undefined;
  for (const one of traffic) {
    const load = loadIn(one, segment);
    for (const share of [load?.forward.share, load?.backward.share]) {
      if (share !== undefined && one.link.network && share > (worst?.share ?? 0))
        worst = { link: one.link, share };
    }
  }
  return worst ? `worst link ${titleOf(worst.link)} ${formatShare(worst.share)}` : '';
}

function delayText({ delay, format, feed }: Delivery): string {
  if (delay.delay_s === undefined) return '';
  const rate = format?.kind === 'picture' ? framesPerSecond(format.rate) : undefined;
  const measured = delay.from === 'measured' ? ' measured' : '';
  const inFrames =
    rate === undefined ? formatTime(delay.delay_s) : formatFrames(roundedFrames(delay.delay_s * rate));
  const limit =
    delay.limit_s === undefined || rate === undefined
      ? ''
      : ` of ${formatFrames(roundedFrames(delay.limit_s * rate))}`;
  const over = delay.over ? ' — too late' : '';
  return feed.source ? `${inFrames}${measured}${limit}${over}` : '';
}

/** A tenth of a frame is as much as anybody sees or measures. */
function roundedFrames(frames: number): number {
  return Math.round(frames * 10) / 10;
}
