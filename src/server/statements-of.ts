/** What the statements of a plan make in its analysis, looked up once and kept as long as the analysis is. */
import type {
  Analysis,
  Delivery,
  Feed,
  Kit,
  Link,
  Node,
  Owner,
  Segment,
  Situation,
} from '../analysis/model.ts';
import type { Statement } from '../plan/plan.ts';

/** Each is put together when it is first asked for: a keystroke makes a new one, and most answers need one or two. */
class Index {
  readonly #analysis: Analysis;
  #links: ReadonlyMap<Statement, Link> | undefined;
  #feeds: ReadonlyMap<Statement, readonly Feed[]> | undefined;
  #deliveries: ReadonlyMap<Feed, readonly Delivery[]> | undefined;
  #through: ReadonlyMap<Node, readonly Delivery[]> | undefined;
  #over: ReadonlyMap<Link, readonly Delivery[]> | undefined;
  #ofKit: ReadonlyMap<Kit, readonly Owner[]> | undefined;
  #situations: ReadonlyMap<Segment | undefined, Situation> | undefined;

  constructor(analysis: Analysis) {
    this.#analysis = analysis;
  }

  /** The cable of a link, a source or a destination. */
  get links(): ReadonlyMap<Statement, Link> {
    this.#links ??= new Map(this.#analysis.links.map((link) => [link.statement, link]));
    return this.#links;
  }

  get feeds(): ReadonlyMap<Statement, readonly Feed[]> {
    this.#feeds ??= grouped(this.#analysis.feeds, (feed) => [feed.statement]);
    return this.#feeds;
  }

  get deliveries(): ReadonlyMap<Feed, readonly Delivery[]> {
    this.#deliveries ??= grouped(this.#analysis.deliveries, ({ feed }) => [feed]);
    return this.#deliveries;
  }

  /** Deliveries that go through a node, the network port by which it enters or leaves included. */
  get through(): ReadonlyMap<Node, readonly Delivery[]> {
    this.#through ??= grouped(this.#analysis.deliveries, nodesOf);
    return this.#through;
  }

  /** Deliveries that go over a link. */
  get over(): ReadonlyMap<Link, readonly Delivery[]> {
    this.#over ??= grouped(this.#analysis.deliveries, linksOf);
    return this.#over;
  }

  /** What is of a kit: nodes, sources, destinations. */
  get ofKit(): ReadonlyMap<Kit, readonly Owner[]> {
    this.#ofKit ??= grouped(owners(this.#analysis), ({ kit }) => (kit ? [kit] : []));
    return this.#ofKit;
  }

  get situations(): ReadonlyMap<Segment | undefined, Situation> {
    this.#situations ??= new Map(
      this.#analysis.situations.map((situation) => [situation.segment, situation]),
    );
    return this.#situations;
  }
}

const indexes = new WeakMap<Analysis, Index>();

export function indexOf(analysis: Analysis): Index {
  let index = indexes.get(analysis);
  if (!index) {
    index = new Index(analysis);
    indexes.set(analysis, index);
  }
  return index;
}

function* owners({ nodes, sources, destinations }: Analysis): Generator<Owner> {
  yield* nodes.values();
  yield* sources.values();
  yield* destinations.values();
}

function linksOf({ routes }: Delivery): Set<Link> {
  return new Set(routes.flatMap(({ steps }) => steps.map(({ link }) => link)));
}

function nodesOf({ routes }: Delivery): Set<Node> {
  const nodes = new Set<Node>();
  for (const { ports } of routes) {
    for (const { owner } of ports) if (owner.kind === 'node') nodes.add(owner);
  }
  return nodes;
}

function grouped<T, K>(items: Iterable<T>, keysOf: (item: T) => Iterable<K>): Map<K, T[]> {
  const groups = new Map<K, T[]>();
  for (const item of items) {
    for (const key of keysOf(item)) {
      const group = groups.get(key);
      if (group) group.push(item);
      else groups.set(key, [item]);
    }
  }
  return groups;
}
