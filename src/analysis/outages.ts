import type { Building } from './building.ts';
import { add } from './lists.ts';
import { Losses } from './losses.ts';
import type { Analysis, Delivery, Link, Node, Situation } from './model.ts';
import { PictureFollower } from './pictures.ts';
import { type Changes, RiderBook } from './riders.ts';
import { Router } from './router.ts';
import { showOf } from './tools.ts';

/** What is lost at once. */
export interface Outage {
  readonly links: ReadonlySet<Link>;
  /** Links for which a standby may be plugged: lost by themselves, with their run or their sheath, not with a node. */
  readonly replaceable: readonly Link[];
}

/** What an outage does in one situation. */
export interface Outcome {
  readonly dark: readonly Delivery[];
  readonly kept: readonly Delivery[];
  readonly afterReplugging: readonly Delivery[];
  readonly standbys: readonly Link[];
  readonly overloaded: readonly Link[];
  /** Links that a kept delivery takes then. */
  readonly ways: ReadonlyMap<Delivery, ReadonlySet<Link>>;
}

/**
 * Tries outages out in one situation. Only the deliveries that ride over what is lost are searched again, with the
 * standbys plugged that stand by for it; everything else stays as it is.
 */
export class Outages {
  readonly situation: Situation;
  readonly #ground: OutageGround;
  readonly #over: ReadonlyMap<Link, readonly Delivery[]>;
  readonly #changes: readonly Changes[];

  constructor(ground: OutageGround, situation: Situation) {
    this.situation = situation;
    this.#ground = ground;
    const isBase = situation.segment === undefined;
    this.#over = isBase ? ground.over : linksOver(situation.own);
    this.#changes = isBase ? [] : [ground.book.changesBy(situation.ended, situation.own)];
  }

  /** Deliveries that ride over any of these links here, in order of statements. */
  concernedBy(links: Iterable<Link>): readonly Delivery[] {
    const { segment, ended } = this.situation;
    const concerned = new Set<Delivery>();
    for (const link of links) {
      for (const delivery of this.#over.get(link) ?? none) concerned.add(delivery);
      if (segment === undefined) continue;
      for (const delivery of this.#ground.over.get(link) ?? none)
        if (!ended.has(delivery)) concerned.add(delivery);
    }
    return [...concerned].sort((a, b) => a.feed.index - b.feed.index);
  }

  /** Puts the situation's own pictures and losses in place; what is returned puts everything back. */
  enter(): () => void {
    const { segment, own, ended, lostLinks, standbys } = this.situation;
    const { router } = this.#ground;
    if (segment === undefined) return () => undefined;
    const leave = router.enter(lostLinks, standbys);
    for (const delivery of ended) router.vacate(delivery);
    for (const delivery of own) router.occupy(delivery);
    return leave;
  }

  /** What happens to the deliveries that an outage concerns. Call it between entering and leaving the situation. */
  tryOut({ links, replaceable }: Outage, concerned: readonly Delivery[]): Outcome {
    const standbys = this.#standbysFor(links, replaceable);
    const tried = this.#ground.router.during(links, standbys, () => {
      for (const delivery of concerned) this.#ground.router.vacate(delivery);
      return concerned.map((delivery) => this.#keep(delivery, links));
    });
    const trials = tried.filter((trial) => trial !== undefined);
    const ways = new Map<Delivery, ReadonlySet<Link>>();
    for (const trial of trials) ways.set(trial.of, linksOf(trial.delivery));
    const plugged = standbys.filter((link) => trials.some(({ of }) => ways.get(of)!.has(link)));
    return {
      dark: concerned.filter((delivery) => !ways.has(delivery)),
      kept: trials.map(({ of }) => of),
      afterReplugging: trials
        .map(({ of }) => of)
        .filter((of) => plugged.some((link) => ways.get(of)!.has(link))),
      standbys: plugged,
      overloaded: this.#overloaded(
        concerned,
        trials.map(({ delivery }) => delivery),
      ),
      ways,
    };
  }

