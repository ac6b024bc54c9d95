import type { Cost } from '../../analysis/model.ts';
import { figure, list, number, object, orNull, text, type ValueOf, whole } from './schema.ts';

export const costShape = object('What it costs, as far as prices are stated', {
  currency: orNull(text('As the plan says')),
  total: number('Sum of all lines'),
  lines: list(
    'Kit, then pieces of cable',
    object('One kind of thing', {
      what: text('Name of the kit, or kind of cable'),
      length_m: orNull(number('Length of the piece of cable, in metres; null for kit')),
      count: whole('How many, spares counted in'),
      spare: whole('How many of them are spares'),
      each: orNull(number('Price of one; null where none is stated')),
      sum: orNull(number('Price of all')),
    }),
  ),
});

export function costJson({ currency, total, lines }: Cost): ValueOf<typeof costShape> {
  return {
    currency: currency ?? null,
    total: figure(total),
    lines: lines.map((line) => ({
      what: line.what,
      length_m: figure(line.length_m),
      count: line.count,
      spare: line.spare,
      each: figure(line.each),
      sum: figure(line.sum),
    })),
  };
}
