import type { FrameRate } from '../physics/rate.ts';
import { Beginnings, type Scene } from './beginnings.ts';
import type { Building } from './building.ts';
import type { DeliveryBook } from './delivery-book.ts';
import type { KnownFormat } from './formats.ts';
import { add } from './lists.ts';
import type {
  Beginning,
  Cycle,
  Delay,
  DelayPart,
  Delivery,
  Node,
  Plant,
  Situation,
  Source,
} from './model.ts';
import {
  type Clock,
  delayPartsOf,
  durationIn_s,
  isOver,
  limitOf,
  pathDelay_s,
  rateOf,
} from './path-delay.ts';

/** What happened since delays were worked out. */
export interface DelayChanges {
  /** Deliveries that are new, or go over other cables, in another format or to another limit. */
  readonly deliveries: ReadonlySet<Building<Delivery>>;
  /** Deliveries that are no more. */
  readonly gone: readonly Delivery[];
  /** Sources that take another time of their own, or whose frames do. */
  readonly sources: ReadonlySet<Source>;
  /** The always-on deliveries are not all the same ones as before. */
  readonly rerouted: boolean;
}

/**
 * Says of every delivery how old its picture is where it is watched. Where a segment makes a picture older or younger
 * than without segments, though it goes the same way, that delivery is told again for the segment.
 */
export class Delayer {
  readonly #first: readonly (KnownFormat | undefined)[];
  readonly #clock: Clock;
  readonly #paths = new Map<Delivery, number | undefined>();
  /** Always-on deliveries by the node that they end at. */
  readonly #arrivals = new Map<Node, Delivery[]>();
  readonly #sourcesFrom = new Map<Node, Source[]>();
  readonly #madeWith = new Map<Source, Source[]>();
  readonly #book: DeliveryBook;
  #beginnings: Beginnings;

