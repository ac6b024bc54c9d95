import type { CablePiece, PieceOfStock, SpareCable } from '../../analysis/model.ts';
import { figure, number, object, oneOf, orNull, text, type ValueOf, whole } from './schema.ts';

const origin = oneOf(
  'stock: a counted piece at hand; any: can be had in any number; get: no piece would do',
  ['stock', 'any', 'get'],
);

export const cablePieceShape = object('The piece of cable for a link', {
  cable: text('Kind of cable'),
  link: text('Name of the link; of several in one sheath the first'),
  needed_m: orNull(number('How long it must be, in metres')),
  piece_m: orNull(number('How long the piece is that is taken for it, in metres')),
  from: origin,
});

export function cablePieceJson(piece: CablePiece): ValueOf<typeof cablePieceShape> {
  return {
    cable: piece.cable.name,
    link: piece.link.name,
    needed_m: figure(piece.needed_m),
    piece_m: figure(piece.piece_m),
    from: piece.from,
  };
}

export const spareCableShape = object('A spare piece of cable, as long as the longest need of its kind', {
  cable: text('Kind of cable'),
  needed_m: orNull(number('How long it must be, in metres')),
  piece_m: orNull(number('How long the piece is that is taken for it, in metres')),
  from: origin,
});

export function spareCableJson({
  cable,
  needed_m,
  piece_m,
  from,
}: SpareCable): ValueOf<typeof spareCableShape> {
  return { cable: cable.name, needed_m: figure(needed_m), piece_m: figure(piece_m), from };
}

export const stockLeftShape = object('Counted pieces of cable that nothing takes', {
  cable: text('Kind of cable'),
  length_m: number('Length of one piece, in metres'),
  count: whole('How many are left over'),
});

export function stockLeftJson({ cable, length_m, count }: PieceOfStock): ValueOf<typeof stockLeftShape> {
  return { cable: cable.name, length_m: figure(length_m), count };
}
