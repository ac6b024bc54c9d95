import type { Statement } from '../plan/plan.ts';
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
  readonly #duplicates = new Map<Space, Map<string, { first: Statement; others: Statement[] }>>();
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
