import type { ArcLists } from './arc-lists.ts';
import { nothing } from './building.ts';
import type { Graph } from './graph.ts';

/** Where several ways were equally short: the vertex before the choice, the link taken, those not taken. */
export interface WayTie {
  readonly vertex: number;
  readonly chosen: number;
  readonly others: readonly number[];
}

/** A way: the vertices without hubs, and the cables between every second pair of them. */
export interface Way {
  readonly vertices: readonly number[];
  /** Links by index. */
  readonly links: readonly number[];
  readonly ties: readonly WayTie[];
}

/** What one of the two searches knows: the vertices it reached, how far they are, over which edges. */
export class Side {
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

/**
 * Of all shortest ways that a search has found, walks the one that takes at each parting the first link by order of
 * statements.
 */
export class Walker {
  readonly #graph: Graph;
  readonly #start: Side;
  readonly #end: Side;
  readonly #arcs: ArcLists;
  /** By vertex: the edges onward that lie on a shortest way, as lists. */
  readonly #onward: Int32Array;
  readonly #marked: Int32Array;
  /** From here only the way back leads on. */
  readonly #dead: Int32Array;
  readonly #stack: number[] = [];
  #round = 0;
  /** The choice of the next cable: out of which vertex, to which, by which link, and the links not taken. */
  #leaving = -1;
  #arriving = -1;
  #link = -1;
  readonly #passedOver: Onward[] = [];

  constructor(graph: Graph, start: Side, end: Side, arcs: ArcLists) {
    this.#graph = graph;
    this.#start = start;
    this.#end = end;
    this.#arcs = arcs;
    this.#onward = new Int32Array(graph.vertexCount);
    this.#marked = new Int32Array(graph.vertexCount);
    this.#dead = new Int32Array(graph.vertexCount);
  }

  /** Keeps, of all edges followed, those that lie on a shortest way, turned so that they lead from start to end. */
  mark(meetings: readonly number[], round: number): void {
    const { distance: fromStart, arcs } = this.#start;
    const { distance: toEnd } = this.#end;
    const stack = this.#stack;
    this.#round = round;
    let length = Number.MAX_SAFE_INTEGER;
    for (const vertex of meetings) length = Math.min(length, fromStart[vertex]! + toEnd[vertex]!);
    for (const vertex of meetings) {
      if (fromStart[vertex]! + toEnd[vertex]! > length) continue;
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

  /** Undefined when every shortest way would make a switch send a picture back. */
  walk(starts: readonly number[]): Way | undefined {
    for (const start of starts) {
      const way = this.#marked[start] === this.#round ? this.#walkFrom(start) : undefined;
      if (way) return way;
    }
    return undefined;
  }

  #walkFrom(start: number): Way | undefined {
    const vertices: number[] = [start];
    const links: number[] = [];
    let partings: readonly Parting[] = nothing;
    while (vertices.length > 0) {
      const at = vertices[vertices.length - 1]!;
      if (this.#isEnd(at)) return { vertices, links, ties: this.#tiesAt(partings) };
      if (this.#choose(at)) {
        if (this.#passedOver.length > 0) {
          partings = [...partings, { vertex: at, chosen: this.#link, others: [...this.#passedOver] }];
        }
        if (this.#leaving !== at) vertices.push(this.#leaving);
        vertices.push(this.#arriving);
        links.push(this.#link);
        continue;
      }
      // Take the last cable back and look for another.
      this.#dead[at] = this.#round;
      vertices.pop();
      links.pop();
      if (vertices.length > 1) vertices.pop();
      const last = vertices[vertices.length - 1];
      partings = partings.filter(({ vertex }) => vertex !== last);
    }
    return undefined;
  }

  #isEnd(vertex: number): boolean {
    return this.#end.seen[vertex] === this.#round && this.#end.distance[vertex] === 0;
  }

  /** The head of the list of edges that lead on from a vertex of a shortest way. */
  #onwardFrom(vertex: number): number {
    return this.#marked[vertex] === this.#round ? this.#onward[vertex]! : this.#end.arcs[vertex]!;
  }

  /** Through every hub and out of every port that leads on, the first link. False when no cable leads on. */
  #choose(at: number): boolean {
    this.#link = -1;
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
    return this.#link >= 0;
  }

  #consider(leaving: number): void {
    for (let arc = this.#onwardFrom(leaving); arc >= 0; arc = this.#arcs.next(arc)) {
      const link = this.#arcs.link(arc);
      const arriving = this.#arcs.vertex(arc);
      if (this.#dead[arriving] === this.#round || link === this.#link) continue;
      if (this.#link >= 0) {
        const isLater = link > this.#link;
        this.#passedOver.push(isLater ? { link, arriving } : { link: this.#link, arriving: this.#arriving });
        if (isLater) continue;
      }
      this.#leaving = leaving;
      this.#arriving = arriving;
      this.#link = link;
    }
  }

  /** Of the links that were not taken, those by which the end can really be reached. */
  #tiesAt(partings: readonly Parting[]): readonly WayTie[] {
    if (partings.length === 0) return nothing;
    return partings.flatMap(({ vertex, chosen, others }) => {
      const alive = others.filter(({ arriving }) => this.#leadsToEnd(arriving)).map(({ link }) => link);
      const links = [...new Set(alive)].sort((a, b) => a - b);
      return links.length === 0 ? [] : { vertex, chosen, others: links };
    });
  }

  #leadsToEnd(start: number): boolean {
    for (;;) {
      let at = start;
      while (!this.#isEnd(at) && this.#choose(at)) at = this.#arriving;
      if (this.#isEnd(at)) return true;
      this.#dead[at] = this.#round;
      if (at === start) return false;
    }
  }
}

/** A cable that leads on. */
interface Onward {
  readonly link: number;
  readonly arriving: number;
}

/** A vertex from which more than one cable leads on. */
interface Parting {
  readonly vertex: number;
  readonly chosen: number;
  readonly others: readonly Onward[];
}
