/**
 * Searches the shortest way through the plant for one picture.
 *
 * From both ends at the same time, always on the side that has fewer edges to follow next: a picture between two boxes
 * at a switch of a thousand ports meets itself at the switch after a dozen steps. Nothing is cleared between searches;
 * what an earlier one left behind is told by its number.
 */
import { ArcLists } from './arc-lists.ts';
import { DetourSearch } from './detours.ts';
import type { Graph } from './graph.ts';
import type { Islands } from './islands.ts';
import { Side, Walker, type Way } from './shortest-ways.ts';

/** What stands in the way of a picture, besides missing cables. */
export interface Obstacles {
  /** By link: above 0 when it is out of use (a standby, lost, kept apart for the other copy). */
  readonly linkOff: Uint8Array;
  /** By spot: the source whose picture is there, -1 for none. */
  readonly pictureAt: Int32Array;
}

/** Any picture passes: nobody's spot counts. */
export const NO_PICTURE = -2;

export class RouteSearch {
  /** Vertices reached in all searches so far; what a search costs. */
  visited = 0;
  /** Another picture stood in the way; set here, cleared by whoever asks. */
  wasBlocked = false;
  /** A way was looked for that goes round where the shortest is none; set here, cleared by whoever asks. */
  wentAround = false;
  /** Made once a search has failed. */
  #islands: Islands | undefined;
  readonly #makeIslands: () => Islands;
  readonly #graph: Graph;
  readonly #obstacles: Obstacles;
  readonly #start: Side;
  readonly #end: Side;
  readonly #arcs = new ArcLists();
  readonly #walker: Walker;
  readonly #meetings: number[] = [];
  #detours: DetourSearch | undefined;
  #round = 0;
  #picture = NO_PICTURE;

  constructor(graph: Graph, obstacles: Obstacles, makeIslands: () => Islands) {
    this.#graph = graph;
    this.#obstacles = obstacles;
    this.#makeIslands = makeIslands;
    this.#start = new Side(graph.vertexCount);
    this.#end = new Side(graph.vertexCount);
    this.#walker = new Walker(graph, this.#start, this.#end, this.#arcs);
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
    this.#walker.mark(this.#meetings, this.#round);
    // Where only a switch's way back would do, a slower search finds the way around, if there is one.
    return this.#walker.walk(starts) ?? this.#findAround(starts, new Set(ends));
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
    this.#meetings.length = 0;
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

  /** A search that keeps a switch from sending back, for the seldom case that only such a way is short. */
  #findAround(starts: readonly number[], ends: ReadonlySet<number>): Way | undefined {
    const islands = this.#islands ?? this.#makeIslands();
    this.#islands = islands;
    if (!starts.some((start) => islands.hasRing(this.#graph.portOf[start]!))) return undefined;
    this.wentAround = true;
    this.#detours ??= new DetourSearch(this.#graph, this.#obstacles.linkOff);
    const way = this.#detours.find(starts, ends, (vertex) => this.#isTaken(vertex));
    this.visited += this.#detours.visited;
    return way;
  }
}
