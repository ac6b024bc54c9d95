import { cableStockOf } from '../../analysis/cable-pieces.ts';
import { packingOf } from '../../analysis/case-weights.ts';
import { poweringOf } from '../../analysis/circuit-loads.ts';
import { costOf } from '../../analysis/costs.ts';
import type { Analysis, CablePiece } from '../../analysis/model.ts';
import type { CableToBuy, Total } from './review.ts';

/** What the show costs, what its cases weigh and what it draws, before and after; only what differs. */
export function totalsOf(old: Analysis, fresh: Analysis): Total[] {
  const [was, is] = [sumsOf(old), sumsOf(fresh)];
  return (['cost', 'weight', 'power'] as const)
    .map((what): Total => ({ what, before: was[what], after: is[what] }))
    .filter(({ before, after }) => Math.abs(before - after) > 1e-9);
}

function sumsOf(analysis: Analysis): Record<Total['what'], number> {
  const stock = cableStockOf(analysis);
  const add = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0);
  return {
    cost: costOf(analysis, stock).total,
    weight: add(packingOf(analysis, stock).cases.map((one) => one.weight_kg)),
    power: add(poweringOf(analysis).places.map((place) => place.load_w)),
  };
}

/** Pieces of cable that must be got and did not have to be before. */
export function cablesToBuy(old: Analysis, fresh: Analysis, newName: (name: string) => string): CableToBuy[] {
  const keyOf = ({ cable, link, needed_m }: CablePiece, name: (name: string) => string) =>
    `${name(cable.name)} ${name(link.name)} ${needed_m ?? ''}`;
  const before = new Set(toGet(old).map((piece) => keyOf(piece, newName)));
  return toGet(fresh)
    .filter((piece) => !before.has(keyOf(piece, (name) => name)))
    .map(({ cable, link, needed_m }) => ({ cable: cable.name, link: link.name, needed_m }));
}

function toGet(analysis: Analysis): CablePiece[] {
  // Where no stock is stated at all, nothing is said of what is at hand.
  return analysis.stock.length === 0
    ? []
    : cableStockOf(analysis).pieces.filter(({ from }) => from === 'get');
}
