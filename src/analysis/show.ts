import type { Statement } from '../plan/plan.ts';
import type { Building } from './building.ts';
import { Delayer } from './delays.ts';
import { DeliveryBook } from './delivery-book.ts';
import { SourceFigurer } from './figures.ts';
import type { KnownFormat } from './formats.ts';
import { FormerDeliveries } from './former-deliveries.ts';
import type { Graph } from './graph.ts';
import { add, goneFrom } from './lists.ts';
import type {
  Analysis,
  Carried,
  Chain,
  Cycle,
  Delivery,
  Feed,
  Link,
  Measurement,
  Port,
  Reach,
  Situation,
  Source,
  SourceFigures,
} from './model.ts';
import { merged, NameBook } from './names.ts';
import { type PictureFollower, picturesOf } from './pictures.ts';
import type { PlantWorks } from './plant.ts';
import type { PlantChanges } from './plant-edits.ts';
import { ReachJudge } from './reaches.ts';
import { chainStandsOut, deliveryStandsOut, linkStandsOut, Picked } from './remarkable.ts';
import { Router } from './router.ts';
import { type Deliveries, deliveriesOf } from './situations.ts';
import { type SpokenOf, speakOf, unsay } from './spoken.ts';
import { isOfPlant, type StatementEdit, type Statements } from './statements.ts';
import { TrafficCount } from './traffic.ts';
import { Unused } from './unused.ts';
import { type Wishes, WishReader } from './wishes.ts';

/**
 * Which pictures go where: wishes, ways, formats and flows, delays, loads, reaches. Each stage reads only those before
 * it.
 *
 * It can follow an edit: then each stage is told what of the stages before it is not as it was, works out only that
 * anew, and tells on what came out otherwise. What an edit leaves alone stays the same object.
 */
export class Show {
  readonly works: PlantWorks;
  /** The plan that it was asked for last. */
  plan: Analysis['plan'] | undefined;
  /** How pictures are carried where no kit says so. */
  readonly usual: Carried;
  readonly router: Router;
  readonly #statements: Statements;
  readonly #names = new NameBook();
  readonly #reader: WishReader;
  readonly #wishes: Wishes;
  #spokenNames = new NameBook();
  #spoken: SpokenOf;
  #directed: Deliveries;
  /** Deliveries of each situation as the ways were found, before a delay made some of them to be told again. */
  #ways: Ways;
  readonly #book = new DeliveryBook(() => this.#directed.all);
  readonly #pictures: PictureFollower;
  readonly #delayer: Delayer;
  #cycles: readonly Cycle[];
  #deliveries: readonly Delivery[] = [];
  /** What they were listed from. */
  #listed: readonly (readonly Delivery[])[] = [];
  readonly #traffic: TrafficCount;
  readonly #judge = new ReachJudge();
  readonly #reaches: Reach[];
  /** By chain: what its reach was judged for. */
  readonly #judged: { readonly chain: Chain; readonly fastest: KnownFormat | undefined }[];
  readonly #figurer: SourceFigurer;
  readonly #figures = new Map<string, SourceFigures>();
  #sourcesAt: ReadonlyMap<Port, readonly Source[]> | undefined;
  readonly #unused: Unused;
  readonly #oddLinks: Picked<Link>;
  readonly #oddChains: Picked<Chain>;
  #oddDeliveries: readonly Delivery[];
  /** Feeds whose measured delay is not the one of before. */
  readonly #measuredAnew = new Set<Feed>();

  /** @param graph The graph of the plant, when it is there already. */
  constructor(statements: Statements, works: PlantWorks, graph?: Graph) {
    const { plant, formats, kinds } = works;
    const { rate, headroomShare } = plant.settings;
    this.works = works;
    this.usual = kinds.usual();
    this.#statements = statements;
    this.#reader = new WishReader(plant, this.#names);
    this.#wishes = this.#reader.read(statements);
    this.#spoken = this.#speak();
    this.router = new Router(plant, this.usual, graph);
    this.#directed = deliveriesOf(plant, this.#wishes, this.router);
    const { situations, all } = this.#directed;
    this.#ways = waysOf(this.#directed);
    this.#pictures = picturesOf(all, formats, this.usual);
    this.#delayer = new Delayer(plant, this.#pictures.first, { formats, houseRate: rate }, this.#book);
    this.#cycles = this.#delayer.delay(situations);
    this.#listDeliveries();
    this.#traffic = new TrafficCount(plant.links, situations, formats, headroomShare);
    this.#judged = plant.chains.map((chain) => ({ chain, fastest: this.#pictures.fastest[chain.index] }));
    this.#reaches = this.#judged.map(({ chain, fastest }) => this.#judge.judge(chain, fastest));
    this.#figurer = new SourceFigurer(this.#pictures, formats, this.usual, rate);
    for (const source of plant.sources.values()) this.#figure(source);
    this.#unused = new Unused(plant, this.#wishes.feeds);
    this.#oddLinks = new Picked(plant.links, linkStandsOut);
    this.#oddChains = new Picked(plant.chains, (chain) => chainStandsOut(chain, this.#reaches[chain.index]!));
    this.#oddDeliveries = this.#deliveries.filter(deliveryStandsOut);
  }

