import { add } from './lists.ts';
import { linksOf } from './losses.ts';
import type {
  Analysis,
  Break,
  Delivery,
  Failure,
  Feed,
  Link,
  Node,
  Redundancy,
  Run,
  Situation,
} from './model.ts';
import { type Outage, OutageGround, Outages, type Outcome, onlyForwards } from './outages.ts';

/** Everything that a single loss does to a plan. */
export interface FailureReport {
  /** The worst first: most feeds dark, then most links overloaded, then most feeds concerned. */
  readonly failures: readonly Failure[];
  /** Of every `redundant` feed that has a way. */
  readonly redundancies: readonly Redundancy[];
  /** Links that some `redundant` feed takes after a loss: they are there for it though nothing may go over them now. */
  readonly reliedOn: ReadonlySet<Link>;
}

const reports = new WeakMap<Analysis, FailureReport>();

/** What every single loss does; worked out when first asked for. */
export function failuresOf(analysis: Analysis): readonly Failure[] {
  return reportOf(analysis).failures;
}

/** Whether `redundant` feeds survive what they must; worked out when first asked for. */
export function redundanciesOf(analysis: Analysis): readonly Redundancy[] {
  return hasRedundant(analysis) ? reportOf(analysis).redundancies : [];
}

/** Links that some `redundant` feed takes after a loss; worked out when first asked for. */
export function reliedOnBy(analysis: Analysis): ReadonlySet<Link> {
  return hasRedundant(analysis) ? reportOf(analysis).reliedOn : new Set();
}

/** Without any, no loss has to be tried out. */
function hasRedundant({ feeds }: Analysis): boolean {
  return feeds.some(({ redundant }) => redundant);
}

