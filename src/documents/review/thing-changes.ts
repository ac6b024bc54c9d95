import type { LengthUnits } from '../../physics/display.ts';
import type { Fact } from '../../plan/facts.ts';
import type { Statement } from '../../plan/plan.ts';
import { differencesOf } from './differences.ts';
import type { Matching, Pair } from './matching.ts';
import type { ReviewPlace, ThingChange, ThingKind } from './review.ts';

/** Properties whose change means that something stands or is plugged elsewhere. */
const moves: ReadonlySet<string> = new Set(['place', 'plugged into', 'from', 'to']);

/** What was added, removed, renamed, moved or changed, in order of the new plan. */
export function thingChangesOf({ pairs, newName }: Matching, units: LengthUnits): ThingChange[] {
  return pairs.flatMap((pair) => changeOf(pair, newName, units) ?? []);
}

function changeOf(
  { before, after }: Pair,
  newName: (name: string) => string,
  units: LengthUnits,
): ThingChange | undefined {
  const statement = after ?? before!;
  const kind = statement.fact.kind as ThingKind;
  const common = { kind, name: titleOf(statement.fact), place: placeOf(statement, after ? 'new' : 'old') };
  if (!before || !after)
    return { change: after ? 'added' : 'removed', ...common, was: undefined, differences: [] };
  const differences = differencesOf(before, after, newName, units);
  const was = titleOf(before.fact);
  const renamed = 'name' in before.fact && was !== common.name && isOwnName(before.fact);
  if (differences.length === 0 && !renamed) return undefined;
  const moved = differences.some(({ what }) => moves.has(what));
  return {
    change: renamed ? 'renamed' : moved ? 'moved' : 'changed',
    ...common,
    was: renamed ? was : undefined,
    differences,
  };
}

function isOwnName(fact: Fact): boolean {
  return 'name' in fact && fact.name !== undefined;
}

/** What a person calls it. */
function titleOf(fact: Fact): string {
  switch (fact.kind) {
    case 'link':
      return (
        fact.name ??
        `${fact.from.node}.${fact.from.port} ${fact.bothWays ? '<->' : '->'} ${fact.to.node}.${fact.to.port}`
      );
    case 'run':
      return `${fact.from} <-> ${fact.to}`;
    case 'feed':
      return `${fact.source} -> ${fact.targets.map(targetText).join(', ')}${fact.segments.length > 0 ? ` in ${fact.segments.join(', ')}` : ''}`;
    case 'black':
      return `${fact.targets.map(targetText).join(', ')} in ${fact.segments.join(', ')}`;
    case 'stock':
      return `${fact.cable}, ${fact.count ?? 'any number'} of ${fact.length_m} m`;
    case 'plan':
      return fact.title;
    default:
      return 'name' in fact ? (fact.name ?? '') : fact.kind;
  }
}

function targetText({ thing, port }: { readonly thing: string; readonly port?: string }): string {
  return port === undefined ? thing : `${thing}.${port}`;
}

export function placeOf(statement: Statement, side: ReviewPlace['side']): ReviewPlace {
  return { side, file: statement.source.file, range: statement.source.range('name') };
}
