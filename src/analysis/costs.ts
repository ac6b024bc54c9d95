import type { Analysis, CableStock, Cost, CostLine, Kit, Owner } from './model.ts';

/** Prices of kit by count, and of the pieces of cable that are used; spares counted in. Only what states a price costs. */
export function costOf(analysis: Analysis, { pieces, spares }: CableStock): Cost {
  const lines = [...kitLines(analysis), ...cableLines([...pieces, ...spares])];
  return {
    currency: analysis.settings.currency,
    total: lines.reduce((total, line) => total + (line.sum ?? 0), 0),
    lines,
  };
}

/** How many of each kit the plan has, spares apart. */
export function kitCounts(analysis: Analysis): Map<Kit, number> {
  const counts = new Map<Kit, number>();
  const owners: Owner[] = [
    ...analysis.nodes.values(),
    ...analysis.sources.values(),
    ...analysis.destinations.values(),
  ];
  for (const { kit } of owners) if (kit) counts.set(kit, (counts.get(kit) ?? 0) + 1);
  return counts;
}

/** Spares of a kind: so many per cent of what is needed, rounded up. */
export function spareCount(needed: number, sparesShare: number): number {
  return Math.ceil(Number((needed * sparesShare).toFixed(9)));
}

function kitLines(analysis: Analysis): CostLine[] {
  return [...kitCounts(analysis)].map(([kit, needed]): CostLine => {
    const spare = spareCount(needed, analysis.settings.sparesShare);
    const count = needed + spare;
    const each = kit.statement.fact.cost;
    return { what: kit.name, kit, count, spare, each, sum: each === undefined ? undefined : each * count };
  });
}

function cableLines(
  pieces: readonly (CableStock['pieces'][number] | CableStock['spares'][number])[],
): CostLine[] {
  const byStock = new Map<object, { count: number; spare: number; piece: (typeof pieces)[number] }>();
  for (const piece of pieces) {
    if (!piece.stock) continue;
    const line = byStock.get(piece.stock) ?? { count: 0, spare: 0, piece };
    line.count++;
    if (!('link' in piece)) line.spare++;
    byStock.set(piece.stock, line);
  }
  return [...byStock.values()].map(({ count, spare, piece }): CostLine => {
    const each = piece.stock!.fact.cost;
    return {
      what: piece.cable.name,
      kit: undefined,
      length_m: piece.piece_m,
      count,
      spare,
      each,
      sum: each === undefined ? undefined : each * count,
    };
  });
}
