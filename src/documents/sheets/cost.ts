import { cableStockOf } from '../../analysis/cable-pieces.ts';
import { costOf } from '../../analysis/costs.ts';
import type { CostLine } from '../../analysis/model.ts';
import { formatLength, formatNumber } from '../../physics/display.ts';
import { type Cell, quantity, type Sheet, type SheetInput } from './sheet.ts';

/** What it costs, kit and pieces of cable, spares included. */
export function costSheet(input: SheetInput): Sheet {
  const { analysis } = input;
  const { currency, total, lines } = costOf(analysis, cableStockOf(analysis));
  const money = (amount: number) => formatNumber(amount, 2);
  return {
    id: 'cost',
    title: 'Cost',
    about: `Prices as the plan states them${currency ? `, in ${currency}` : ''}; what states no price is not in the total.`,
    empty: 'Nothing in this plan has a price.',
    tables: [
      {
        file: 'cost',
        columns: [
          { title: 'What' },
          { title: 'Count', kind: 'quantity' },
          { title: 'Of these spare', kind: 'quantity' },
          { title: 'Each', kind: 'quantity' },
          { title: 'Sum', kind: 'quantity' },
        ],
        rows:
          lines.length === 0
            ? []
            : [
                ...lines.map((line) => ({
                  of: line.what,
                  cells: [
                    whatOf(line, input),
                    { text: String(line.count), value: line.count },
                    line.spare === 0 ? '' : { text: String(line.spare), value: line.spare },
                    quantity(line.each, money, 'no price'),
                    quantity(line.sum, money, ''),
                  ],
                })),
                { of: 'total', cells: ['TOTAL', '', '', currency ?? '', quantity(total, money)] },
              ],
      },
    ],
  };
}

function whatOf({ what, kit, length_m }: CostLine, { analysis }: SheetInput): Cell {
  if (kit) return kit.statement.label ?? what;
  const label = analysis.cables.get(what)?.statement.label ?? what;
  return length_m === undefined ? label : `${label}, ${formatLength(length_m, analysis.settings.units)}`;
}
