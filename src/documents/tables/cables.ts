import { cableStockOf } from '../../analysis/cable-pieces.ts';
import type { Analysis, CablePiece } from '../../analysis/model.ts';
import { formatLength } from '../../physics/display.ts';
import type { Table } from '../text-table.ts';

const origins: Record<CablePiece['from'], string> = {
  stock: 'from stock',
  any: 'can be had',
  get: 'to get',
};

/** The piece of cable for every link, and what is carried as a spare. */
export function cableTables(analysis: Analysis): Table[] {
  const { pieces, spares, left } = cableStockOf(analysis);
  const length = (length_m: number | undefined) =>
    length_m === undefined ? 'not known' : formatLength(length_m, analysis.settings.units);
  return [
    {
      name: 'cables',
      columns: [
        { title: 'For' },
        { title: 'Cable' },
        { title: 'Needs', right: true },
        { title: 'Takes', right: true },
        { title: 'From' },
      ],
      rows: [
        ...pieces.map(({ link, cable, needed_m, piece_m, from }) => [
          link.name,
          cable.name,
          length(needed_m),
          piece_m === undefined ? '' : length(piece_m),
          origins[from],
        ]),
        ...spares.map(({ cable, needed_m, piece_m, from }) => [
          'spare',
          cable.name,
          length(needed_m),
          piece_m === undefined ? '' : length(piece_m),
          origins[from],
        ]),
      ],
      empty: 'No cables to pull in this plan.',
    },
    {
      name: 'left over',
      columns: [{ title: 'Left over' }, { title: 'Length', right: true }, { title: 'Pieces', right: true }],
      rows: left.map(({ cable, length_m, count }) => [cable.name, length(length_m), String(count)]),
      empty: 'Nothing of the stock is left over.',
    },
  ];
}
