import type { CablePiece } from '../../analysis/model.ts';
import { figure, number, object, oneOf, orNull, text, type ValueOf } from './schema.ts';

export const cablePieceShape = object('The piece of cable for a link', {
  cable: text('Kind of cable'),
  link: text('Name of the link; of several in one sheath the first'),
  needed_m: orNull(number('How long it must be, in metres')),
  piece_m: orNull(number('How long the piece is that is taken for it, in metres')),
  from: oneOf('stock: a counted piece at hand; any: can be had in any number; get: no piece would do', [
    'stock',
    'any',
    'get',
  ]),
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
