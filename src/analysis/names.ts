import type { Statement } from '../plan/plan.ts';
import { swap } from './lists.ts';
import type {
  DuplicateName,
  NameReport,
  Node,
  Space,
  UnknownName,
  UnknownPort,
  Use,
  Wanted,
} from './model.ts';

/** What a name stands for; the statement that declares it. */
interface Declared {
  readonly statement: Statement;
}

/** Keeps which names are declared twice and which are spoken of in vain, while the plan is put together. */
export class NameBook {
  readonly #duplicates = new Map<Space, Map<string, { first: Statement; readonly others: Statement[] }>>();
  readonly #unknown = new Map<Wanted, Map<string, { uses: Use[]; declaredAs: Statement | undefined }>>();
  readonly #unknownPorts = new Map<Node, Map<string, Use[]>>();

  /** Enters a name into its space. False when it stands for something already: the first declaration counts. */
  declare<T extends Declared>(space: Space, names: Map<string, T>, name: string, thing: T): boolean {
    const known = names.get(name);
    if (known === undefined) {
      names.set(name, thing);
      return true;
    }
    const ofSpace = inner(this.#duplicates, space, () => new Map());
    inner(ofSpace, name, () => ({ first: known.statement, others: [] })).others.push(thing.statement);
    return false;
  }

  /** Looks a name up that is used in `part`; tells it when there is none. */
  find<T extends Declared>(
    names: ReadonlyMap<string, T>,
    name: string,
    wanted: Wanted,
    statement: Statement,
    part: string,
  ): T | undefined {
    const found = names.get(name);
    if (found === undefined) this.tellUnknown(wanted, name, statement, part, undefined);
    return found;
  }

  tellUnknown(
    wanted: Wanted,
    name: string,
    statement: Statement,
    part: string,
    declaredAs: Statement | undefined,
  ): void {
    const ofKind = inner(this.#unknown, wanted, () => new Map());
    inner(ofKind, name, () => ({ uses: [] as Use[], declaredAs })).uses.push({ statement, part });
  }

  tellUnknownPort(node: Node, name: string, statement: Statement, part: string): void {
    const ofNode = inner(this.#unknownPorts, node, () => new Map<string, Use[]>());
    inner(ofNode, name, () => []).push({ statement, part });
  }

  /** A statement stands in the place of another, with the same names in the same parts. */
  replace(before: Statement, now: Statement): void {
    for (const names of this.#duplicates.values()) {
      for (const entry of names.values()) {
        if (entry.first === before) entry.first = now;
        swap(entry.others, before, now);
      }
    }
    for (const names of this.#unknown.values()) {
      for (const entry of names.values()) {
        if (entry.declaredAs === before) entry.declaredAs = now;
        swapUses(entry.uses, before, now);
      }
    }
    for (const names of this.#unknownPorts.values()) {
      for (const uses of names.values()) swapUses(uses, before, now);
    }
  }

  /** Takes back what was told of a name that a statement used in vain. */
  forget(wanted: Wanted, name: string, statement: Statement, part: string): void {
    const names = this.#unknown.get(wanted);
    const entry = names?.get(name);
    if (!names || !entry) return;
    entry.uses = entry.uses.filter((use) => use.statement !== statement || use.part !== part);
    if (entry.uses.length === 0) names.delete(name);
  }

  /** Takes back everything that was told of a statement's names. */
  forgetAll(statement: Statement): void {
    const isOther = (use: Use) => use.statement !== statement;
    for (const names of this.#unknown.values()) {
      for (const [name, entry] of names) {
        entry.uses = entry.uses.filter(isOther);
        if (entry.uses.length === 0) names.delete(name);
      }
    }
    for (const names of this.#unknownPorts.values()) {
      for (const [name, uses] of names) {
        const others = uses.filter(isOther);
        if (others.length === 0) names.delete(name);
        else names.set(name, others);
      }
    }
  }

  report(): NameReport {
    const duplicates: DuplicateName[] = [];
    for (const [space, names] of this.#duplicates) {
      for (const [name, entry] of names) duplicates.push({ space, name, ...entry });
    }
    const unknown: UnknownName[] = [];
    for (const [wanted, names] of this.#unknown) {
      for (const [name, entry] of names) unknown.push({ wanted, name, ...entry });
    }
    const unknownPorts: UnknownPort[] = [];
    for (const [node, names] of this.#unknownPorts) {
      for (const [name, uses] of names) unknownPorts.push({ node, name, uses });
    }
    return { duplicates, unknown, unknownPorts };
  }
}

function inner<K, V>(map: Map<K, V>, key: K, make: () => V): V {
  let value = map.get(key);
  if (value === undefined) {
    value = make();
    map.set(key, value);
  }
  return value;
}

function swapUses(uses: Use[], before: Statement, now: Statement): void {
  for (const [i, { statement, part }] of uses.entries())
    if (statement === before) uses[i] = { statement: now, part };
}

/** What several books have told, each unknown name once, in order of statements. */
export function merged(reports: readonly NameReport[], statements: readonly Statement[]): NameReport {
  const unknown = joined(
    reports.flatMap((report) => report.unknown),
    ({ wanted, name }) => `${wanted} ${name}`,
  );
  const unknownPorts = joined(
    reports.flatMap((report) => report.unknownPorts),
    ({ node, name }) => `${node.name}.${name}`,
  );
  const order = ordersOf([...unknown, ...unknownPorts], statements);
  return {
    duplicates: reports.flatMap(({ duplicates }) => duplicates),
    unknown: inOrder(unknown, order),
    unknownPorts: inOrder(unknownPorts, order),
  };
}

function joined<T extends Used>(told: readonly T[], keyOf: (one: T) => string): T[] {
  const byKey = new Map<string, T>();
  for (const one of told) {
    const known = byKey.get(keyOf(one));
    byKey.set(keyOf(one), known ? { ...known, uses: [...known.uses, ...one.uses] } : one);
  }
  return [...byKey.values()];
}

interface Used {
  readonly uses: readonly Use[];
}

/** The places of the statements that use names in vain. */
function ordersOf(
  unknown: readonly Used[],
  statements: readonly Statement[],
): ReadonlyMap<Statement, number> {
  const orders = new Map<Statement, number>();
  const using = new Set(unknown.flatMap(({ uses }) => uses.map(({ statement }) => statement)));
  if (using.size === 0) return orders;
  statements.forEach((statement, i) => {
    if (using.has(statement)) orders.set(statement, i);
  });
  return orders;
}

/** By the first use of each, in order of statements and then of the text. */
function inOrder<T extends Used>(unknown: readonly T[], orders: ReadonlyMap<Statement, number>): T[] {
  const orderOf = ({ statement }: Use) => orders.get(statement) ?? -1;
  return unknown
    .map((one) => ({ ...one, uses: [...one.uses].sort((a, b) => orderOf(a) - orderOf(b)) }))
    .sort((a, b) => orderOf(a.uses[0]!) - orderOf(b.uses[0]!) || compare(a.uses[0]!, b.uses[0]!));
}

/** Which of two parts of one statement is written first. */
function compare(a: Use, b: Use): number {
  const [one, other] = [a.statement.source.range(a.part), b.statement.source.range(b.part)];
  return one.line - other.line || one.column - other.column;
}
