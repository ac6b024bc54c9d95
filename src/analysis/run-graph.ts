import type { Place, Run } from './model.ts';

/** The shortest way between two places. */
export interface Way {
  readonly length_m: number;
  readonly runs: readonly Run[];
}

/** Where a search stands: how far each place is from its end, and by which run it was reached. */
interface Side {
  readonly heap: Heap;
  readonly distance: Map<number, number>;
  readonly by: Map<number, Run>;
  readonly settled: Set<number>;
}

/**
 * The runs as a net in which shortest ways are looked up. Each pair of places is searched once, from both ends at the
 * same time, so that a hall with many rooms costs little when its cables are short.
 */
export class RunGraph {
  readonly #runsAt: Run[][] = [];
  readonly #ways = new Map<number, Way | undefined>();
  readonly #placeCount: number;
  readonly #lengthOf: (run: Run) => number | undefined;

  constructor(placeCount: number, runs: readonly Run[], lengthOf: (run: Run) => number | undefined) {
    this.#placeCount = placeCount;
    this.#lengthOf = lengthOf;
    for (const run of runs) {
      if (!run.from || !run.to || run.from === run.to || lengthOf(run) === undefined) continue;
      this.#join(run.from, run);
      this.#join(run.to, run);
    }
  }

  #join(place: Place, run: Run): void {
    const runs = this.#runsAt[place.index];
    if (runs) runs.push(run);
    else this.#runsAt[place.index] = [run];
  }

  /** Undefined when no chain of runs joins the two. */
  shortest(from: Place, to: Place): Way | undefined {
    if (from === to) return { length_m: 0, runs: [] };
    const key = from.index * this.#placeCount + to.index;
    if (this.#ways.has(key)) return this.#ways.get(key);
    const way = this.#search(from.index, to.index);
    this.#ways.set(key, way);
    return way;
  }

  #search(from: number, to: number): Way | undefined {
    const start = sideAt(from);
    const end = sideAt(to);
    let best = Number.POSITIVE_INFINITY;
    let meeting = -1;
    while (start.heap.size > 0 && end.heap.size > 0 && start.heap.least + end.heap.least < best) {
      const [side, other] = start.heap.least <= end.heap.least ? [start, end] : [end, start];
      const place = side.heap.pop();
      if (side.settled.has(place)) continue;
      side.settled.add(place);
      const sofar = side.distance.get(place)!;
      for (const run of this.#runsAt[place] ?? []) {
        const next = otherEnd(run, place);
        const distance = sofar + this.#lengthOf(run)!;
        if (distance >= (side.distance.get(next) ?? Number.POSITIVE_INFINITY)) continue;
        side.distance.set(next, distance);
        side.by.set(next, run);
        side.heap.push(next, distance);
        const whole = distance + (other.distance.get(next) ?? Number.POSITIVE_INFINITY);
        if (whole < best) {
          best = whole;
          meeting = next;
        }
      }
    }
    if (meeting < 0) return undefined;
    const runs = [...chainBack(start, meeting).reverse(), ...chainBack(end, meeting)];
    // Added up from the first place on, so that both searching sides give the same last digit.
    return { length_m: runs.reduce((sum, run) => sum + this.#lengthOf(run)!, 0), runs };
  }
}

function sideAt(place: number): Side {
  const heap = new Heap();
  heap.push(place, 0);
  return { heap, distance: new Map([[place, 0]]), by: new Map(), settled: new Set() };
}

function otherEnd(run: Run, place: number): number {
  return run.from!.index === place ? run.to!.index : run.from!.index;
}

function chainBack(side: Side, place: number): Run[] {
  const runs: Run[] = [];
  for (let at = place, run = side.by.get(at); run !== undefined; run = side.by.get(at)) {
    runs.push(run);
    at = otherEnd(run, at);
  }
  return runs;
}

/** A heap of places, the least distance on top; of equal ones the first that came. */
class Heap {
  readonly #places: number[] = [];
  readonly #keys: number[] = [];

  get size(): number {
    return this.#places.length;
  }

  get least(): number {
    return this.#keys[0] ?? Number.POSITIVE_INFINITY;
  }

  push(place: number, key: number): void {
    let at = this.#places.length;
    this.#places.push(place);
    this.#keys.push(key);
    while (at > 0) {
      const parent = (at - 1) >> 1;
      if (this.#keys[parent]! <= key) break;
      this.#swap(at, parent);
      at = parent;
    }
  }

  pop(): number {
    const top = this.#places[0]!;
    const place = this.#places.pop()!;
    const key = this.#keys.pop()!;
    if (this.#places.length === 0) return top;
    this.#places[0] = place;
    this.#keys[0] = key;
    let at = 0;
    for (;;) {
      const left = 2 * at + 1;
      let child = left;
      if (left >= this.#keys.length) break;
      if (left + 1 < this.#keys.length && this.#keys[left + 1]! < this.#keys[left]!) child = left + 1;
      if (this.#keys[child]! >= this.#keys[at]!) break;
      this.#swap(at, child);
      at = child;
    }
    return top;
  }

  #swap(a: number, b: number): void {
    [this.#places[a], this.#places[b]] = [this.#places[b]!, this.#places[a]!];
    [this.#keys[a], this.#keys[b]] = [this.#keys[b]!, this.#keys[a]!];
  }
}