  /** A standby counts only if the cable would work: its ends fit and it is short enough. */
  #standbysFor(lost: ReadonlySet<Link>, replaceable: readonly Link[]): readonly Link[] {
    const all = new Set([...lost, ...this.situation.lostLinks, ...this.situation.standbys]);
    return this.#ground.losses.standbysFor(replaceable, all).filter(({ chain }) => {
      return (
        chain.interfaceFault === undefined && this.#ground.analysis.reaches[chain.index]!.verdict !== 'beyond'
      );
    });
  }

  /** The other copy of a seamless feed, or another way; undefined when it goes dark. */
  #keep(delivery: Delivery, lost: ReadonlySet<Link>): { of: Delivery; delivery: Delivery } | undefined {
    const { router, follower } = this.#ground;
    const trial: Building<Delivery> = { ...delivery };
    const whole = delivery.routes.filter(({ steps }) => !steps.some(({ link }) => lost.has(link)));
    if (whole.length > 0) trial.routes = whole;
    else {
      const { feed } = delivery;
      const starts = router.startsOf(feed.source!);
      const found = router.find(feed, feed.source!, starts, router.endsOf(feed.target!));
      if (found.ways.length === 0 || found.taken) return undefined;
      trial.routes = found.ways.map((way) => router.routeOf(way));
      follower.follow(trial);
    }
    router.occupy(trial);
    return { of: delivery, delivery: trial };
  }

  /** Network links that carry more than they can, and more than before. */
  #overloaded(ended: readonly Delivery[], begun: readonly Delivery[]): Link[] {
    const { analysis, book } = this.#ground;
    const changes = book.changesBy(ended, begun);
    const overloaded = new Set<Link>();
    for (const direction of changes.keys()) {
      const link = analysis.links[direction >> 1]!;
      const capacity = link.chain.capacity_bits_per_second;
      if (!link.network || capacity === undefined) continue;
      const after = book.after(direction, [...this.#changes, changes]);
      const load = sumOf(after);
      const before = book.after(direction, this.#changes) ?? book.on(direction);
      if (load > capacity && load > sumOf(before)) overloaded.add(link);
    }
    return [...overloaded].sort((a, b) => a.index - b.index);
  }
}

/** What the outages of all situations of one analysis share. Its router is its own, so that it may be left as it is. */
export class OutageGround {
  readonly analysis: Analysis;
  readonly router: Router;
  readonly losses: Losses;
  readonly book: RiderBook;
  readonly follower: PictureFollower;
  /** Always-on deliveries by the links that they take. */
  readonly over: ReadonlyMap<Link, readonly Delivery[]>;

  constructor(analysis: Analysis) {
    const { works, usual, router } = showOf(analysis);
    const { formats } = works;
    const [base] = analysis.situations;
    this.analysis = analysis;
    this.router = new Router(analysis, usual, router.graph);
    for (const delivery of base.own) this.router.occupy(delivery);
    this.losses = new Losses(analysis);
    this.book = new RiderBook(analysis.links, base, formats);
    this.follower = new PictureFollower(formats, usual, analysis.flows);
    this.over = linksOver(base.own);
  }
}

const none: readonly never[] = [];

function linksOver(deliveries: readonly Delivery[]): Map<Link, Delivery[]> {
  const over = new Map<Link, Delivery[]>();
  for (const delivery of deliveries) {
    for (const link of linksOf(delivery)) add(over, link, delivery);
  }
  return over;
}

function linksOf({ routes }: Delivery): Set<Link> {
  const links = new Set<Link>();
  for (const { steps } of routes) for (const { link } of steps) links.add(link);
  return links;
}

function sumOf(riders: Iterable<{ readonly load_bits_per_second: number }> | undefined): number {
  let sum = 0;
  for (const { load_bits_per_second } of riders ?? none) sum += load_bits_per_second;
  return sum;
}

/** Nodes that only pass network traffic on. */
export function onlyForwards({ kit }: Node): boolean {
  return kit?.forwards === true && kit.carries === undefined && !kit.routes;
}
