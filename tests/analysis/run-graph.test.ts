import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Place, Run } from '../../src/analysis/model.ts';
import { RunGraph } from '../../src/analysis/run-graph.ts';

const placesOf = (count: number) =>
  Array.from({ length: count }, (_, index) => ({ index, name: `p${index}` }) as Place);

/** Shortest lengths between all places, by Floyd and Warshall's three loops (textbook method, from memory). */
function allPairs(count: number, runs: readonly { a: number; b: number; length: number }[]): number[][] {
  const table = Array.from({ length: count }, (_, i) =>
    Array.from({ length: count }, (__, k) => (i === k ? 0 : Number.POSITIVE_INFINITY)),
  );
  for (const { a, b, length } of runs) {
    table[a]![b] = Math.min(table[a]![b]!, length);
    table[b]![a] = Math.min(table[b]![a]!, length);
  }
  for (let via = 0; via < count; via++) {
    for (let i = 0; i < count; i++) {
      for (let k = 0; k < count; k++)
        table[i]![k] = Math.min(table[i]![k]!, table[i]![via]! + table[via]![k]!);
    }
  }
  return table;
}

test('finds the lengths that a plain method finds, and runs that add up to them', () => {
  const runs = fc.array(fc.record({ a: fc.nat(7), b: fc.nat(7), length: fc.integer({ min: 0, max: 30 }) }));
  fc.assert(
    fc.property(runs, (list) => {
      const places = placesOf(8);
      const made = list.map(
        ({ a, b, length }, index) => ({ index, from: places[a], to: places[b], length_m: length }) as Run,
      );
      const graph = new RunGraph(8, made, (run) => run.length_m);
      const table = allPairs(8, list);
      for (const from of places) {
        for (const to of places) {
          const way = graph.shortest(from, to);
          expect(way?.length_m ?? Number.POSITIVE_INFINITY).toBe(table[from.index]![to.index]);
          let at = from;
          for (const run of way?.runs ?? []) {
            expect([run.from, run.to]).toContain(at);
            at = run.from === at ? run.to! : run.from!;
          }
          if (way) expect(at).toBe(to);
        }
      }
    }),
  );
});
