import type { CaseWeight } from '../../analysis/model.ts';
import { figure, list, number, object, orNull, text, type ValueOf } from './schema.ts';

export const caseShape = object('What travels in a case', {
  name: text('Its name'),
  weight_kg: number('The case and everything in it whose weight is known'),
  limit_kg: orNull(number('What it may weigh')),
  unknown: list('What is in it and has no known weight', text('A name, or words in quotes')),
});

export function caseJson({ case: one, weight_kg, limit_kg, unknown }: CaseWeight): ValueOf<typeof caseShape> {
  return { name: one.name, weight_kg: figure(weight_kg), limit_kg: figure(limit_kg), unknown };
}
