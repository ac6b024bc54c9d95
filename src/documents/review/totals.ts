import { cableStockOf } from '../../analysis/cable-pieces.ts';
import { packingOf } from '../../analysis/case-weights.ts';
import { poweringOf } from '../../analysis/circuit-loads.ts';
import { costOf } from '../../analysis/costs.ts';
import type { Analysis } from '../../analysis/model.ts';
import type { Titles } from '../sheets/titles.ts';
import type { Comparison } from './comparison.ts';
import { type Total, totalKinds } from './review.ts';

/** What the show costs and draws, what each circuit carries and each case weighs, before and after; only what differs. */
export function totalsOf({ was, is, renames, titles }: Comparison): Total[] {
  const before = new Map(
    sumsOf(was, titles.was).map((sum) => {
      const space = sum.what === 'case' ? 'cases' : 'things';
      return [keyOf({ ...sum, name: renames.of(space, sum.name) }), sum];
    }),
  );
  const after = new Map(sumsOf(is, titles.is).map((sum) => [keyOf(sum), sum]));
  const totals = [...new Set([...after.keys(), ...before.keys()])].map((key): Total => {
    const [old, fresh] = [before.get(key), after.get(key)];
    const { what, name, title, limit } = (fresh ?? old)!;
    return { what, name, title, limit, before: old?.value, after: fresh?.value };
  });
  return totals
    .filter(
      (total) =>
        total.before === undefined || total.after === undefined || differs(total.before, total.after),
    )
    .sort((a, b) => totalKinds.indexOf(a.what) - totalKinds.indexOf(b.what));
}

function differs(a: number, b: number): boolean {
  return Math.abs(a - b) > 1e-9 * Math.max(1, Math.abs(a), Math.abs(b));
}

interface Sum extends Pick<Total, 'what' | 'name' | 'title' | 'limit'> {
  readonly value: number;
}

function keyOf({ what, name }: Sum): string {
  return `${what} ${name}`;
}

function sumsOf(analysis: Analysis, titles: Titles): Sum[] {
  const stock = cableStockOf(analysis);
  const powering = poweringOf(analysis);
  const { cases } = packingOf(analysis, stock);
  const weight_kg = cases.reduce((sum, one) => sum + one.weight_kg, 0);
  const power_w = powering.places.reduce((sum, { load_w }) => sum + load_w, 0);
  return [
    { what: 'cost', name: '', title: '', limit: undefined, value: costOf(analysis, stock).total },
    { what: 'weight', name: '', title: '', limit: undefined, value: weight_kg },
    { what: 'power', name: '', title: '', limit: undefined, value: power_w },
    ...powering.circuits.map(
      ({ circuit, load_w, limit_w }): Sum => ({
        what: 'circuit',
        name: circuit.name,
        title: titles.circuit(circuit),
        limit: limit_w,
        value: load_w,
      }),
    ),
    ...cases.map(
      (one): Sum => ({
        what: 'case',
        name: one.case.name,
        title: titles.of(one.case),
        limit: one.limit_kg,
        value: one.weight_kg,
      }),
    ),
  ];
}
