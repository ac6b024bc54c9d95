import type { Place, Run } from './model.ts';

/** The shortest way between two places. */
export interface LaidWay {
  readonly length_m: number;
  readonly runs: readonly Run[];
}

/** How far each place is from one end, and by which run it was reached; kept from one search to the next. */
class Side {
  readonly heap = new Heap();
  readonly #seen: Int32Array;
  readonly #settled: Int32Array;
  readonly #distance: Float64Array;
  readonly #by: (Run | undefined)[];
  #round = 0;

  constructor(placeCount: number) {
    this.#seen = new Int32Array(placeCount);
    this.#settled = new Int32Array(placeCount);
    this.#distance = new Float64Array(placeCount);
    this.#by = new Array(placeCount);
  }

  begin(place: number): void {
    this.#round++;
    this.heap.clear();
    this.reach(place, 0, undefined);
  }

  distanceTo(place: number): number {
    return this.#seen[place] === this.#round ? this.#distance[place]! : Number.POSITIVE_INFINITY;
  }

  reach(place: number, distance: number, by: Run | undefined): void {
    this.#seen[place] = this.#round;
    this.#distance[place] = distance;
    this.#by[place] = by;
    this.heap.push(place, distance);
  }

  /** False when it was settled before. */
  settle(place: number): boolean {
    if (this.#settled[place] === this.#round) return false;
    this.#settled[place] = this.#round;
    return true;
  }

  /** The runs from a place back to this side's end. */
  runsFrom(place: number): Run[] {
    const runs: Run[] = [];
    for (let at = place, run = this.#by[at]; run !== undefined; run = this.#by[at]) {
      runs.push(run);
      at = otherEnd(run, at);
    }
    return runs;
  }
}

/**
 * The runs as a net in which shortest ways are looked up. Each pair of places is searched once, from both ends at the
 * same time (Dijkstra 1959, from both sides; from memory), so that a hall with many rooms costs little when its cables
 * are short.
 */
export class RunGraph {
  readonly #runsAt: Run[][] = [];
  readonly #ways = new Map<number, LaidWay | undefined>();
  readonly #placeCount: number;
  readonly #lengthOf: (run: Run) => number | undefined;
  readonly #start: Side;
  readonly #end: Side;

  constructor(placeCount: number, runs: readonly Run[], lengthOf: (run: Run) => number | undefined) {
    this.#placeCount = placeCount;
    this.#lengthOf = lengthOf;
    this.#start = new Side(placeCount);
    this.#end = new Side(placeCount);
    for (const run of runs) {
      if (!run.from || !run.to || run.from === run.to || lengthOf(run) === undefined) continue;
      this.#join(run.from, run);
      this.#join(run.to, run);
    }
  }

  /** Undefined when no chain of runs joins the two. */
  shortest(from: Place, to: Place): LaidWay | undefined {
    if (from === to) return { length_m: 0, runs: [] };
    const key = from.index * this.#placeCount + to.index;
    const known = this.#ways.get(key);
    if (known || this.#ways.has(key)) return known;
    const way = this.#search(from.index, to.index);
    this.#ways.set(key, way);
    return way;
  }

  #join(place: Place, run: Run): void {
    const runs = this.#runsAt[place.index];
    if (runs) runs.push(run);
    else this.#runsAt[place.index] = [run];
  }

  #search(from: number, to: number): LaidWay | undefined {
    this.#start.begin(from);
    this.#end.begin(to);
    let best = Number.POSITIVE_INFINITY;
    let meeting = -1;
    while (this.#start.heap.least + this.#end.heap.least < best) {
      const isStart = this.#start.heap.least <= this.#end.heap.least;
      const [side, other] = isStart ? [this.#start, this.#end] : [this.#end, this.#start];
      const place = side.heap.pop();
      if (!side.settle(place)) continue;
      const sofar = side.distanceTo(place);
      for (const run of this.#runsAt[place] ?? noRuns) {
        const next = otherEnd(run, place);
        const distance = sofar + this.#lengthOf(run)!;
        if (distance >= side.distanceTo(next)) continue;
        side.reach(next, distance, run);
        const whole = distance + other.distanceTo(next);
        if (whole < best) {
          best = whole;
          meeting = next;
        }
      }
    }
    if (meeting < 0) return undefined;
    const runs = [...this.#start.runsFrom(meeting).reverse(), ...this.#end.runsFrom(meeting)];
    // Added up from the first place on, whichever side found what.
    return { length_m: runs.reduce((sum, run) => sum + this.#lengthOf(run)!, 0), runs };
  }
}

const noRuns: readonly Run[] = [];

function otherEnd(run: Run, place: number): number {
  return run.from!.index === place ? run.to!.index : run.from!.index;
}

/** A heap of places, the least distance on top. */
class Heap {
  readonly #places: number[] = [];
  readonly #keys: number[] = [];

  clear(): void {
    this.#places.length = 0;
    this.#keys.length = 0;
  }

  /** Infinite when it is empty. */
  get least(): number {
    return this.#keys.length === 0 ? Number.POSITIVE_INFINITY : this.#keys[0]!;
  }

  push(place: number, key: number): void {
    const places = this.#places;
    const keys = this.#keys;
    let at = places.length;
    places.push(place);
    keys.push(key);
    while (at > 0) {
      const parent = (at - 1) >> 1;
      if (keys[parent]! <= key) break;
      places[at] = places[parent]!;
      keys[at] = keys[parent]!;
      at = parent;
    }
    places[at] = place;
    keys[at] = key;
  }

  pop(): number {
    const places = this.#places;
    const keys = this.#keys;
    const top = places[0]!;
    const place = places.pop()!;
    const key = keys.pop()!;
    const size = places.length;
    if (size === 0) return top;
    let at = 0;
    for (;;) {
      let child = 2 * at + 1;
      if (child >= size) break;
      if (child + 1 < size && keys[child + 1]! < keys[child]!) child++;
      if (keys[child]! >= key) break;
      places[at] = places[child]!;
      keys[at] = keys[child]!;
      at = child;
    }
    places[at] = place;
    keys[at] = key;
    return top;
  }
}
