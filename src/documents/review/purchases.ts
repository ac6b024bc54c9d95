import { cableStockOf } from '../../analysis/cable-pieces.ts';
import type { Analysis, Cable } from '../../analysis/model.ts';
import type { Comparison } from './comparison.ts';
import type { Purchase } from './review.ts';

/**
 * Pieces of cable that have to be got now and did not before, and the other way round, by kind and length: which link a
 * piece was meant for may have changed without anything having to be bought.
 */
export function purchasesOf({ was, is, renames, titles }: Comparison): Purchase[] {
  const before = missingPieces(was, (cable) => renames.of('cables', cable.name));
  const after = missingPieces(is, (cable) => cable.name);
  const changes = [...new Set([...after.keys(), ...before.keys()])].flatMap((key): Purchase[] => {
    const [old, fresh] = [before.get(key), after.get(key)];
    const more = (fresh?.count ?? 0) - (old?.count ?? 0);
    if (more === 0) return [];
    const { name, cable, length_m } = (fresh ?? old)!;
    const title = (fresh ? titles.is : titles.was).cable(cable);
    return [
      { change: more > 0 ? 'to buy' : 'no longer to buy', name, title, length_m, count: Math.abs(more) },
    ];
  });
  return [
    ...changes.filter(({ change }) => change === 'to buy'),
    ...changes.filter(({ change }) => change === 'no longer to buy'),
  ];
}

interface Missing {
  readonly name: string;
  readonly cable: Cable;
  readonly length_m: number | undefined;
  count: number;
}

/** Where no stock is stated at all, nothing is known of what is at hand. */
function missingPieces(analysis: Analysis, nameOf: (cable: Cable) => string): Map<string, Missing> {
  const missing = new Map<string, Missing>();
  if (analysis.stock.length === 0) return missing;
  const { pieces, spares } = cableStockOf(analysis);
  for (const { cable, needed_m, from } of [...pieces, ...spares]) {
    if (from !== 'get') continue;
    const name = nameOf(cable);
    const length_m = needed_m === undefined ? undefined : Math.round(needed_m * 100) / 100;
    const key = `${name} ${length_m}`;
    const known = missing.get(key);
    if (known) known.count++;
    else missing.set(key, { name, cable, length_m, count: 1 });
  }
  return missing;
}
