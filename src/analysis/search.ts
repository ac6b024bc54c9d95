/**
 * Searches the shortest way through the plant for one picture.
 *
 * From both ends at the same time, always on the side that has fewer edges to follow next: a picture between two boxes
 * at a switch of a thousand ports meets itself at the switch after a dozen steps. Nothing is cleared between searches;
 * what an earlier one left behind is told by its number.
 */
import { DetourSearch } from './detours.ts';
import type { Graph } from './graph.ts';
import type { Islands } from './islands.ts';

/** A way: the vertices without hubs, and the cables between every second pair of them. */
export interface Way {
  readonly vertices: readonly number[];
  /** Links by index. */
  readonly links: readonly number[];
  /** Where several ways were equally short: the vertex before the choice, the link taken, those not taken. */
  readonly ties: readonly {
    readonly vertex: number;
    readonly chosen: number;
    readonly others: readonly number[];
  }[];
}

/** What stands in the way of a picture, besides missing cables. */
export interface Obstacles {
  /** By link: above 0 when it is out of use (a standby, lost, kept apart for the other copy). */
  readonly linkOff: Uint8Array;
  /** By spot: the source whose picture is there, -1 for none. */
  readonly pictureAt: Int32Array;
}

/** Any picture passes: nobody's spot counts. */
export const NO_PICTURE = -2;

/** Lists of edges that were followed, one list a vertex. */
class ArcLists {
  #vertex = new Int32Array(1024);
  #link = new Int32Array(1024);
  #next = new Int32Array(1024);
  #count = 0;

  clear(): void {
    this.#count = 0;
  }

  /** Puts an edge before those of a list; returns the list's new head. */
  add(head: number, vertex: number, link: number): number {
    if (this.#count === this.#vertex.length) this.#grow();
    const at = this.#count++;
    this.#vertex[at] = vertex;
    this.#link[at] = link;
    this.#next[at] = head;
    return at;
  }

  vertex(arc: number): number {
    return this.#vertex[arc]!;
  }

  link(arc: number): number {
    return this.#link[arc]!;
  }

  next(arc: number): number {
    return this.#next[arc]!;
  }

  #grow(): void {
    this.#vertex = doubled(this.#vertex);
    this.#link = doubled(this.#link);
    this.#next = doubled(this.#next);
  }
}

function doubled(array: Int32Array): Int32Array<ArrayBuffer> {
  const larger = new Int32Array(array.length * 2);
  larger.set(array);
  return larger;
}

/** What one of the two searches knows: the vertices it reached, how far they are, over which edges. */
class Side {
  readonly seen: Int32Array;
  readonly distance: Int32Array;
  /** Heads of the lists of edges by which a vertex was reached on a shortest way. */
  readonly arcs: Int32Array;
  frontier: number[] = [];
  next: number[] = [];
  depth = 0;
  /** Edges that the next round follows. */
  effort = 0;

  constructor(vertexCount: number) {
    this.seen = new Int32Array(vertexCount);
    this.distance = new Int32Array(vertexCount);
    this.arcs = new Int32Array(vertexCount);
  }
}

export class RouteSearch {
  /** Vertices reached in all searches so far; what a search costs. */
  visited = 0;
  /** Another picture stood in the way; set here, cleared by whoever asks. */
  wasBlocked = false;
  /** Made once a search has failed. */
  #islands: Islands | undefined;
  readonly #makeIslands: () => Islands;
  readonly #graph: Graph;
  readonly #obstacles: Obstacles;
  readonly #start: Side;
  readonly #end: Side;
  readonly #arcs = new ArcLists();
  /** By vertex: the edges onward that lie on a shortest way, as lists. */
  readonly #onward: Int32Array;
  readonly #marked: Int32Array;
  readonly #dead: Int32Array;
  #detours: DetourSearch | undefined;
  #round = 0;
  #picture = NO_PICTURE;
  #meetings: number[] = [];
  #length = 0;

  constructor(graph: Graph, obstacles: Obstacles, makeIslands: () => Islands) {
    this.#graph = graph;
    this.#obstacles = obstacles;
    this.#makeIslands = makeIslands;
    this.#start = new Side(graph.vertexCount);
    this.#end = new Side(graph.vertexCount);
    this.#onward = new Int32Array(graph.vertexCount);
    this.#marked = new Int32Array(graph.vertexCount);
    this.#dead = new Int32Array(graph.vertexCount);
  }