function reportOf(analysis: Analysis): FailureReport {
  const steps = failing(analysis);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** The same in small steps, for an editor that has other things to do; it may be given up after any of them. */
export function* failing(analysis: Analysis): Generator<undefined, FailureReport> {
  const known = reports.get(analysis);
  if (known) return known;
  const examiner = new Examiner(analysis);
  yield* examiner.examine();
  const report = examiner.report();
  reports.set(analysis, report);
  return report;
}

/** One thing that can be lost. */
interface Loss extends Outage {
  readonly kind: Failure['kind'];
  readonly lost: Link | Node | Run;
}

class Examiner {
  readonly #analysis: Analysis;
  readonly #ground: OutageGround;
  /** Everything in its sheath, by the first link of it. */
  readonly #sheaths = new Map<Link, Link[]>();
  readonly #inRun = new Map<Run, Link[]>();
  readonly #failures: Failure[] = [];
  /** What a loss does without segments, and which losses lead to ways over a link. */
  readonly #baseFailures = new Map<Loss['lost'], Failure>();
  readonly #leadingOver = new Map<Link, Loss[]>();
  readonly #redundancies = new Map<Feed, Map<Situation, Finding>>();
  readonly #reliedOn = new Set<Link>();

  constructor(analysis: Analysis) {
    this.#analysis = analysis;
    this.#ground = new OutageGround(analysis);
    for (const link of analysis.links) {
      add(this.#sheaths, link.sheath, link);
      for (const run of new Set(link.length.runs)) add(this.#inRun, run, link);
    }
  }

  *examine(): Generator<undefined, void> {
    for (const situation of this.#analysis.situations) {
      const outages = new Outages(this.#ground, situation);
      const losses = this.#lossesIn(situation);
      const leave = outages.enter();
      for (const loss of losses) {
        this.#examineLoss(loss, outages);
        yield;
      }
      leave();
    }
  }

  report(): FailureReport {
    const failures = [...this.#failures].sort(
      (a, b) =>
        b.dark.length - a.dark.length ||
        b.overloaded.length - a.overloaded.length ||
        b.dark.length + b.kept.length - a.dark.length - a.kept.length,
    );
    const redundancies = this.#analysis.feeds.flatMap((feed) =>
      [...(this.#redundancies.get(feed)?.values() ?? [])].filter(isNews).map(finished),
    );
    return { failures, redundancies, reliedOn: this.#reliedOn };
  }

  /** Without segments everything that carries a picture; in a segment what can turn out otherwise there. */
  #lossesIn({ segment, own, ended }: Situation): Loss[] {
    const links = new Set<Link>();
    for (const { routes } of [...own, ...ended]) {
      for (const { steps } of routes) for (const { link } of steps) links.add(link);
    }
    const losses = new Map<Loss['lost'], Loss>();
    const consider = (lost: Loss['lost'], make: () => Loss) => {
      if (!losses.has(lost)) losses.set(lost, make());
    };
    const ordered = [...links].sort((a, b) => a.index - b.index);
    for (const link of ordered) consider(link.sheath, () => this.#lossOfLink(link.sheath));
    for (const link of ordered) {
      for (const { port } of [link.from, link.to]) {
        const owner = port?.owner;
        if (owner?.kind === 'node') consider(owner, () => lossOfNode(owner));
      }
    }
    for (const link of ordered) for (const run of link.length.runs) consider(run, () => this.#lossOfRun(run));
    if (segment !== undefined) {
      for (const link of ordered) {
        for (const loss of this.#leadingOver.get(link) ?? []) consider(loss.lost, () => loss);
      }
    }
    return [...losses.values()];
  }

  #lossOfLink(sheath: Link): Loss {
    const links = this.#sheaths.get(sheath)!;
    return { kind: 'link', lost: sheath, links: new Set(links), replaceable: links };
  }

  #lossOfRun(run: Run): Loss {
    const links = this.#inRun.get(run)!;
    return { kind: 'run', lost: run, links: new Set(links), replaceable: links };
  }

  #examineLoss(loss: Loss, outages: Outages): void {
    const { situation } = outages;
    const concerned = outages.concernedBy(loss.links);
    const before = this.#baseFailures.get(loss.lost);
    if (concerned.length === 0) return;
    const outcome = outages.tryOut(loss, concerned);
    const failure = failureOf(loss, situation, outcome);
    if (situation.segment === undefined) {
      this.#baseFailures.set(loss.lost, failure);
      for (const link of new Set([...outcome.ways.values()].flatMap((ways) => [...ways]))) {
        add(this.#leadingOver, link, loss);
      }
    }
    if (!before || !isAlike(before, failure)) this.#failures.push(failure);
    this.#judgeRedundant(loss, outages, concerned, outcome);
  }

  /** What a `redundant` feed must survive: one network link, the network links of one run, a node that only forwards. */
  #judgeRedundant(loss: Loss, outages: Outages, concerned: readonly Delivery[], outcome: Outcome): void {
    const redundant = concerned.filter(({ feed }) => feed.redundant);
    if (redundant.length === 0) return;
    for (const delivery of redundant) this.#findingFor(delivery, outages.situation);
    if (loss.kind === 'node' && !onlyForwards(loss.lost as Node)) return;
    const network = new Set([...loss.links].filter((link) => link.network));
    if (network.size === 0) return;
    let judged = outcome;
    if (loss.kind === 'run' && network.size < loss.links.size) {
      const outage = { links: network, replaceable: [...network] };
      judged = outages.tryOut(outage, outages.concernedBy(network));
    }
    for (const delivery of redundant) {
      if (!takesAny(delivery, network)) continue;
      const finding = this.#findingFor(delivery, outages.situation);
      for (const standby of judged.standbys) {
        if (judged.ways.get(delivery)?.has(standby)) finding.standbys.add(standby);
      }
      const ways = judged.ways.get(delivery);
      for (const link of ways ?? []) this.#reliedOn.add(link);
      const overloaded = ways ? judged.overloaded.filter((link) => ways.has(link)) : [];
      if (ways && overloaded.length === 0) continue;
      const broken: Break = { kind: loss.kind, lost: loss.lost, overloaded };
      if (this.#isKnown(delivery.feed, broken)) continue;
      if (loss.kind === 'node') finding.weakenedBy.push(broken);
      else finding.brokenBy.push(broken);
    }
  }

  /** What breaks a feed without segments is not told again for each of them. */
  #isKnown(feed: Feed, { kind, lost }: Break): boolean {
    const base = this.#redundancies.get(feed)?.get(this.#analysis.situations[0]);
    return [...(base?.brokenBy ?? []), ...(base?.weakenedBy ?? [])].some(
      (broken) => broken.kind === kind && broken.lost === lost,
    );
  }

  #findingFor(delivery: Delivery, situation: Situation): Finding {
    let bySituation = this.#redundancies.get(delivery.feed);
    if (!bySituation) {
      bySituation = new Map();
      this.#redundancies.set(delivery.feed, bySituation);
    }
    let finding = bySituation.get(situation);
    if (!finding) {
      finding = { delivery, situation, brokenBy: [], weakenedBy: [], standbys: new Set() };
      bySituation.set(situation, finding);
    }
    return finding;
  }
}

/** A `Redundancy` while it is put together. */
interface Finding {
  readonly delivery: Delivery;
  readonly situation: Situation;
  readonly brokenBy: Break[];
  readonly weakenedBy: Break[];
  readonly standbys: Set<Link>;
}

/** In a segment, only what is not told of the plan without segments. */
function isNews({ delivery, situation, brokenBy, weakenedBy }: Finding): boolean {
  return delivery.segment === situation.segment || brokenBy.length + weakenedBy.length > 0;
}

function finished({ delivery, situation, brokenBy, weakenedBy, standbys }: Finding): Redundancy {
  return { delivery, segment: situation.segment, brokenBy, weakenedBy, standbys: [...standbys] };
}

function lossOfNode(node: Node): Loss {
  return { kind: 'node', lost: node, links: new Set(linksOf(node)), replaceable: [] };
}

function failureOf({ kind, lost, links }: Loss, { segment }: Situation, outcome: Outcome): Failure {
  const { dark, kept, afterReplugging, standbys, overloaded } = outcome;
  return { kind, lost, links: [...links], segment, dark, kept, afterReplugging, standbys, overloaded };
}

/** The same feeds dark and kept, by the same standbys, with the same links too full. */
function isAlike(a: Failure, b: Failure): boolean {
  const sameFeeds = (one: readonly Delivery[], other: readonly Delivery[]) =>
    one.length === other.length && one.every(({ feed }, i) => feed === other[i]!.feed);
  const sameLinks = (one: readonly Link[], other: readonly Link[]) =>
    one.length === other.length && one.every((link, i) => link === other[i]);
  return (
    sameFeeds(a.dark, b.dark) &&
    sameFeeds(a.kept, b.kept) &&
    sameLinks(a.standbys, b.standbys) &&
    sameLinks(a.overloaded, b.overloaded)
  );
}

function takesAny({ routes }: Delivery, links: ReadonlySet<Link>): boolean {
  return routes.some(({ steps }) => steps.some(({ link }) => links.has(link)));
}
