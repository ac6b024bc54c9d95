import { carriageOf, type Graph, graphOf, spotsOf } from './graph.ts';
import { Islands } from './islands.ts';
import type { Carried, Delivery, Feed, Link, Plant, Port, Route, Source, Step, Target } from './model.ts';
import { findApart } from './seamless.ts';
import { NO_PICTURE, RouteSearch } from './search.ts';
import type { Way } from './shortest-ways.ts';

/** What a search for one feed came to. */
export interface Found {
  readonly ways: readonly Way[];
  /** Another picture's spot that is on the way: the only thing that stops it. */
  readonly taken: Port | undefined;
  /** The `via` port that cannot be met. */
  readonly missedVia: Port | undefined;
  /** The network links that both copies of a seamless feed take. */
  readonly sharedLinks: readonly Link[];
}

/**
 * Finds the ways of feeds through one plant, in one situation after the other: which links are out of use and which
 * spots hold a picture is its state, everything else stays.
 */
export class Router {
  readonly graph: Graph;
  readonly search: RouteSearch;
  /** By link: above 0 when it is out of use. */
  readonly linkOff: Uint8Array;
  /** By spot: the source whose picture is there, -1 for none; and how many deliveries hold it there. */
  readonly pictureAt: Int32Array;
  readonly #holders: Int32Array;
  /** By spot: the delivery that came first, -1 when it is gone. */
  readonly #firstAt: Int32Array;
  readonly #plant: Plant;
  readonly #usual: Carried;
  /** By delivery: the spots that its picture takes. */
  readonly #spots = new WeakMap<Delivery, readonly number[]>();
  readonly #starts: (readonly number[])[] = [];
  #undo: number[] | undefined;

  /** @param graph The graph of the plant, when it is there already. */
  constructor(plant: Plant, usual: Carried, graph: Graph = graphOf(plant, usual)) {
    this.#plant = plant;
    this.#usual = usual;
    this.graph = graph;
    this.linkOff = new Uint8Array(plant.links.length);
    for (const link of plant.links) if (link.standbyFor) this.linkOff[link.index] = 1;
    this.pictureAt = new Int32Array(spotsOf(plant.ports.length)).fill(-1);
    this.#holders = new Int32Array(this.pictureAt.length);
    this.#firstAt = new Int32Array(this.pictureAt.length).fill(-1);
    this.search = new RouteSearch(this.graph, this, () => new Islands(plant));
  }

  /** Takes every picture off. */
  clear(): void {
    this.pictureAt.fill(-1);
    this.#holders.fill(0);
    this.#firstAt.fill(-1);
  }

