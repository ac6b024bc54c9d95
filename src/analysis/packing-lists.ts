import { weightOf } from './case-weights.ts';
import type { Analysis, CablePiece, CableStock, Case, Thing } from './model.ts';

/** One thing in a case. */
export interface PackedThing {
  readonly thing: Thing;
  /** Of a cable: the piece that is taken for it. */
  readonly piece: CablePiece | undefined;
  /** Undefined when nothing in the plan says. */
  readonly weight_kg: number | undefined;
}

export interface PackingList {
  readonly case: Case;
  readonly things: readonly PackedThing[];
}

/** What is in each case, with what each thing weighs, in the order in which the case names them. */
export function packingListsOf(analysis: Analysis, { pieces }: CableStock): PackingList[] {
  const pieceOf = new Map<Thing, CablePiece>(pieces.map((piece) => [piece.link, piece]));
  const lengthOf = new Map<Thing, number | undefined>(
    pieces.map((piece) => [piece.link, piece.piece_m ?? piece.needed_m]),
  );
  return [...analysis.cases.values()].map((one) => ({
    case: one,
    things: one.things.map((thing) => ({
      thing,
      piece: pieceOf.get(thing),
      weight_kg: weightOf(thing, lengthOf),
    })),
  }));
}
