import { add } from './lists.ts';
import type { Analysis, Cable, CablePiece, CableStock, Link, PieceOfStock, SpareCable } from './model.ts';

/**
 * Which piece of cable each link takes: longest need first, the shortest piece that is long enough; of equal ones those
 * that are counted before those that can be had in any number. Links that share a sheath are one piece as long as the
 * longest of them; what is installed needs none.
 */
export function cableStockOf(analysis: Analysis): CableStock {
  const pieces: CablePiece[] = [];
  const spares: SpareCable[] = [];
  const left: PieceOfStock[] = [];
  const needs = needsByCable(analysis);
  const stock = stockByCable(analysis);
  for (const cable of new Set([...needs.keys(), ...stock.keys()])) {
    const lengths = [...(stock.get(cable) ?? [])].sort(
      (a, b) => a.length_m - b.length_m || Number(a.any) - Number(b.any),
    );
    const longestFirst = [...(needs.get(cable) ?? [])].sort(
      (a, b) => (b.needed_m ?? 0) - (a.needed_m ?? 0) || a.link.index - b.link.index,
    );
    for (const need of longestFirst) pieces.push({ cable, ...need, ...take(lengths, need.needed_m) });
    const wanted = Math.ceil(roundedUpFrom(longestFirst.length * analysis.settings.sparesShare));
    const longest_m = longestFirst[0]?.needed_m;
    for (let i = 0; i < wanted; i++) spares.push({ cable, needed_m: longest_m, ...take(lengths, longest_m) });
    for (const { statement, length_m, count, any } of lengths)
      if (!any && count > 0) left.push({ cable, statement, length_m, count });
  }
  return {
    pieces: pieces.sort((a, b) => a.link.index - b.link.index),
    spares,
    left,
    withoutSpare: withoutSpare(pieces, spares, left),
  };
}

/** Ten per cent of thirty is three, whatever the last binary digit says. */
function roundedUpFrom(pieces: number): number {
  return Number(pieces.toFixed(9));
}

interface Need {
  readonly link: Link;
  readonly needed_m: number | undefined;
}

function needsByCable(analysis: Analysis): Map<Cable, Need[]> {
  const sheaths = new Map<Link, number | undefined>();
  for (const link of analysis.links) {
    if (link.installed || link.sheath.installed) continue;
    const known = sheaths.get(link.sheath);
    const length_m = link.length.length_m;
    sheaths.set(link.sheath, known === undefined ? length_m : Math.max(known, length_m ?? 0));
  }
  const needs = new Map<Cable, Need[]>();
  for (const [link, needed_m] of sheaths) if (link.cable) add(needs, link.cable, { link, needed_m });
  return needs;
}

interface Lengths {
  readonly statement: PieceOfStock['statement'];
  readonly length_m: number;
  readonly any: boolean;
  count: number;
}

function stockByCable(analysis: Analysis): Map<Cable, Lengths[]> {
  const stock = new Map<Cable, Lengths[]>();
  for (const { cable, statement } of analysis.stock) {
    const { length_m, count } = statement.fact;
    if (cable) add(stock, cable, { statement, length_m, any: count === undefined, count: count ?? 0 });
  }
  return stock;
}

/** Takes the first piece, shortest first, that is long enough. */
function take(
  lengths: readonly Lengths[],
  needed_m: number | undefined,
): Pick<CablePiece, 'piece_m' | 'from' | 'stock'> {
  const found =
    needed_m === undefined
      ? undefined
      : lengths.find((one) => one.length_m >= needed_m - 1e-9 && (one.any || one.count > 0));
  if (!found) return { piece_m: undefined, from: 'get', stock: undefined };
  if (!found.any) found.count--;
  return { piece_m: found.length_m, from: found.any ? 'any' : 'stock', stock: found.statement };
}

/** Network links without a piece left that could replace theirs: what matters most when it is trodden on. */
function withoutSpare(
  pieces: readonly CablePiece[],
  spares: readonly SpareCable[],
  left: readonly PieceOfStock[],
): Cable[] {
  const trunks = new Map<Cable, number>();
  for (const { cable, link, needed_m } of pieces) {
    if (link.network && needed_m !== undefined) trunks.set(cable, Math.max(trunks.get(cable) ?? 0, needed_m));
  }
  const carried = (cable: Cable, needed_m: number) =>
    left.some((one) => one.cable === cable && one.length_m >= needed_m) ||
    spares.some((one) => one.cable === cable && one.from !== 'get') ||
    pieces.some((one) => one.cable === cable && (one.from === 'any' || one.link.standbyFor !== undefined));
  return [...trunks].filter(([cable, needed_m]) => !carried(cable, needed_m)).map(([cable]) => cable);
}
