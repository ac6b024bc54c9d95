import { cableStockOf } from '../../analysis/cable-pieces.ts';
import { costOf } from '../../analysis/costs.ts';
import { pieceCountsOf } from '../../analysis/piece-counts.ts';
import { formatLength, formatWeight } from '../../physics/display.ts';
import { openBox, quantity, type Sheet, type SheetInput } from './sheet.ts';

/** Everything that travels, by kind: boxes and pieces of cable, spares included. */
export function kitSheet({ analysis, titles }: SheetInput): Sheet {
  const stock = cableStockOf(analysis);
  const kit = costOf(analysis, stock).lines.filter((line) => line.kit);
  const length = (value: number) => formatLength(value, analysis.settings.units);
  return {
    id: 'kit',
    title: 'Kit and cable list',
    about:
      'Everything to bring, spares included. Count it out of the store, and count it back in after the show.',
    empty: 'The plan has no kit and no cables.',
    tables: [
      {
        file: 'kit',
        columns: [
          { title: 'Out', kind: 'tick' },
          { title: 'Back', kind: 'tick' },
          { title: 'Kit' },
          { title: 'Bring', kind: 'quantity' },
          { title: 'Of these spare', kind: 'quantity' },
          { title: 'Weighs each', kind: 'quantity' },
        ],
        rows: kit.map(({ kit: one, count, spare }) => ({
          of: one!.name,
          cells: [
            openBox,
            openBox,
            one!.statement.label ?? one!.name,
            { text: String(count), value: count },
            spare === 0 ? '' : { text: String(spare), value: spare },
            quantity(one!.statement.fact.weight_kg, formatWeight),
          ],
        })),
      },
      {
        file: 'cable-list',
        columns: [
          { title: 'Out', kind: 'tick' },
          { title: 'Back', kind: 'tick' },
          { title: 'Cable' },
          { title: 'Length', kind: 'quantity' },
          { title: 'Bring', kind: 'quantity' },
          { title: 'Of these spare', kind: 'quantity' },
          { title: 'From' },
        ],
        rows: pieceCountsOf(stock).map(({ cable, length_m, from, count, spare }) => ({
          of: cable.name,
          cells: [
            openBox,
            openBox,
            titles.cable(cable),
            quantity(length_m, length),
            { text: String(count), value: count },
            spare === 0 ? '' : { text: String(spare), value: spare },
            from === 'get'
              ? 'GET: none at hand is long enough'
              : from === 'any'
                ? 'any number can be had'
                : 'our stock',
          ],
        })),
      },
    ],
  };
}
