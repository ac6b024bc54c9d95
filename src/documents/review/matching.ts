import type { Fact } from '../../plan/facts.ts';
import type { Plan } from '../../plan/plan.ts';
import { type Item, itemsOf, nameOfFact } from './items.ts';
import { likeliestPairs } from './likeness.ts';
import { portsRenamed } from './port-names.ts';
import { Renames, spaceOfKind } from './renames.ts';

/** What the old plan says and what became of it; one side undefined: it is gone, or new. */
export interface Pair {
  readonly before: Item | undefined;
  readonly after: Item | undefined;
}

/** What of one plan became what of the other, and which names stand for which. */
export interface Matching {
  readonly pairs: readonly Pair[];
  readonly renames: Renames;
}

/** In this order, because the later speak of the earlier by name. */
const rounds: readonly (readonly Fact['kind'][])[] = [
  ['plan', 'place', 'cable', 'interface', 'segment', 'uplink'],
  ['kit', 'circuit'],
  ['node', 'source', 'destination'],
  ['link', 'run', 'feed', 'black', 'stock', 'case', 'accept', 'measured', 'proved'],
];

/** A renamed thing may be told by another renamed one, so likeness is asked again until it finds no more. */
const MOST_PASSES = 4;

/**
 * Pairs what two plans say: by name or ends, then, for what is left, by likeness: what has another name but stands in
 * the same place, is of the same kit and is plugged to the same things was renamed, not removed and added.
 */
export function matchPlans(before: Plan, after: Plan): Matching {
  const [old, fresh] = [itemsOf(before), itemsOf(after)];
  const matcher = new Matcher(old, fresh);
  for (const kinds of rounds) matcher.match(new Set(kinds));
  return { pairs: inOrder(matcher.pairs(), old, fresh), renames: matcher.renames };
}

class Matcher {
  readonly renames = new Renames();
  readonly #old: readonly Item[];
  readonly #fresh: readonly Item[];
  readonly #becomes = new Map<Item, Item>();
  readonly #taken = new Set<Item>();
  /** By the old name of the kit. */
  readonly #portsOfKit = new Map<string, ReadonlyMap<string, string>>();

  constructor(old: readonly Item[], fresh: readonly Item[]) {
    this.#old = old;
    this.#fresh = fresh;
  }

  match(kinds: ReadonlySet<Fact['kind']>): void {
    for (const keyOf of keys) this.#byKey(kinds, keyOf);
    for (let pass = 0; pass < MOST_PASSES; pass++) {
      const found = likeliestPairs(
        this.#left(kinds),
        this.#free(kinds),
        this.#old,
        this.#fresh,
        this.renames,
      );
      for (const [was, is] of found) this.#pair(was, is);
      if (found.length === 0) break;
    }
    for (const keyOf of looseKeys) this.#byKey(kinds, keyOf);
  }

  pairs(): Pair[] {
    return [
      ...this.#old.map((was): Pair => ({ before: was, after: this.#becomes.get(was) })),
      ...this.#fresh
        .filter((is) => !this.#taken.has(is))
        .map((is): Pair => ({ before: undefined, after: is })),
    ];
  }

  #left(kinds: ReadonlySet<Fact['kind']>): Item[] {
    return this.#old.filter((item) => kinds.has(item.fact.kind) && !this.#becomes.has(item));
  }

  #free(kinds: ReadonlySet<Fact['kind']>): Item[] {
    return this.#fresh.filter((item) => kinds.has(item.fact.kind) && !this.#taken.has(item));
  }

  #byKey(kinds: ReadonlySet<Fact['kind']>, keyOf: Key): void {
    const waiting = new Map<string, Item[]>();
    for (const is of this.#free(kinds)) {
      const key = keyOf(is.fact);
      if (key === undefined) continue;
      const same = waiting.get(key);
      if (same) same.push(is);
      else waiting.set(key, [is]);
    }
    for (const same of waiting.values()) same.reverse();
    for (const was of this.#left(kinds)) {
      const key = keyOf(this.renames.fact(was.fact));
      const is = key === undefined ? undefined : waiting.get(key)?.pop();
      if (is) this.#pair(was, is);
    }
  }

  #pair(was: Item, is: Item): void {
    this.#becomes.set(was, is);
    this.#taken.add(is);
    const space = spaceOfKind(is.fact.kind);
    const [a, b] = [ownName(was.fact), ownName(is.fact)];
    if (space && a !== undefined && b !== undefined) this.renames.add(space, a, b);
    if (was.fact.kind === 'kit' && is.fact.kind === 'kit')
      this.#portsOfKit.set(was.fact.name, portsRenamed(was.fact, is.fact));
    if (was.fact.kind === 'node' && is.fact.kind === 'node') {
      const ports = this.#portsOfKit.get(was.fact.kit ?? '');
      if (ports) this.renames.addPorts(was.fact.name, ports);
    }
  }
}

/** A link without a name is known to findings and loads by its ends. */
function ownName(fact: Fact): string | undefined {
  if (fact.kind === 'link') return fact.name ?? linkName(fact);
  return 'name' in fact ? fact.name : undefined;
}

function linkName({ from, to }: Extract<Fact, { kind: 'link' }>): string {
  return `${from.node}.${from.port}>${to.node}.${to.port}`;
}

/** What something is known by in the names of the new plan; undefined: not by this. */
type Key = (fact: Fact) => string | undefined;

/** First by name, or by what a thing without a name is at all; then a cable by its two sockets, whatever it is called. */
const keys: readonly Key[] = [
  (fact) => {
    switch (fact.kind) {
      case 'plan':
        return 'plan';
      case 'link':
        return fact.name === undefined ? `link ${linkName(fact)}` : `link ${fact.name}`;
      case 'run':
        return `run ${[fact.from, fact.to].sort().join(' ')}`;
      case 'stock':
        return `stock ${fact.cable} ${fact.length_m} ${fact.count === undefined}`;
      default:
        return `${fact.kind} ${nameOfFact(fact)}`;
    }
  },
  (fact) => (fact.kind === 'link' ? [socket(fact.from), socket(fact.to)].sort().join(' ') : undefined),
];

/** A cable that stays plugged at one end was moved at the other. */
const looseKeys: readonly Key[] = [
  (fact) => (fact.kind === 'link' ? `${socket(fact.from)} ${fact.cable}` : undefined),
  (fact) => (fact.kind === 'link' ? `${socket(fact.to)} ${fact.cable}` : undefined),
];

function socket({ node, port }: { readonly node: string; readonly port: string }): string {
  return `${node}.${port}`;
}

/** In order of the new plan; what is gone stands where it stood in the old one, before what follows it there. */
function inOrder(pairs: readonly Pair[], old: readonly Item[], fresh: readonly Item[]): Pair[] {
  const oldAt = new Map(old.map((item, i) => [item, i]));
  const newAt = new Map(fresh.map((item, i) => [item, i]));
  const rank = new Map<Pair, number>();
  let last = -1;
  const byOld = pairs
    .filter((pair) => pair.before)
    .sort((a, b) => oldAt.get(a.before!)! - oldAt.get(b.before!)!);
  for (const pair of byOld) {
    if (pair.after) last = newAt.get(pair.after)!;
    else rank.set(pair, last + 0.5);
  }
  return [...pairs].sort(
    (a, b) => (rank.get(a) ?? newAt.get(a.after!)!) - (rank.get(b) ?? newAt.get(b.after!)!),
  );
}
