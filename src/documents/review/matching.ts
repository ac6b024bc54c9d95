import type { Fact } from '../../plan/facts.ts';
import type { Plan, Statement } from '../../plan/plan.ts';

/** A statement of the old plan and the one that it became; one side undefined: it is gone, or new. */
export interface Pair {
  readonly before: Statement | undefined;
  readonly after: Statement | undefined;
}

/** Which statement of one plan became which of the other, and which names stand for which. */
export interface Matching {
  readonly pairs: readonly Pair[];
  /** The new name of a thing of the old plan: itself where nothing says otherwise. */
  newName(old: string): string;
}

/** Features that more things share than this tell nothing of which is which. */
const TELLING = 40;

/** Two things are one that was renamed when more than half of all that is said of them is the same. */
const ALIKE = 0.5;

/**
 * Pairs the statements of two plans: by name, then, for what is left, by likeness: what has another name but stands in
 * the same place, is of the same kit and is plugged to the same things was renamed, not removed and added.
 */
export function matchPlans(before: Plan, after: Plan): Matching {
  const old = ownStatements(before);
  const fresh = ownStatements(after);
  const names = new Map<string, string>();
  const newName = (name: string) => names.get(name) ?? name;
  const pairs: Pair[] = [];

  // Twice: links are told apart by their ends, and those are known once the nodes are paired.
  for (const kinds of [namedKinds, endedKinds]) {
    const oldOfKinds = old.filter(({ fact }) => kinds.has(fact.kind));
    const newOfKinds = fresh.filter(({ fact }) => kinds.has(fact.kind));
    const byKey = new Map<string, Statement[]>();
    for (const statement of newOfKinds) append(byKey, keyOf(statement.fact, identity), statement);
    const left: Statement[] = [];
    for (const statement of oldOfKinds) {
      const found = byKey.get(keyOf(statement.fact, newName))?.shift();
      if (found) pairs.push({ before: statement, after: found });
      else left.push(statement);
    }
    const unpaired = [...byKey.values()].flat();
    const context = { old: contextOf(old), fresh: contextOf(fresh) };
    for (const { before: was, after: is } of alike(left, unpaired, context, newName)) {
      pairs.push({ before: was, after: is });
      const [a, b] = [nameOf(was!.fact), nameOf(is!.fact)];
      if (a !== undefined && b !== undefined) names.set(a, b);
    }
    const done = new Set(pairs.flatMap(({ before: was, after: is }) => [was, is]));
    for (const statement of left)
      if (!done.has(statement)) pairs.push({ before: statement, after: undefined });
    for (const statement of unpaired)
      if (!done.has(statement)) pairs.push({ before: undefined, after: statement });
  }
  return { pairs: inOrder(pairs, old, fresh), newName };
}

const namedKinds: ReadonlySet<Fact['kind']> = new Set([
  'plan',
  'place',
  'circuit',
  'kit',
  'cable',
  'interface',
  'node',
  'source',
  'destination',
  'segment',
  'uplink',
  'case',
]);
const endedKinds: ReadonlySet<Fact['kind']> = new Set(['link', 'run', 'feed', 'black', 'stock']);

function ownStatements(plan: Plan): Statement[] {
  return plan.statements.filter(({ source }) => !plan.libraryFiles.has(source.file));
}

function identity(name: string): string {
  return name;
}

function nameOf(fact: Fact): string | undefined {
  return 'name' in fact ? fact.name : undefined;
}

/** What a statement is known by: its name, or its ends. */
function keyOf(fact: Fact, newName: (name: string) => string): string {
  switch (fact.kind) {
    case 'plan':
      return 'plan';
    case 'link':
      if (fact.name !== undefined) return `link ${newName(fact.name)}`;
      return `link ${newName(fact.from.node)}.${fact.from.port} ${newName(fact.to.node)}.${fact.to.port}`;
    case 'run':
      return `run ${[newName(fact.from), newName(fact.to)].sort().join(' ')}`;
    case 'feed':
      return `feed ${newName(fact.source)} ${fact.targets.map(({ thing, port }) => `${newName(thing)}.${port ?? ''}`).join()} ${fact.segments.map(newName).join()}`;
    case 'black':
      return `black ${fact.targets.map(({ thing, port }) => `${newName(thing)}.${port ?? ''}`).join()} ${fact.segments.map(newName).join()}`;
    case 'stock':
      return `stock ${newName(fact.cable)} ${fact.length_m}`;
    default:
      return `${fact.kind} ${newName(nameOf(fact) ?? '')}`;
  }
}

