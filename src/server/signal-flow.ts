/** From box to box along the ways of the pictures. */
import type { Analysis, Delivery, Destination, Link, Node, Route, Source } from '../analysis/model.ts';
import { indexOf } from './statements-of.ts';

/** What a picture passes: where it begins, a box, where it is watched. */
export type Station = Source | Node | Destination;

/** A step from one station to the next, with everything that takes it. */
export interface Hop {
  readonly to: Station;
  readonly deliveries: readonly Delivery[];
  readonly links: ReadonlySet<Link>;
}

/**
 * The stations that pictures go to next from this one.
 *
 * @param feeds Only these, as they are written; all when undefined.
 */
export function hopsFrom(analysis: Analysis, station: Station, feeds?: ReadonlySet<string>): Hop[] {
  const hops = new Hops();
  for (const delivery of deliveriesAt(analysis, station, feeds)) {
    for (const route of delivery.routes) {
      const stations = stationsOf(delivery, route);
      stations.forEach((one, i) => {
        const next = stations[i + 1];
        if (one.station === station && next) hops.add(next.station, [delivery], next.links);
      });
    }
  }
  // What is mixed in a box goes on as a picture of its own.
  for (const { mixed, of } of mixes(analysis, station)) {
    const taken = of.filter(({ feed }) => !feeds || feeds.has(feed.name));
    if (taken.length > 0 || !feeds) hops.add(mixed, taken, []);
  }
  return hops.all();
}

/** The stations that pictures come from into this one. */
export function hopsInto(analysis: Analysis, station: Station, feeds?: ReadonlySet<string>): Hop[] {
  const hops = new Hops();
  for (const delivery of deliveriesAt(analysis, station, feeds)) {
    for (const route of delivery.routes) {
      const stations = stationsOf(delivery, route);
      stations.forEach((one, i) => {
        const previous = stations[i - 1];
        if (one.station === station && previous) hops.add(previous.station, [delivery], one.links);
      });
    }
  }
  if (station.kind === 'source' && station.from?.owner.kind === 'node') {
    const node = station.from.owner;
    const parts = station.madeOf;
    const of = fedTo(analysis, node).filter(
      ({ feed }) => !parts || (feed.source && parts.includes(feed.source)),
    );
    hops.add(node, of, []);
  }
  return hops.all();
}

class Hops {
  readonly #hops = new Map<Station, { deliveries: Set<Delivery>; links: Set<Link> }>();

  add(to: Station, deliveries: Iterable<Delivery>, links: Iterable<Link>): void {
    let hop = this.#hops.get(to);
    if (!hop) {
      hop = { deliveries: new Set(), links: new Set() };
      this.#hops.set(to, hop);
    }
    for (const delivery of deliveries) hop.deliveries.add(delivery);
    for (const link of links) hop.links.add(link);
  }

  all(): Hop[] {
    return [...this.#hops].map(([to, { deliveries, links }]) => ({ to, deliveries: [...deliveries], links }));
  }
}

function deliveriesAt(
  analysis: Analysis,
  station: Station,
  feeds: ReadonlySet<string> | undefined,
): readonly Delivery[] {
  const all =
    station.kind === 'node'
      ? (indexOf(analysis).through.get(station) ?? [])
      : analysis.deliveries.filter(({ feed }) => feed.source === station || feed.target === station);
  return feeds ? all.filter(({ feed }) => feeds.has(feed.name)) : all;
}

/**
 * The stations of a route in order, each with the cables by which it is reached. A picture that comes out of a box
 * begins as a source of its own, not as the box.
 */
function stationsOf({ feed }: Delivery, { ports, steps }: Route): { station: Station; links: Link[] }[] {
  const stations: { station: Station; links: Link[] }[] = [];
  let step = 0;
  for (const { owner } of ports) {
    if (stations.at(-1)?.station === owner) continue;
    const link = stations.length === 0 ? undefined : steps[step++]?.link;
    stations.push({ station: owner, links: link ? [link] : [] });
  }
  if (feed.source && stations[0]) stations[0] = { station: feed.source, links: [] };
  return stations;
}

/** Sources that come out of a box and are made of what is fed to it. */
function mixes(analysis: Analysis, station: Station): { mixed: Source; of: Delivery[] }[] {
  if (station.kind !== 'node') return [];
  const fed = fedTo(analysis, station);
  return [...analysis.sources.values()]
    .filter(({ from }) => from?.owner === station)
    .map((mixed) => ({
      mixed,
      of: fed.filter(
        ({ feed }) => !mixed.madeOf || (feed.source !== undefined && mixed.madeOf.includes(feed.source)),
      ),
    }));
}

/** Pictures that end at an input of a box. */
function fedTo(analysis: Analysis, node: Node): Delivery[] {
  return analysis.deliveries.filter(
    ({ feed }) => feed.target && 'owner' in feed.target && feed.target.owner === node,
  );
}
