import type { LengthUnits } from '../../physics/display.ts';
import type { EndFact, Fact } from '../../plan/facts.ts';
import { propertyName, valueText } from './fact-words.ts';
import type { Item } from './items.ts';
import type { Renames } from './renames.ts';
import type { Difference } from './review.ts';

/** What makes something known at all is no property of it. */
const identity: ReadonlySet<string> = new Set(['kind', 'name']);

/**
 * Property by property, what is said of a thing now and was not before. What only has another name is no difference; of
 * two lists only what is not in both is told.
 */
export function differencesOf(before: Item, after: Item, renames: Renames, units: LengthUnits): Difference[] {
  const differences: Difference[] = [];
  const [oldLabel, newLabel] = [before.statement.label, after.statement.label];
  if (oldLabel !== newLabel) differences.push({ what: 'label', before: oldLabel, after: newLabel });
  const [was, is] = [valuesOf(turnedLike(renames.fact(before.fact), after.fact)), valuesOf(after.fact)];
  for (const key of new Set([...was.keys(), ...is.keys()])) {
    const [old, fresh] = apart(was.get(key), is.get(key));
    const [oldText, newText] = [valueText(key, old, units, fresh), valueText(key, fresh, units, old)];
    if (JSON.stringify(old) === JSON.stringify(fresh) || (oldText === undefined && newText === undefined))
      continue;
    differences.push({ what: propertyName(key), before: oldText, after: newText });
  }
  return differences;
}

/** A run, or a cable both ways, that is written from its other end is the same. */
function turnedLike(old: Fact, fresh: Fact): Fact {
  if (old.kind === 'run' && fresh.kind === 'run' && old.from === fresh.to && old.to === fresh.from)
    return { ...old, from: old.to, to: old.from };
  if (old.kind !== 'link' || fresh.kind !== 'link' || !old.bothWays) return old;
  const turned = same(old.from, fresh.to) && same(old.to, fresh.from);
  return turned ? { ...old, from: old.to, to: old.from } : old;
}

function same(a: EndFact, b: EndFact): boolean {
  return a.node === b.node && a.port === b.port;
}

function valuesOf(fact: Fact): Map<string, unknown> {
  return new Map(Object.entries(fact).filter(([key]) => !identity.has(key)));
}

/** Two lists without what both have; where only their order differs, they are told whole. */
function apart(old: unknown, fresh: unknown): [unknown, unknown] {
  if (!Array.isArray(old) || !Array.isArray(fresh)) return [old, fresh];
  const [oldKeys, newKeys] = [old, fresh].map((list) => list.map((item) => JSON.stringify(item)));
  const [inOld, inNew] = [new Set(oldKeys), new Set(newKeys)];
  const left = old.filter((_, i) => !inNew.has(oldKeys![i]!));
  const come = fresh.filter((_, i) => !inOld.has(newKeys![i]!));
  return left.length === 0 && come.length === 0 ? [old, fresh] : [left, come];
}