  /** Where a source's picture begins: the vertices that leave its connector or the output it comes out of. */
  startsOf(source: Source): readonly number[] {
    let starts = this.#starts[source.index];
    if (!starts) {
      starts = [source.port, source.from].flatMap((port) => this.#startAt(source, port));
      this.#starts[source.index] = starts;
    }
    return starts;
  }

  /** Where a target is watched: the vertices that arrive at it. */
  endsOf(target: Target): readonly number[] {
    const port = 'takes' in target ? target.port : target;
    const first = port === undefined || port.index < 0 ? -1 : this.graph.arriving[port.index]!;
    if (port === undefined || first < 0) return nowhere;
    if ('takes' in target) {
      if (port.role !== 'network') return [first];
      const kind = target.kit?.carries;
      if (kind) return [first + this.graph.planeOf[kind.index]!];
      return Array.from({ length: this.graph.planeCount }, (_, plane) => first + plane);
    }
    return port.role === 'input' ? [first] : nowhere;
  }

  /** The ways of a feed as things stand, two for a seamless one. */
  find(feed: Feed, source: Source, starts: readonly number[], ends: readonly number[]): Found {
    this.search.wasBlocked = false;
    this.search.wentAround = false;
    const free = this.#findVia(starts, ends, feed.via, source.index);
    if (typeof free !== 'number') return this.#withCopy(feed, source, starts, ends, free);
    if (!this.search.wasBlocked) {
      return { ways: noWays, taken: undefined, missedVia: feed.via[free], sharedLinks: noLinks };
    }
    const through = this.#findVia(starts, ends, feed.via, NO_PICTURE);
    if (typeof through === 'number') {
      return { ways: noWays, taken: undefined, missedVia: feed.via[through], sharedLinks: noLinks };
    }
    const taken = through.vertices.find((vertex) => this.#holdsOther(vertex, source));
    const port = taken === undefined ? undefined : this.#portOf(taken);
    return { ways: [through], taken: port, missedVia: undefined, sharedLinks: noLinks };
  }

  /** The way as the model tells it. */
  routeOf(way: Way): Route {
    // Lists of just the right size: there are thousands of them.
    const ports = new Array<Port>(way.vertices.length);
    for (let i = 0; i < ports.length; i++) ports[i] = this.#portOf(way.vertices[i]!);
    const steps = new Array<Step>(way.links.length);
    for (let i = 0; i < steps.length; i++) {
      const link = this.#plant.links[way.links[i]!]!;
      steps[i] = { link, forward: link.from.port === ports[2 * i], flow: undefined, format: undefined };
    }
    return { ports, steps };
  }

  /** Holds the spots along a delivery's routes for its picture; those that another picture has stay with it. */
  occupy(delivery: Delivery): void {
    const picture = delivery.feed.source?.index ?? -1;
    for (const spot of this.#spotsOf(delivery)) {
      const there = this.pictureAt[spot]!;
      if (there < 0) this.#change(spot, picture, 1, delivery.index);
      else if (there === picture) this.#change(spot, picture, this.#holders[spot]! + 1, this.#firstAt[spot]!);
    }
  }

  /** Whether a delivery's picture takes any of some spots. */
  takesAny(delivery: Delivery, spots: ReadonlySet<number>): boolean {
    return this.#spotsOf(delivery).some((spot) => spots.has(spot));
  }

  addSpotsOf(delivery: Delivery, spots: Set<number>): void {
    for (const spot of this.#spotsOf(delivery)) spots.add(spot);
  }

  /** Gives the spots of a delivery free again. */
  vacate(delivery: Delivery): void {
    const picture = delivery.feed.source?.index ?? -1;
    for (const spot of this.#spotsOf(delivery)) {
      if (this.pictureAt[spot] !== picture) continue;
      const left = this.#holders[spot]! - 1;
      const first = this.#firstAt[spot] === delivery.index ? -1 : this.#firstAt[spot]!;
      this.#change(spot, left > 0 ? picture : -1, left, first);
    }
  }

  /** The delivery of another source that holds a port; undefined when it is not known which. */
  holderOf(port: Port, source: Source): { readonly source: number; readonly delivery: number } | undefined {
    for (const spot of [port.index * 2, port.index * 2 + 1]) {
      const there = this.pictureAt[spot]!;
      if (there >= 0 && there !== source.index) return { source: there, delivery: this.#firstAt[spot]! };
    }
    return undefined;
  }

  /** Does some work in which links are out of use (or standbys in use), and puts everything back as it was. */
  during<T>(off: Iterable<Link>, on: Iterable<Link>, work: () => T): T {
    const leave = this.enter(off, on);
    try {
      return work();
    } finally {
      leave();
    }
  }

  /** Takes links out of use and standbys into use; what is returned puts everything back, pictures too. */
  enter(off: Iterable<Link>, on: Iterable<Link>): () => void {
    const before: [link: number, off: number][] = [];
    const set = (link: Link, value: number) => {
      before.push([link.index, this.linkOff[link.index]!]);
      this.linkOff[link.index] = value;
    };
    for (const link of on) set(link, 0);
    for (const link of off) set(link, 1);
    const outer = this.#undo;
    const undo: number[] = [];
    this.#undo = undo;
    return () => {
      this.#undo = outer;
      for (let i = undo.length - 4; i >= 0; i -= 4) {
        const spot = undo[i]!;
        this.pictureAt[spot] = undo[i + 1]!;
        this.#holders[spot] = undo[i + 2]!;
        this.#firstAt[spot] = undo[i + 3]!;
      }
      for (const [link, value] of before.reverse()) this.linkOff[link] = value;
    };
  }

  #startAt(source: Source, port: Port | undefined): number[] {
    const first = port === undefined || port.index < 0 ? -1 : this.graph.leaving[port.index]!;
    if (port === undefined || first < 0) return [];
    if (port.role !== 'network') return [first];
    return [first + Math.max(0, this.graph.planeOf[carriageOf(source, this.#usual).index]!)];
  }

  /** The way through all `via` ports in their order; else the number of the first that is not met. */
  #findVia(
    starts: readonly number[],
    ends: readonly number[],
    via: readonly Port[],
    picture: number,
  ): Way | number {
    const straight = this.search.find(starts, ends, picture);
    if (straight === undefined) return -1;
    if (via.length === 0) return straight;
    let sofar: Way[] = starts.map((start) => ({ vertices: [start], links: [], ties: [] }));
    for (const [i, port] of via.entries()) {
      const next = this.stopsAt(port).flatMap((stop) => this.#shortest(sofar, [stop], picture) ?? []);
      if (next.length === 0) return i;
      sofar = next;
    }
    const whole = this.#shortest(sofar, ends, picture);
    if (whole === undefined || repeatsItself(whole)) return via.length - 1;
    const missed = firstMissed(this.routeOf(whole).ports, via);
    return missed < 0 ? whole : missed;
  }

  /** The shortest of several begun ways that goes on to one of `ends`. */
  #shortest(begun: readonly Way[], ends: readonly number[], picture: number): Way | undefined {
    let best: Way | undefined;
    for (const way of begun) {
      const at = way.vertices[way.vertices.length - 1]!;
      const leg = ends.includes(at) ? standing(at) : this.search.find([at], ends, picture);
      if (leg === undefined) continue;
      if (best && way.links.length + leg.links.length >= best.links.length) continue;
      best = joined(way, leg);
    }
    return best;
  }

  /** The vertices that show that a picture passes a port: it arrives there, or at the far end of its cable. */
  stopsAt(port: Port): number[] {
    if (port.index < 0) return [];
    const { arriving, leaving, onNetwork, planeCount, outStart, outTo, outLink } = this.graph;
    const planes = onNetwork[port.index] === 1 ? planeCount : 1;
    const stops: number[] = [];
    for (let plane = 0; plane < planes; plane++) {
      if (arriving[port.index]! >= 0) stops.push(arriving[port.index]! + plane);
      const out = leaving[port.index]! + plane;
      if (out < plane) continue;
      for (let edge = outStart[out]!; edge < outStart[out + 1]!; edge++) {
        if (this.linkOff[outLink[edge]!] === 0) stops.push(outTo[edge]!);
      }
    }
    return stops;
  }

  /** Adds the second copy of a seamless feed, which shares no network link with the first where that can be. */
  #withCopy(feed: Feed, source: Source, starts: readonly number[], ends: readonly number[], way: Way): Found {
    if (!feed.seamless) return { ways: [way], taken: undefined, missedVia: undefined, sharedLinks: noLinks };
    const pair = findApart(this, way, starts, ends, source.index, (link) => this.#plant.links[link]!.network);
    const sharedLinks = pair.shared.map((link) => this.#plant.links[link]!);
    return { ways: pair.ways, taken: undefined, missedVia: undefined, sharedLinks };
  }

  #holdsOther(vertex: number, source: Source): boolean {
    const spot = this.graph.spotOf[vertex]!;
    if (spot < 0) return false;
    const there = this.pictureAt[spot]!;
    return there >= 0 && there !== source.index;
  }

  #portOf(vertex: number): Port {
    return this.#plant.ports[this.graph.portOf[vertex]!]!;
  }

  #spotsOf(delivery: Delivery): readonly number[] {
    let spots = this.#spots.get(delivery);
    if (!spots) {
      spots = spotsOn(delivery);
      this.#spots.set(delivery, spots);
    }
    return spots;
  }

  #change(spot: number, picture: number, holders: number, first: number): void {
    this.#undo?.push(spot, this.pictureAt[spot]!, this.#holders[spot]!, this.#firstAt[spot]!);
    this.pictureAt[spot] = picture;
    this.#holders[spot] = holders;
    this.#firstAt[spot] = first;
  }
}

const nowhere: readonly number[] = [];
const noWays: readonly Way[] = [];
const noLinks: readonly Link[] = [];

function spotsOn({ routes }: Delivery): number[] {
  const spots: number[] = [];
  for (const { steps } of routes) {
    for (const { link, forward } of steps) {
      const from = forward ? link.from.port! : link.to.port!;
      const to = forward ? link.to.port! : link.from.port!;
      if (from.owner.kind === 'node' && from.role === 'output') spots.push(from.index * 2 + 1);
      if (to.owner.kind === 'destination' || to.role === 'input') spots.push(to.index * 2);
    }
  }
  return spots;
}

function standing(vertex: number): Way {
  return { vertices: [vertex], links: [], ties: [] };
}

function joined(way: Way, leg: Way): Way {
  return {
    vertices: [...way.vertices, ...leg.vertices.slice(1)],
    links: [...way.links, ...leg.links],
    ties: [...way.ties, ...leg.ties],
  };
}

/**
 * The number of the first port that does not come behind those before it, or -1. Both ends of one cable stop the search
 * at the same place, so it cannot tell in which order they are met.
 */
function firstMissed(ports: readonly Port[], via: readonly Port[]): number {
  let from = 0;
  for (const [i, port] of via.entries()) {
    const at = ports.indexOf(port, from);
    if (at < 0) return i;
    from = at;
  }
  return -1;
}

/** A way that takes the same cable twice the same way round goes in a circle. */
function repeatsItself(way: Way): boolean {
  const leaving = way.vertices.filter((_, i) => i % 2 === 0);
  return new Set(leaving).size < leaving.length;
}
