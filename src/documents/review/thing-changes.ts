import type { LengthUnits } from '../../physics/display.ts';
import type { Statement } from '../../plan/plan.ts';
import { differencesOf } from './differences.ts';
import { nameOfFact } from './items.ts';
import type { Matching, Pair } from './matching.ts';
import type { Renames } from './renames.ts';
import type { ReviewPlace, ThingChange, ThingKind } from './review.ts';

/** Properties whose change means that something stands or is plugged elsewhere. */
const moves: ReadonlySet<string> = new Set(['place', 'plugged into', 'from', 'to']);

/** What was added, removed, renamed, moved or changed, in order of the new plan. */
export function thingChangesOf({ pairs, renames }: Matching, units: LengthUnits): ThingChange[] {
  return pairs.flatMap((pair) => changeOf(pair, renames, units) ?? []);
}

function changeOf({ before, after }: Pair, renames: Renames, units: LengthUnits): ThingChange | undefined {
  const item = (after ?? before)!;
  const name = nameOfFact(item.fact);
  const common = {
    kind: item.fact.kind as ThingKind,
    name,
    title: item.statement.label ?? name,
    place: placeOf(item.statement, after ? 'new' : 'old', item.part),
  };
  if (!before || !after)
    return { change: after ? 'added' : 'removed', ...common, was: undefined, differences: [] };
  const differences = differencesOf(before, after, renames, units);
  const was = nameOfFact(before.fact);
  const renamed = (isNamed(before) || isNamed(after)) && was !== name;
  if (differences.length === 0 && !renamed) return undefined;
  const moved = differences.some(({ what }) => moves.has(what));
  return {
    change: renamed ? 'renamed' : moved ? 'moved' : 'changed',
    ...common,
    was: renamed ? was : undefined,
    differences,
  };
}

function isNamed({ fact }: NonNullable<Pair['before']>): boolean {
  return 'name' in fact && fact.name !== undefined;
}

export function placeOf(statement: Statement, side: ReviewPlace['side'], part = 'name'): ReviewPlace {
  return { side, file: statement.source.file, range: statement.source.range(part) };
}
