import { cableStockOf } from '../../analysis/cable-pieces.ts';
import { packingOf } from '../../analysis/case-weights.ts';
import type { Analysis } from '../../analysis/model.ts';
import { formatWeight } from '../../physics/display.ts';
import type { Table } from '../text-table.ts';

/** What every case weighs, and what is in none. */
export function caseTables(analysis: Analysis): Table[] {
  const { cases, unpacked } = packingOf(analysis, cableStockOf(analysis));
  return [
    {
      name: 'cases',
      columns: [
        { title: 'Case' },
        { title: 'Holds' },
        { title: 'Weighs', right: true },
        { title: 'Limit', right: true },
        { title: 'Weight not known of' },
      ],
      rows: cases.map(({ case: one, weight_kg, limit_kg, unknown }) => [
        one.name,
        one.things.map(({ name }) => name).join(', '),
        formatWeight(weight_kg, limit_kg),
        limit_kg === undefined ? '' : formatWeight(limit_kg, weight_kg),
        unknown.join(', '),
      ]),
      empty: 'No cases in this plan.',
    },
    {
      name: 'unpacked',
      columns: [{ title: 'In no case' }],
      rows: unpacked.map(({ name }) => [name]),
      empty: 'Everything that travels is in a case.',
    },
  ];
}
