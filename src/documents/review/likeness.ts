import { add } from '../../analysis/lists.ts';
import type { Fact } from '../../plan/facts.ts';
import type { Item } from './items.ts';
import type { Renames } from './renames.ts';

/** What more things have in common than this tells nothing of which is which. */
const TELLING = 40;

/** Two things are one that was renamed when more than half of all that is said of them is the same. */
const ALIKE = 0.5;

/** Another model of box is often much like the one before, and must not pass for the same under a new name. */
const KINDS_ALIKE = 0.8;
const kinds: ReadonlySet<Fact['kind']> = new Set(['kit', 'cable', 'interface']);

/** Words for people say more than any other property: nobody writes the same label on two boxes. */
const LABEL_WEIGHT = 2;

const nameless: ReadonlySet<Fact['kind']> = new Set([
  'plan',
  'run',
  'feed',
  'black',
  'stock',
  'accept',
  'measured',
  'proved',
]);

/**
 * Which things that are gone became which that are new: the most alike first, each once, only of the same kind.
 *
 * @param old All of the old plan, for what is plugged into what.
 */
export function likeliestPairs(
  left: readonly Item[],
  free: readonly Item[],
  old: readonly Item[],
  fresh: readonly Item[],
  renames: Renames,
): [was: Item, is: Item][] {
  const gone = left.filter(isNamed);
  const come = free.filter(isNamed);
  if (gone.length === 0 || come.length === 0) return [];
  const oldPlugs = plugsOf(old, (fact) => renames.fact(fact));
  const newPlugs = plugsOf(fresh, (fact) => fact);
  const featuresOfNew = come.map((item) => featuresOf(item, item.fact, newPlugs.get(nameOf(item.fact))));
  const holders = new Map<string, number[]>();
  for (const [i, features] of featuresOfNew.entries()) {
    for (const feature of features.keys()) add(holders, feature, i);
  }
  const scored: { was: number; is: number; score: number }[] = [];
  for (const [was, item] of gone.entries()) {
    const renamed = renames.fact(item.fact);
    const features = featuresOf(item, renamed, oldPlugs.get(nameOf(renamed)));
    const candidates = new Set<number>();
    for (const feature of features.keys()) {
      const having = holders.get(feature) ?? [];
      if (having.length <= TELLING) for (const i of having) candidates.add(i);
    }
    for (const is of candidates) {
      const score = likeness(features, featuresOfNew[is]!);
      if (score > (kinds.has(item.fact.kind) ? KINDS_ALIKE : ALIKE)) scored.push({ was, is, score });
    }
  }
  scored.sort((a, b) => b.score - a.score || a.was - b.was || a.is - b.is);
  const taken = { was: new Set<number>(), is: new Set<number>() };
  return scored.flatMap(({ was, is }): [Item, Item][] => {
    if (taken.was.has(was) || taken.is.has(is)) return [];
    taken.was.add(was);
    taken.is.add(is);
    return [[gone[was]!, come[is]!]];
  });
}

function isNamed({ fact }: Item): boolean {
  return !nameless.has(fact.kind) && 'name' in fact && fact.name !== undefined;
}

function nameOf(fact: Fact): string {
  return 'name' in fact ? (fact.name ?? '') : '';
}

/** Shared weight of all weight. */
function likeness(a: ReadonlyMap<string, number>, b: ReadonlyMap<string, number>): number {
  let shared = 0;
  let all = 0;
  for (const [feature, weight] of a) {
    all += weight;
    if (b.has(feature)) shared += weight;
  }
  for (const [feature, weight] of b) if (!a.has(feature)) all += weight;
  return all === 0 ? 0 : shared / all;
}

/** All that is said of a thing but its name, in pieces that can be counted, each with the kind of thing it is said of. */
function featuresOf(
  { statement }: Item,
  fact: Fact,
  plugs: readonly string[] = [],
): ReadonlyMap<string, number> {
  const features = new Map<string, number>();
  const { kind } = fact;
  if (statement.label !== undefined) features.set(`${kind} label ${statement.label}`, LABEL_WEIGHT);
  for (const [key, value] of Object.entries(fact)) {
    if (key === 'name' || key === 'kind' || saysNothing(value)) continue;
    if (Array.isArray(value))
      for (const item of value) features.set(`${kind} ${key} ${JSON.stringify(item)}`, 1);
    else features.set(`${kind} ${key} ${JSON.stringify(value)}`, 1);
  }
  for (const plug of plugs) features.set(`${kind} plugged ${plug}`, 1);
  return features;
}

function saysNothing(value: unknown): boolean {
  return value === undefined || value === false || (Array.isArray(value) && value.length === 0);
}

/** For each node what is plugged into it, as `port other.port`, in the names of the new plan. */
function plugsOf(items: readonly Item[], inNewNames: (fact: Fact) => Fact): Map<string, string[]> {
  const plugs = new Map<string, string[]>();
  for (const item of items) {
    if (item.fact.kind === 'link') {
      const { from, to } = inNewNames(item.fact) as typeof item.fact;
      add(plugs, from.node, `${from.port} ${to.node}.${to.port}`);
      add(plugs, to.node, `${to.port} ${from.node}.${from.port}`);
    } else if (item.fact.kind === 'source' || item.fact.kind === 'destination') {
      const fact = inNewNames(item.fact) as typeof item.fact;
      const end = fact.kind === 'source' ? (fact.into ?? fact.from) : fact.from;
      if (end) add(plugs, end.node, `${end.port} ${fact.name}`);
    }
  }
  return plugs;
}