  /** What has been worked out, as it now stands. */
  analysis(plan: Analysis['plan']): Analysis {
    this.plan = plan;
    const { plant, names, measurements } = this.works;
    const { segments, cases, feeds } = this.#wishes;
    const reports = [names, this.#names, this.#spokenNames].map((book) => book.report());
    return {
      ...plant,
      cycles: [...plant.cycles, ...this.#cycles],
      plan,
      names: merged(reports, plan.statements),
      segments,
      cases,
      feeds,
      unmatched: this.#directed.unmatched,
      situations: this.#directed.situations,
      deliveries: this.#deliveries,
      flows: this.#pictures.flows,
      traffic: this.#traffic.traffic,
      reaches: this.#reaches,
      sourceFigures: this.#figures,
      unfedDestinations: this.#unused.unfedDestinations,
      unusedSources: this.#unused.unusedSources,
      unusedNodes: this.#unused.unusedNodes,
      measurements: [...measurements.all, ...withoutWay(this.#spoken.measurements, this.#deliveries)],
      acceptances: this.#spoken.acceptances,
      proofs: this.#spoken.proofs,
      remarkable: {
        links: this.#oddLinks.list,
        chains: this.#oddChains.list,
        deliveries: this.#oddDeliveries,
      },
    };
  }

  /**
   * Follows an edit of feeds and of what is said of feeds, and changes of the plant that leave everything plugged as it
   * is. Every analysis that was made before is used up.
   */
  follow(edit: StatementEdit, plant: PlantChanges): void {
    const { all } = this.#directed;
    const ways = this.#ways;
    for (const { before, now } of plant.replaced) {
      this.#names.replace(before, now);
      this.#spokenNames.replace(before, now);
    }
    const rerouted = this.#followWishes(edit);
    const { situations } = this.#directed;
    const gone = rerouted ? goneFrom(all, this.#directed.all) : [];
    const found = rerouted ? this.#directed.found : [];
    this.#book.follow(gone, found);
    for (const [i, situation] of situations.entries()) Object.assign(situation, this.#ways[i]);
    const sources = new Set(plant.sources);
    for (const { feed } of [...gone, ...found, ...this.#book.over(cablesTouched(plant))])
      if (feed.source) sources.add(feed.source);
    for (const { source } of this.#measuredAnew) if (source) sources.add(source);

    const { followed, otherFirst } = this.#pictures.followAgain(sources, this.#book, gone);
    this.#cycles = this.#delayer.delayAgain(situations, {
      deliveries: new Set([...followed, ...found]),
      gone,
      sources: new Set([...plant.sources, ...otherFirst]),
      rerouted,
    });
    this.#listDeliveries();

    const links = new Set(plant.links);
    for (const { routes } of [...gone, ...followed, ...differentlyEnded(ways, this.#ways)]) {
      for (const { steps } of routes) for (const { link } of steps) links.add(link);
    }
    const over = this.#book.over(links).filter(({ segment }) => segment === undefined);
    this.#traffic.countAgain(links, over, situations);
    for (const { chain } of links) this.#judgeAgain(chain);
    for (const link of plant.links) this.#oddLinks.look(link);
    if (followed.length + found.length + gone.length + plant.sources.size > 0)
      this.#oddDeliveries = this.#deliveries.filter(deliveryStandsOut);
    for (const source of new Set([...sources, ...this.#sourcesOn(plant.links)])) this.#figure(source);
  }

  get plantStatements(): readonly Statement[] {
    return this.#statements.ofPlant();
  }

  /** @returns whether ways were looked for anew. */
  #followWishes(edit: StatementEdit): boolean {
    this.#statements.follow(edit);
    this.#measuredAnew.clear();
    const changed = [...edit.removed, ...edit.added].filter((statement) => !isOfPlant(statement));
    if (changed.length === 0) return false;
    const hasFeeds = changed.some(({ fact }) => fact.kind === 'feed');
    const { gone, added } = hasFeeds ? this.#reader.followFeeds(this.#wishes.feeds, edit) : nothingRead;
    const isSpokenOf = ({ name }: Feed) => this.#spoken.names.has(name);
    if (changed.some(({ fact }) => fact.kind !== 'feed') || gone.some(isSpokenOf) || added.some(isSpokenOf))
      this.#speakAgain();
    if (!hasFeeds) return false;
    this.#unused.follow(gone, added);
    this.#redirect();
    return true;
  }

  #speakAgain(): void {
    const measured = measuredFeeds(this.#spoken);
    unsay(this.#spoken);
    this.#spokenNames = new NameBook();
    this.#spoken = this.#speak();
    for (const feed of new Set([...measured.keys(), ...measuredFeeds(this.#spoken).keys()]))
      if (measured.get(feed) !== feed.measured) this.#measuredAnew.add(feed);
  }

  #redirect(): void {
    const { plant } = this.works;
    const { situations, blocked } = this.#directed;
    const ways = new Map(situations.map(({ segment }, i) => [segment, this.#ways[i]!]));
    for (const feed of this.#wishes.feeds) feed.repeats = undefined;
    this.router.clear();
    const former = new FormerDeliveries(this.router, ways, blocked);
    this.#directed = deliveriesOf(plant, this.#wishes, this.router, former);
    this.#ways = waysOf(this.#directed);
  }

  #speak(): SpokenOf {
    const { plant, subjects } = this.works;
    const { things, places, kits, cables, interfaces } = plant;
    const { segments, cases, feeds } = this.#wishes;
    const others = [kits, cables, interfaces, segments, cases];
    return speakOf(this.#statements, feeds, { names: this.#spokenNames, subjects, things, places, others });
  }

  #listDeliveries(): void {
    const lists = this.#directed.situations.map(({ own }) => own);
    if (lists.length === this.#listed.length && lists.every((own, i) => own === this.#listed[i])) return;
    this.#listed = lists;
    const deliveries = lists.flat() as Building<Delivery>[];
    for (let i = 0; i < deliveries.length; i++) deliveries[i]!.index = i;
    this.#deliveries = deliveries;
  }

  #judgeAgain(chain: Chain): void {
    const before = this.#judged[chain.index]!;
    const fastest = this.#pictures.fastest[chain.index];
    if (before.chain === chain && before.fastest === fastest) return;
    this.#judged[chain.index] = { chain, fastest };
    this.#reaches[chain.index] = this.#judge.judge(chain, fastest);
    this.#oddChains.look(chain);
  }

  #figure(source: Source): void {
    this.#figures.set(source.name, this.#figurer.figuresOf(source));
  }

  /** The sources whose own cable is one of these, or that come out of an output where one of them is plugged in. */
  #sourcesOn(links: ReadonlySet<Link>): Source[] {
    if (links.size === 0) return [];
    if (!this.#sourcesAt) {
      const sourcesAt = new Map<Port, Source[]>();
      for (const source of this.works.plant.sources.values())
        if (source.from) add(sourcesAt, source.from, source);
      this.#sourcesAt = sourcesAt;
    }
    const sources: Source[] = [];
    for (const { from, to } of links) {
      for (const { port } of [from, to]) {
        if (port?.owner.kind === 'source') sources.push(port.owner);
        if (port) sources.push(...(this.#sourcesAt.get(port) ?? []));
      }
    }
    return sources;
  }
}

const nothingRead = { gone: [], added: [] } as const;

type Ways = readonly Pick<Situation, 'own' | 'ended'>[];

function waysOf({ situations }: Deliveries): Ways {
  return situations.map(({ own, ended }) => ({ own, ended }));
}

/** Deliveries that end in some segment where they did not before, or no longer do. */
function differentlyEnded(before: Ways, now: Ways): Delivery[] {
  if (before === now) return [];
  return now.flatMap(({ ended }, i) => {
    const former = before[i]!.ended;
    return [
      ...[...ended].filter((delivery) => !former.has(delivery)),
      ...[...former].filter((delivery) => !ended.has(delivery)),
    ];
  });
}

function measuredFeeds({ measurements }: SpokenOf): ReadonlyMap<Feed, Feed['measured']> {
  const feeds = measurements.flatMap(({ of }) => (of.kind === 'feed' ? of.feeds : []));
  return new Map(feeds.map((feed) => [feed, feed.measured]));
}

/** The links over which pictures go that something of the plant touches. */
function cablesTouched({ links, destinations }: PlantChanges): Link[] {
  return [...links, ...[...destinations].flatMap(({ port }) => port?.links ?? [])];
}

/** A delay that was measured of a feed that gets nowhere in this plan has no effect. */
function withoutWay(
  measurements: readonly Measurement[],
  deliveries: readonly Delivery[],
): readonly Measurement[] {
  if (measurements.length === 0) return measurements;
  const arriving = new Set(deliveries.flatMap(({ feed, routes }) => (routes.length > 0 ? [feed] : [])));
  return measurements.map((one) =>
    one.useless === undefined && one.of.kind === 'feed' && !one.of.feeds.some((feed) => arriving.has(feed))
      ? { ...one, useless: 'no way' }
      : one,
  );
}
