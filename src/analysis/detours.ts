import type { Graph } from './graph.ts';
import type { Way } from './shortest-ways.ts';

/**
 * A detour is looked for so far and no further: back to where a picture came from, round through other switches. Nobody
 * plans such a way on purpose, and most of the time the search only shows that there is none.
 */
const MOST_VISITED = 2000;

/**
 * Searches from the start alone and keeps every switch from sending a picture back out of the port it came in by. A
 * switch is entered a second time by another port, and then only the port that was left out the first time is new; so a
 * vertex has a second number, behind all others, for that.
 */
export class DetourSearch {
  /** Vertices reached in the last search. */
  visited = 0;
  readonly #graph: Graph;
  readonly #linkOff: Uint8Array;
  readonly #seen: Int32Array;
  readonly #from: Int32Array;
  readonly #by: Int32Array;
  #round = 0;

  constructor(graph: Graph, linkOff: Uint8Array) {
    this.#graph = graph;
    this.#linkOff = linkOff;
    this.#seen = new Int32Array(graph.vertexCount * 2);
    this.#from = new Int32Array(graph.vertexCount * 2);
    this.#by = new Int32Array(graph.vertexCount * 2);
  }

  find(
    starts: readonly number[],
    ends: ReadonlySet<number>,
    isTaken: (vertex: number) => boolean,
  ): Way | undefined {
    const { vertexCount, outStart, outTo, outLink, portOf, forwards } = this.#graph;
    const queue: number[] = [];
    this.#round++;
    for (const start of starts) this.#reach(queue, start, -1, -1, isTaken);
    for (let i = 0; i < queue.length && queue.length < MOST_VISITED; i++) {
      const state = queue[i]!;
      const vertex = state % vertexCount;
      if (ends.has(vertex)) return this.#wayTo(state, queue.length);
      const isSwitch = forwards[vertex] === 1;
      const entered = isSwitch ? portOf[this.#from[state]! % vertexCount]! : -1;
      const leftOut = state >= vertexCount ? portOf[this.#from[vertex]! % vertexCount]! : -1;
      for (let edge = outStart[vertex]!; edge < outStart[vertex + 1]!; edge++) {
        const link = outLink[edge]!;
        const to = outTo[edge]!;
        if (link >= 0 && this.#linkOff[link]! > 0) continue;
        if (entered >= 0 && portOf[to] === entered) continue;
        if (leftOut >= 0 && portOf[to] !== leftOut) continue;
        this.#reach(queue, this.#isSecondEntry(vertex, to) ? to + vertexCount : to, state, link, isTaken);
      }
    }
    this.visited = queue.length;
    return undefined;
  }

  /** A switch that was entered before, by another port. */
  #isSecondEntry(vertex: number, hub: number): boolean {
    const { forwards, portOf, vertexCount } = this.#graph;
    if (forwards[hub] !== 1 || this.#seen[hub] !== this.#round) return false;
    return portOf[this.#from[hub]! % vertexCount] !== portOf[vertex];
  }

  #reach(
    queue: number[],
    state: number,
    from: number,
    link: number,
    isTaken: (vertex: number) => boolean,
  ): void {
    if (this.#seen[state] === this.#round || isTaken(state % this.#graph.vertexCount)) return;
    this.#seen[state] = this.#round;
    this.#from[state] = from;
    this.#by[state] = link;
    queue.push(state);
  }

  #wayTo(end: number, visited: number): Way {
    const { vertexCount, portOf } = this.#graph;
    const vertices: number[] = [];
    const links: number[] = [];
    for (let state = end; state >= 0; state = this.#from[state]!) {
      const vertex = state % vertexCount;
      if (portOf[vertex]! >= 0) vertices.push(vertex);
      if (this.#by[state]! >= 0) links.push(this.#by[state]!);
    }
    this.visited = visited;
    return { vertices: vertices.reverse(), links: links.reverse(), ties: [] };
  }
}