  /**
   * The way with the fewest cables from one of `starts` to one of `ends`; of equally short ones the first by order of
   * statements of its links, from the start on.
   *
   * @param picture The source whose picture it is: spots of others are in its way. `NO_PICTURE`: none is.
   */
  find(starts: readonly number[], ends: readonly number[], picture: number): Way | undefined {
    if (this.#islands && !this.#onOneIsland(this.#islands, starts, ends)) return undefined;
    this.#begin(picture);
    for (const vertex of starts) this.#enter(this.#start, vertex, this.#graph.outStart);
    for (const vertex of ends) this.#enter(this.#end, vertex, this.#graph.inStart);
    for (const vertex of this.#start.frontier)
      if (this.#end.seen[vertex] === this.#round) this.#meetings.push(vertex);
    if (this.#meetings.length === 0 && !this.#meet()) {
      this.#islands ??= this.#makeIslands();
      return undefined;
    }
    this.#mark();
    // Where only a switch's way back would do, a slower search finds the way around, if there is one.
    return this.#walk(starts) ?? this.#findAround(starts, new Set(ends));
  }

  #onOneIsland(islands: Islands, starts: readonly number[], ends: readonly number[]): boolean {
    const { portOf } = this.#graph;
    return starts.some((start) => {
      const island = islands.of(portOf[start]!);
      return ends.some((end) => islands.of(portOf[end]!) === island);
    });
  }

  #begin(picture: number): void {
    this.#round++;
    this.#picture = picture;
    this.#meetings = [];
    this.#arcs.clear();
    for (const side of [this.#start, this.#end]) {
      side.frontier.length = 0;
      side.next.length = 0;
      side.depth = 0;
      side.effort = 0;
    }
  }

  #enter(side: Side, vertex: number, degrees: Int32Array): void {
    if (side.seen[vertex] === this.#round || this.#isTaken(vertex)) return;
    side.seen[vertex] = this.#round;
    side.distance[vertex] = 0;
    side.arcs[vertex] = -1;
    side.frontier.push(vertex);
    side.effort += degrees[vertex + 1]! - degrees[vertex]!;
    this.visited++;
  }

  #isTaken(vertex: number): boolean {
    if (this.#picture === NO_PICTURE) return false;
    const spot = this.#graph.spotOf[vertex]!;
    if (spot < 0) return false;
    const there = this.#obstacles.pictureAt[spot]!;
    if (there < 0 || there === this.#picture) return false;
    this.wasBlocked = true;
    return true;
  }

  /** Spreads from both ends, round by round, until they meet. False when one side has nowhere left to go. */
  #meet(): boolean {
    const { outStart, outTo, outLink, inStart, inFrom, inLink } = this.#graph;
    while (this.#start.frontier.length > 0 && this.#end.frontier.length > 0) {
      if (this.#start.effort <= this.#end.effort) {
        this.#spread(this.#start, this.#end, outStart, outTo, outLink);
      } else {
        this.#spread(this.#end, this.#start, inStart, inFrom, inLink);
      }
      if (this.#meetings.length > 0) return true;
    }
    return false;
  }

  #spread(side: Side, other: Side, starts: Int32Array, ends: Int32Array, links: Int32Array): void {
    const { frontier, next, seen, distance, arcs } = side;
    const { linkOff } = this.#obstacles;
    const depth = ++side.depth;
    const round = this.#round;
    let effort = 0;
    for (let i = 0; i < frontier.length; i++) {
      const vertex = frontier[i]!;
      for (let edge = starts[vertex]!, stop = starts[vertex + 1]!; edge < stop; edge++) {
        const link = links[edge]!;
        if (link >= 0 && linkOff[link]! > 0) continue;
        const to = ends[edge]!;
        if (seen[to] !== round) {
          if (this.#isTaken(to)) continue;
          seen[to] = round;
          distance[to] = depth;
          arcs[to] = -1;
          next.push(to);
          effort += starts[to + 1]! - starts[to]!;
          this.visited++;
          if (other.seen[to] === round) this.#meetings.push(to);
        } else if (distance[to] !== depth) continue;
        arcs[to] = this.#arcs.add(arcs[to]!, vertex, link);
      }
    }
    side.frontier = next;
    side.next = frontier;
    side.next.length = 0;
    side.effort = effort;
  }

  /** Keeps, of all edges followed, those that lie on a shortest way, turned so that they lead from start to end. */
  #mark(): void {
    const { distance: fromStart, arcs } = this.#start;
    const { distance: toEnd } = this.#end;
    this.#length = Number.MAX_SAFE_INTEGER;
    for (const vertex of this.#meetings) {
      this.#length = Math.min(this.#length, fromStart[vertex]! + toEnd[vertex]!);
    }
    const round = this.#round;
    const stack: number[] = [];
    for (const vertex of this.#meetings) {
      if (fromStart[vertex]! + toEnd[vertex]! > this.#length) continue;
      this.#marked[vertex] = round;
      this.#onward[vertex] = this.#end.arcs[vertex]!;
      stack.push(vertex);
    }
    for (let vertex = stack.pop(); vertex !== undefined; vertex = stack.pop()) {
      for (let arc = arcs[vertex]!; arc >= 0; arc = this.#arcs.next(arc)) {
        const before = this.#arcs.vertex(arc);
        if (this.#marked[before] !== round) {
          this.#marked[before] = round;
          this.#onward[before] = -1;
          stack.push(before);
        }
        this.#onward[before] = this.#arcs.add(this.#onward[before]!, vertex, this.#arcs.link(arc));
      }
    }
  }

  /** The head of the list of edges that lead on from a vertex of a shortest way. */
  #onwardFrom(vertex: number): number {
    return this.#marked[vertex] === this.#round ? this.#onward[vertex]! : this.#end.arcs[vertex]!;
  }

  /** Walks a shortest way, taking at each parting the first link by order of statements. */
  #walk(starts: readonly number[]): Way | undefined {
    const step = new Step(this.#graph, this.#arcs, this.#dead, this.#round, (vertex) =>
      this.#onwardFrom(vertex),
    );
    for (const start of starts) {
      if (this.#marked[start] !== this.#round) continue;
      const vertices: number[] = [start];
      const links: number[] = [];
      const ties: Way['ties'][number][] = [];
      while (vertices.length > 0) {
        const at = vertices[vertices.length - 1]!;
        if (this.#isEnd(at)) return { vertices, links, ties };
        if (step.choose(at)) {
          if (step.others.length > 0) ties.push({ vertex: at, chosen: step.link, others: step.others });
          if (step.leaving !== at) vertices.push(step.leaving);
          vertices.push(step.arriving);
          links.push(step.link);
          continue;
        }
        // From here only the way back would lead on: take the last cable back and look for another.
        this.#dead[at] = this.#round;
        vertices.pop();
        links.pop();
        if (vertices.length > 1) vertices.pop();
        while (ties.length > 0 && ties[ties.length - 1]!.vertex === vertices[vertices.length - 1]) ties.pop();
      }
    }
    return undefined;
  }

  #isEnd(vertex: number): boolean {
    return this.#end.seen[vertex] === this.#round && this.#end.distance[vertex] === 0;
  }

  /** A search that keeps a switch from sending back, for the seldom case that only such a way is short. */
  #findAround(starts: readonly number[], ends: ReadonlySet<number>): Way | undefined {
    const islands = this.#islands ?? this.#makeIslands();
    this.#islands = islands;
    if (!starts.some((start) => islands.hasRing(this.#graph.portOf[start]!))) return undefined;
    this.#detours ??= new DetourSearch(this.#graph, this.#obstacles.linkOff);
    const way = this.#detours.find(starts, ends, (vertex) => this.#isTaken(vertex));
    this.visited += this.#detours.visited;
    return way;
  }
}

/** The choice of the next cable: through every hub and out of every port that leads on, the first link. */
class Step {
  leaving = -1;
  arriving = -1;
  link = -1;
  others: readonly number[] = none;
  readonly #passedOver: number[] = [];
  readonly #graph: Graph;
  readonly #arcs: ArcLists;
  readonly #dead: Int32Array;
  readonly #round: number;
  readonly #onwardFrom: (vertex: number) => number;

  constructor(
    graph: Graph,
    arcs: ArcLists,
    dead: Int32Array,
    round: number,
    onwardFrom: (vertex: number) => number,
  ) {
    this.#graph = graph;
    this.#arcs = arcs;
    this.#dead = dead;
    this.#round = round;
    this.#onwardFrom = onwardFrom;
  }

  /** False when no cable leads on. */
  choose(at: number): boolean {
    this.link = -1;
    this.others = none;
    this.#passedOver.length = 0;
    const first = this.#onwardFrom(at);
    // At its start a way may stand at a leaving vertex; everywhere else hubs lie between.
    if (first >= 0 && this.#arcs.link(first) >= 0) this.#consider(at);
    else {
      const { portOf, forwards } = this.#graph;
      for (let hub = first; hub >= 0; hub = this.#arcs.next(hub)) {
        const through = this.#arcs.vertex(hub);
        const isSwitch = forwards[through] === 1;
        for (let out = this.#onwardFrom(through); out >= 0; out = this.#arcs.next(out)) {
          const leaving = this.#arcs.vertex(out);
          if (!isSwitch || portOf[leaving] !== portOf[at]) this.#consider(leaving);
        }
      }
    }
    if (this.#passedOver.length > 0) this.others = [...new Set(this.#passedOver)].sort((a, b) => a - b);
    return this.link >= 0;
  }

  #consider(leaving: number): void {
    for (let arc = this.#onwardFrom(leaving); arc >= 0; arc = this.#arcs.next(arc)) {
      const link = this.#arcs.link(arc);
      const arriving = this.#arcs.vertex(arc);
      if (this.#dead[arriving] === this.#round || link === this.link) continue;
      if (this.link >= 0) this.#passedOver.push(Math.max(link, this.link));
      if (this.link >= 0 && link > this.link) continue;
      this.leaving = leaving;
      this.arriving = arriving;
      this.link = link;
    }
  }
}

const none: readonly number[] = [];
