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

interface Index {
  /** The cable of a link, a source or a destination. */
  readonly links: ReadonlyMap<Statement, Link>;
  readonly feeds: ReadonlyMap<Statement, readonly Feed[]>;
  readonly deliveries: ReadonlyMap<Feed, readonly Delivery[]>;
  /** Deliveries that go through a node, the network port by which it enters or leaves included. */
  readonly through: ReadonlyMap<Node, readonly Delivery[]>;
  /** Deliveries that go over a link. */
  readonly over: ReadonlyMap<Link, readonly Delivery[]>;
  /** What is of a kit: nodes, sources, destinations. */
  readonly ofKit: ReadonlyMap<Kit, readonly Owner[]>;
  readonly situations: ReadonlyMap<Segment | undefined, Situation>;
}

const indexes = new WeakMap<Analysis, Index>();

export function indexOf(analysis: Analysis): Index {
  let index = indexes.get(analysis);
  if (!index) {
    index = {
      links: new Map(analysis.links.map((link) => [link.statement, link])),
      feeds: grouped(analysis.feeds, (feed) => [feed.statement]),
      deliveries: grouped(analysis.deliveries, ({ feed }) => [feed]),
      through: grouped(analysis.deliveries, nodesOf),
      over: grouped(analysis.deliveries, linksOf),
      ofKit: grouped(owners(analysis), ({ kit }) => (kit ? [kit] : [])),
      situations: new Map(analysis.situations.map((situation) => [situation.segment, situation])),
    };
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
