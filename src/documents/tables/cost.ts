import { cableStockOf } from '../../analysis/cable-pieces.ts';
import { costOf } from '../../analysis/costs.ts';
import type { Analysis } from '../../analysis/model.ts';
import { formatLength, formatNumber } from '../../physics/display.ts';
import type { Table } from '../text-table.ts';

/** Kit and pieces of cable with their prices, and the total. */
export function costTable(analysis: Analysis): Table {
  const { currency, total, lines } = costOf(analysis, cableStockOf(analysis));
  const money = (amount: number) => formatNumber(amount, 2);
  const rows = lines.map((line) => [
    line.length_m === undefined
      ? line.what
      : `${line.what}, ${formatLength(line.length_m, analysis.settings.units)}`,
    String(line.count),
    line.spare > 0 ? String(line.spare) : '',
    line.each === undefined ? 'no price' : money(line.each),
    line.sum === undefined ? '' : money(line.sum),
  ]);
  const sum = ['Total', '', '', currency ?? '', money(total)];
  return {
    name: 'cost',
    columns: [
      { title: 'What' },
      { title: 'Count', right: true },
      { title: 'Spare', right: true },
      { title: 'Each', right: true },
      { title: 'Sum', right: true },
    ],
    rows: rows.length === 0 ? [] : [...rows, sum],
    empty: 'Nothing in this plan has a price.',
  };
}
