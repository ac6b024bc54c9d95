import type { StatementOf } from '../plan/plan.ts';
import type { Building } from './building.ts';
import type { Place, Run } from './model.ts';
import type { NameBook } from './names.ts';

export function placesOf(statements: readonly StatementOf<'place'>[], names: NameBook): Map<string, Place> {
  const byName = new Map<string, Place>();
  for (const statement of statements) {
    const { name } = statement.fact;
    names.declare('places', byName, name, { index: byName.size, name, statement });
  }
  return byName;
}

/** The runs in order, with the lengths that were found on site. */
export function runsOf(
  statements: readonly StatementOf<'run'>[],
  places: ReadonlyMap<string, Place>,
  names: NameBook,
): Building<Run>[] {
  return statements.map((statement, index) => {
    const { from, to, length_m, temperature_c } = statement.fact;
    return {
      kind: 'run',
      index,
      name: `${from} <-> ${to}`,
      statement,
      from: names.find(places, from, 'place', statement, 'from'),
      to: names.find(places, to, 'place', statement, 'to'),
      length_m,
      planned_m: length_m,
      measured: undefined,
      temperature_c,
    };
  });
}