/** For each node, source and destination what is plugged into it, as `port peer`. */
type Context = ReadonlyMap<string, readonly string[]>;

function contextOf(statements: readonly Statement[]): Context {
  const plugged = new Map<string, string[]>();
  for (const { fact } of statements) {
    if (fact.kind === 'link') {
      append(plugged, fact.from.node, `${fact.from.port} ${fact.to.node}`);
      append(plugged, fact.to.node, `${fact.to.port} ${fact.from.node}`);
    } else if (fact.kind === 'source' || fact.kind === 'destination') {
      const end = fact.kind === 'source' ? (fact.into ?? fact.from) : fact.from;
      if (end) append(plugged, end.node, `${end.port} ${fact.name}`);
    }
  }
  return plugged;
}

/** All that is said of a thing but its name, in pieces that can be counted. */
function featuresOf(
  { fact, label }: Statement,
  context: Context,
  newName: (name: string) => string,
): Set<string> {
  const features = new Set<string>();
  if (label !== undefined) features.add(`label ${label}`);
  for (const [key, value] of Object.entries(fact)) {
    if (key === 'name' || key === 'kind') continue;
    features.add(
      `${key} ${JSON.stringify(value, (_, part: unknown) => (typeof part === 'string' ? newName(part) : part))}`,
    );
  }
  for (const plugged of context.get(nameOf(fact) ?? '') ?? []) {
    const [port = '', peer = ''] = plugged.split(' ');
    features.add(`plugged ${port} ${newName(peer)}`);
  }
  return features;
}

/** The pairs of things that are alike, the most alike first; each thing once. */
function alike(
  left: readonly Statement[],
  unpaired: readonly Statement[],
  context: { old: Context; fresh: Context },
  newName: (name: string) => string,
): Pair[] {
  const featuresOfNew = unpaired.map((statement) => featuresOf(statement, context.fresh, identity));
  const having = new Map<string, number[]>();
  for (const [i, features] of featuresOfNew.entries())
    for (const feature of features) append(having, `${unpaired[i]!.fact.kind} ${feature}`, i);
  const scored: { was: number; is: number; score: number }[] = [];
  for (const [was, statement] of left.entries()) {
    const features = featuresOf(statement, context.old, newName);
    const shared = new Map<number, number>();
    for (const feature of features) {
      const holders = having.get(`${statement.fact.kind} ${feature}`) ?? [];
      if (holders.length > TELLING) continue;
      for (const is of holders) shared.set(is, (shared.get(is) ?? 0) + 1);
    }
    for (const [is, count] of shared) {
      const score = count / (features.size + featuresOfNew[is]!.size - count);
      if (score > ALIKE) scored.push({ was, is, score });
    }
  }
  scored.sort((a, b) => b.score - a.score || a.was - b.was || a.is - b.is);
  const taken = { was: new Set<number>(), is: new Set<number>() };
  const pairs: Pair[] = [];
  for (const { was, is } of scored) {
    if (taken.was.has(was) || taken.is.has(is)) continue;
    taken.was.add(was);
    taken.is.add(is);
    pairs.push({ before: left[was], after: unpaired[is] });
  }
  return pairs;
}

/** In order of the new plan; what is gone stands where it stood in the old one, before what follows it there. */
function inOrder(pairs: readonly Pair[], old: readonly Statement[], fresh: readonly Statement[]): Pair[] {
  const oldAt = new Map(old.map((statement, i) => [statement, i]));
  const newAt = new Map(fresh.map((statement, i) => [statement, i]));
  const byOld = [...pairs]
    .filter((pair) => pair.before)
    .sort((a, b) => oldAt.get(a.before!)! - oldAt.get(b.before!)!);
  const rank = new Map<Pair, number>();
  let last = -1;
  for (const pair of byOld) {
    if (pair.after) last = newAt.get(pair.after)!;
    else rank.set(pair, last + 0.5);
  }
  return [...pairs].sort(
    (a, b) => (rank.get(a) ?? newAt.get(a.after!)!) - (rank.get(b) ?? newAt.get(b.after!)!),
  );
}

function append<K, V>(map: Map<K, V[]>, key: K, value: V): void {
  const list = map.get(key);
  if (list) list.push(value);
  else map.set(key, [value]);
}
