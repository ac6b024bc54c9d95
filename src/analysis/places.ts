import type { StatementOf } from '../plan/plan.ts';
import type { Building } from './building.ts';
import type { Circuit, Place, Run, Uplink } from './model.ts';
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

export function circuitsOf(
  statements: readonly StatementOf<'circuit'>[],
  places: ReadonlyMap<string, Place>,
  names: NameBook,
): Building<Circuit>[] {
  return statements.map((statement, index) => {
    const { name, place } = statement.fact;
    return {
      kind: 'circuit',
      index,
      name,
      statement,
      place: place === undefined ? undefined : names.find(places, place, 'place', statement, 'places/0'),
      from: undefined,
      fromCycle: false,
    };
  });
}

export function uplinksOf(
  statements: readonly StatementOf<'uplink'>[],
  places: ReadonlyMap<string, Place>,
  names: NameBook,
): Building<Uplink>[] {
  return statements.map((statement, index) => {
    const { name, place, rate_bits_per_second } = statement.fact;
    return {
      kind: 'uplink',
      index,
      name,
      statement,
      place: place === undefined ? undefined : names.find(places, place, 'place', statement, 'places/0'),
      stated_bits_per_second: rate_bits_per_second,
      measured_bits_per_second: undefined,
    };
  });
}
