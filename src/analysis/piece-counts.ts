import type { Cable, CablePiece, CableStock } from './model.ts';

/** Pieces of one kind of cable and one length to bring. */
export interface PieceCount {
  readonly cable: Cable;
  /** Of the piece; where none at hand is long enough, what is needed. */
  readonly length_m: number | undefined;
  readonly from: CablePiece['from'];
  readonly count: number;
  /** How many of them are spares. */
  readonly spare: number;
}

/** How many pieces of each length travel: by kind of cable in the order of its first need, longest first. */
export function pieceCountsOf({ pieces, spares }: CableStock): PieceCount[] {
  const counts = new Map<string, PieceCount>();
  const order = new Map<Cable, number>();
  const count = ({ cable, piece_m, needed_m, from }: Omit<CablePiece, 'link'>, spare: number) => {
    const length_m = piece_m ?? needed_m;
    const key = `${cable.index} ${length_m} ${from}`;
    const known = counts.get(key);
    if (!order.has(cable)) order.set(cable, order.size);
    counts.set(key, {
      cable,
      length_m,
      from,
      count: (known?.count ?? 0) + 1,
      spare: (known?.spare ?? 0) + spare,
    });
  };
  for (const piece of pieces) count(piece, 0);
  for (const piece of spares) count(piece, 1);
  return [...counts.values()].sort(
    (a, b) => order.get(a.cable)! - order.get(b.cable)! || (b.length_m ?? 0) - (a.length_m ?? 0),
  );
}