  /** @param first By source: its picture as it leaves it. */
  constructor(plant: Plant, first: readonly (KnownFormat | undefined)[], clock: Clock, book: DeliveryBook) {
    this.#book = book;
    this.#first = first;
    this.#clock = clock;
    this.#beginnings = this.#newBeginnings();
    for (const source of plant.sources.values()) {
      if (source.from?.owner.kind === 'node') add(this.#sourcesFrom, source.from.owner, source);
      for (const member of source.madeOf ?? none) add(this.#madeWith, member, source);
    }
  }

  /** @returns the circles of sources that are made of each other. */
  delay([base, ...segments]: Situations): Cycle[] {
    this.#arrivals.clear();
    for (const delivery of base.own) {
      const node = nodeAtEnd(delivery);
      if (node) add(this.#arrivals, node, delivery);
    }
    this.#paths.clear();
    this.#beginnings = this.#newBeginnings();
    for (const delivery of base.own) this.#set(delivery, this.#beginnings);
    const circles = this.#beginnings.circles.map(
      (circle): Cycle => ({ kind: 'of', statements: circle.map(({ statement }) => statement) }),
    );
    for (const situation of segments) this.#delaySegment(situation, this.#beginnings);
    return circles;
  }

  /** The same where only some deliveries and sources are not as they were. */
  delayAgain(situations: Situations, { deliveries, gone, sources, rerouted }: DelayChanges): Cycle[] {
    if (this.#beginnings.hasCircles) return this.delay(situations);
    const [base, ...segments] = situations;
    const touched = new Set<Node>();
    for (const delivery of [...deliveries, ...gone]) {
      this.#paths.delete(delivery);
      const node = nodeAtEnd(delivery);
      if (node) touched.add(node);
    }
    if (rerouted && touched.size > 0) {
      for (const node of touched) this.#arrivals.delete(node);
      for (const delivery of base.own) {
        const node = nodeAtEnd(delivery);
        if (node && touched.has(node)) add(this.#arrivals, node, delivery);
      }
    }
    const affected = this.#affectedBy(touched, sources);
    this.#beginnings.forget(affected);
    const toSet = new Set<Building<Delivery>>([...deliveries, ...this.#book.of(affected)]);
    for (const delivery of toSet) if (delivery.segment === undefined) this.#set(delivery, this.#beginnings);
    if (this.#beginnings.hasCircles) return this.delay(situations);
    for (const situation of segments) this.#delaySegment(situation, this.#beginnings);
    return [];
  }

  #newBeginnings(): Beginnings {
    return new Beginnings(this.#scene((node) => this.#arrivals.get(node) ?? none));
  }

  #scene(arrivalsAt: Scene['arrivalsAt']): Scene {
    return {
      arrivalsAt,
      arrival_s: (delivery, beginning_s) => this.#arrival_s(delivery, beginning_s),
      rateOf: (source, delivery) =>
        rateOf(this.#clock, delivery?.format ?? this.#first[source.index]?.format),
    };
  }

  #delaySegment(situation: Building<Situation>, before: Beginnings): void {
    const { own, ended } = situation;
    if (own.length === 0 && ended.size === 0) return;
    const ownArrivals = new Map<Node, Delivery[]>();
    const touched = new Set<Node>();
    for (const delivery of [...own, ...ended]) {
      const node = nodeAtEnd(delivery);
      if (node) touched.add(node);
    }
    for (const delivery of own) {
      const node = nodeAtEnd(delivery);
      if (node) add(ownArrivals, node, delivery);
    }
    const affected = this.#affectedBy(touched);
    const beginnings = new Beginnings(
      this.#scene((node) => {
        const always = (this.#arrivals.get(node) ?? none).filter((delivery) => !ended.has(delivery));
        return [...always, ...(ownArrivals.get(node) ?? none)];
      }),
      (source) => (affected.has(source) ? undefined : before.knownOf(source)),
    );
    for (const delivery of own) this.#set(delivery, beginnings);
    const changed = this.#changedBy(affected, situation, before, beginnings);
    if (changed.length === 0) return;
    situation.ended = new Set([...ended, ...changed]);
    const told = changed.map((delivery) => this.#tellAgain(delivery, situation, beginnings));
    situation.own = [...own, ...told].sort((a, b) => a.feed.index - b.feed.index);
  }

  /** Sources whose picture may get another age when something changes at these nodes, and what is made of them. */
  #affectedBy(touched: ReadonlySet<Node>, sources: Iterable<Source> = none): ReadonlySet<Source> {
    const nodes = new Set(touched);
    const affected = new Set<Source>();
    const toDo: Source[] = [];
    const reach = (sources: Iterable<Source>) => {
      for (const source of sources) {
        if (affected.has(source)) continue;
        affected.add(source);
        toDo.push(source);
      }
    };
    reach(sources);
    for (const node of touched) reach(this.#sourcesFrom.get(node) ?? none);
    for (let source = toDo.pop(); source !== undefined; source = toDo.pop()) {
      reach(this.#madeWith.get(source) ?? none);
      for (const delivery of this.#alwaysOf(source)) {
        const node = nodeAtEnd(delivery);
        if (node === undefined || nodes.has(node)) continue;
        nodes.add(node);
        reach(this.#sourcesFrom.get(node) ?? none);
      }
    }
    return affected;
  }

  #alwaysOf(source: Source): readonly Building<Delivery>[] {
    return this.#book.of([source]).filter(({ segment }) => segment === undefined);
  }

  #changedBy(
    affected: ReadonlySet<Source>,
    { ended }: Situation,
    before: Beginnings,
    now: Beginnings,
  ): Delivery[] {
    const changed: Delivery[] = [];
    for (const source of affected) {
      const deliveries = this.#alwaysOf(source);
      if (deliveries.length === 0 || before.of(source).delay_s === now.of(source).delay_s) continue;
      for (const delivery of deliveries) {
        if (!ended.has(delivery) && delivery.routes.length > 0) changed.push(delivery);
      }
    }
    return changed;
  }

  /** The same way, in a segment in which the picture has another age. */
  #tellAgain(delivery: Delivery, { segment }: Situation, beginnings: Beginnings): Delivery {
    const again: Building<Delivery> = { ...delivery, segment, because: 'delay' };
    this.#set(again, beginnings);
    return again;
  }

  #set(delivery: Building<Delivery>, beginnings: Beginnings): void {
    const { source, measured } = delivery.feed;
    if (!source || delivery.routes.length === 0) {
      delivery.delay = noDelay;
      return;
    }
    const beginning: Beginning = beginnings.of(source);
    const path_s = this.#path_s(delivery);
    const computed_s =
      path_s === undefined || beginning.delay_s === undefined ? undefined : beginning.delay_s + path_s;
    const rate = this.#rateOf(source);
    const measured_s = measured?.fact.delay && durationIn_s(measured.fact.delay, rate);
    delivery.delay = new DeliveryDelay(
      delivery,
      this.#clock,
      beginning,
      path_s,
      computed_s,
      measured_s,
      limitOf(delivery, rate),
    );
  }

  #arrival_s(delivery: Delivery, beginning_s: number | undefined): number | undefined {
    const { measured, source } = delivery.feed;
    if (measured?.fact.delay && source) {
      const measured_s = durationIn_s(measured.fact.delay, this.#rateOf(source));
      if (measured_s !== undefined) return measured_s;
    }
    const path_s = this.#path_s(delivery);
    return path_s === undefined || beginning_s === undefined ? undefined : beginning_s + path_s;
  }

  #path_s(delivery: Delivery): number | undefined {
    if (!this.#paths.has(delivery)) this.#paths.set(delivery, pathDelay_s(delivery, this.#clock));
    return this.#paths.get(delivery);
  }

  #rateOf(source: Source): FrameRate | undefined {
    return rateOf(this.#clock, this.#first[source.index]?.format);
  }
}

/** Its parts are put together when somebody asks for the working: there are thousands of deliveries. */
class DeliveryDelay implements Delay {
  readonly delay_s: number | undefined;
  readonly from: Delay['from'];
  readonly computed_s: number | undefined;
  readonly beginning: Beginning;
  readonly path_s: number | undefined;
  readonly limit_s: number | undefined;
  readonly limit: Delay['limit'];
  readonly limitOn: Delay['limitOn'];
  readonly over: boolean;
  readonly #delivery: Delivery;
  readonly #clock: Clock;

  constructor(
    delivery: Delivery,
    clock: Clock,
    beginning: Beginning,
    path_s: number | undefined,
    computed_s: number | undefined,
    measured_s: number | undefined,
    { limit, limit_s, limitOn }: Pick<Delay, 'limit' | 'limit_s' | 'limitOn'>,
  ) {
    this.delay_s = measured_s ?? computed_s;
    this.from = measured_s === undefined ? 'computed' : 'measured';
    this.computed_s = computed_s;
    this.beginning = beginning;
    this.path_s = path_s;
    this.limit_s = limit_s;
    this.limit = limit;
    this.limitOn = limitOn;
    this.over = isOver(this.delay_s, limit_s);
    this.#delivery = delivery;
    this.#clock = clock;
  }

  get parts(): readonly DelayPart[] {
    return delayPartsOf(this.#delivery, this.#clock);
  }
}

const none: readonly never[] = [];

/** The plan without segments first. */
type Situations = readonly [Building<Situation>, ...Building<Situation>[]];

const noDelay: Delay = {
  delay_s: undefined,
  from: 'computed',
  computed_s: undefined,
  beginning: undefined,
  path_s: undefined,
  parts: none,
  limit_s: undefined,
  limit: undefined,
  limitOn: undefined,
  over: false,
};

/** The node at whose input a delivery ends. */
function nodeAtEnd({ feed }: Delivery): Node | undefined {
  const { target } = feed;
  if (target === undefined || 'takes' in target || target.owner.kind !== 'node') return undefined;
  return target.owner;
}
