import type { FrameRate } from '../physics/rate.ts';
import type { Beginning, Delivery, Ingredient, Node, Source } from './model.ts';
import { durationIn_s } from './path-delay.ts';

/** What a beginning is worked out from: it differs from one situation to another. */
export interface Scene {
  /** Deliveries that end at an input of the node. */
  readonly arrivalsAt: (node: Node) => readonly Delivery[];
  /** How old a picture is at the end of a delivery, given its age at the beginning. */
  readonly arrival_s: (delivery: Delivery, beginning_s: number | undefined) => number | undefined;
  /** The rate in which delays of a source's picture are counted, there or at the end of a delivery. */
  readonly rateOf: (source: Source, delivery: Delivery | undefined) => FrameRate | undefined;
}

/** A picture that a source is made of, and the delivery that brings it. */
interface Member {
  readonly source: Source;
  readonly delivery: Delivery | undefined;
}

type Lookup = (source: Source) => Beginning | undefined;

interface Frame {
  readonly source: Source;
  readonly members: readonly Member[];
  next: number;
}

/**
 * How old pictures are where their sources put them out: through the slowest that each is made of, back to the
 * cameras.
 *
 * A mixer that gets its own picture back goes round in a circle: what is already on the way is left out there. So each
 * source in a circle is worked out by itself, with the others seen from it.
 */
export class Beginnings {
  /** Circles of sources that say themselves what they are made of. */
  readonly circles: Source[][] = [];
  readonly #scene: Scene;
  readonly #inherited: Lookup;
  readonly #known = new Map<Source, Beginning>();
  /** Those that were worked out with something left out that is not themselves. */
  readonly #partial = new Set<Source>();
  #freshRuns = 0;

  /** @param inherited Beginnings that hold already. */
  constructor(scene: Scene, inherited: Lookup = () => undefined) {
    this.#scene = scene;
    this.#inherited = inherited;
  }

  of(source: Source): Beginning {
    const known =
      this.knownOf(source) ?? this.#workOut(source, this.#known, (one) => this.knownOf(one), true);
    if (!this.#partial.has(source) || this.#freshRuns >= MOST_FRESH_RUNS) return known;
    this.#freshRuns++;
    const fresh = new Map<Source, Beginning>();
    const whole = (one: Source) => fresh.get(one) ?? (this.#partial.has(one) ? undefined : this.knownOf(one));
    const beginning = this.#workOut(source, fresh, whole, false);
    this.#partial.delete(source);
    this.#known.set(source, beginning);
    return beginning;
  }

  /** Whether some source is, by way of others, made of itself. */
  get hasCircles(): boolean {
    return this.#freshRuns > 0 || this.#partial.size > 0 || this.circles.length > 0;
  }

  forget(sources: Iterable<Source>): void {
    for (const source of sources) this.#known.delete(source);
  }

  /** What was worked out already. */
  knownOf(source: Source): Beginning | undefined {
    return this.#known.get(source) ?? this.#inherited(source);
  }

  /** Depth first, with a stack of its own: a chain of mixers may be long. */
  #workOut(start: Source, results: Map<Source, Beginning>, known: Lookup, isFirst: boolean): Beginning {
    const first = this.#frame(start);
    if (first.members.length === 0) {
      const beginning = this.#combine(first, known, noSources);
      results.set(start, beginning);
      return beginning;
    }
    const stack: Frame[] = [first];
    const onTheWay = new Set([start]);
    for (;;) {
      const frame = stack[stack.length - 1]!;
      const member = frame.members[frame.next++];
      if (member === undefined) {
        const beginning = this.#combine(frame, known, onTheWay);
        results.set(frame.source, beginning);
        onTheWay.delete(frame.source);
        stack.pop();
        if (stack.length === 0) return beginning;
      } else if (onTheWay.has(member.source)) {
        if (isFirst) this.#tellCircle(stack, member.source);
      } else if (known(member.source) === undefined) {
        onTheWay.add(member.source);
        stack.push(this.#frame(member.source));
      } else if (isFirst && this.#partial.has(member.source)) this.#partial.add(frame.source);
    }
  }

  #tellCircle(stack: readonly Frame[], closing: Source): void {
    const sources = stack.map(({ source }) => source);
    const circle = sources.slice(sources.indexOf(closing));
    if (circle.length > 1) for (const source of circle.slice(1)) this.#partial.add(source);
    if (circle.every(({ madeOf }) => madeOf !== undefined)) this.circles.push(circle);
  }

  #frame(source: Source): Frame {
    return { source, members: this.#membersOf(source), next: 0 };
  }

  /** As stated, else everything that is fed to its node. */
  #membersOf(source: Source): readonly Member[] {
    const node = source.from?.owner;
    const arrivals = node?.kind === 'node' ? this.#scene.arrivalsAt(node) : none;
    if (source.madeOf) {
      return source.madeOf.flatMap((member): Member[] => {
        const brought = arrivals.filter(({ feed, routes }) => feed.source === member && routes.length > 0);
        if (brought.length === 0) return [{ source: member, delivery: undefined }];
        return brought.map((delivery) => ({ source: member, delivery }));
      });
    }
    if (arrivals.length === 0) return none;
    return arrivals.flatMap((delivery) =>
      delivery.feed.source && delivery.routes.length > 0 ? { source: delivery.feed.source, delivery } : [],
    );
  }

  #combine({ source, members }: Frame, known: Lookup, onTheWay: ReadonlySet<Source>): Beginning {
    const owner = source.from?.owner;
    const node = owner?.kind === 'node' && !source.sendsByItself ? owner : undefined;
    let slowest: Ingredient | undefined;
    let unknown = false;
    for (const { source: member, delivery } of members) {
      if (onTheWay.has(member)) continue;
      const age = known(member)?.delay_s;
      const arrives_s = delivery ? this.#scene.arrival_s(delivery, age) : age;
      const stated = node?.kit?.delay;
      const node_s = stated ? durationIn_s(stated, this.#scene.rateOf(member, delivery)) : 0;
      if (arrives_s === undefined || node_s === undefined) unknown = true;
      else if (slowest === undefined || arrives_s + node_s > slowest.arrives_s + slowest.node_s) {
        slowest = { source: member, delivery, arrives_s, node, node_s };
      }
    }
    const own_s = source.delay ? durationIn_s(source.delay, this.#scene.rateOf(source, undefined)) : 0;
    const made_s = slowest ? slowest.arrives_s + slowest.node_s : 0;
    const delay_s = unknown || own_s === undefined ? undefined : made_s + own_s;
    return { source, delay_s, own_s, slowest };
  }
}

/** A plan with more circles than this is broken; the first answer stands for the rest. */
const MOST_FRESH_RUNS = 200;

const none: readonly never[] = [];
const noSources: ReadonlySet<Source> = new Set();
