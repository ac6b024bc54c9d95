import type { JoinFact, KitFact, PortGroupFact, PortNamesFact } from '../plan/facts.ts';
import type { StatementOf } from '../plan/plan.ts';
import type { Building } from './building.ts';
import type { CarriedKinds } from './carried.ts';
import type { FormatTable } from './formats.ts';
import type { Interface, Kit, KitFault, KitPort, PortRole } from './model.ts';
import type { NameBook } from './names.ts';

/** As many sockets as a range may stand for; more is a slip of the pen. */
const MOST_PORTS_A_RANGE = 1024;
/** As many as one kit may have. */
const MOST_PORTS = 4096;

/** The kits by name, their ports expanded from ranges. */
export function kitsOf(
  statements: readonly StatementOf<'kit'>[],
  interfaces: ReadonlyMap<string, Interface>,
  kinds: CarriedKinds,
  formats: FormatTable,
  names: NameBook,
): Map<string, Kit> {
  const byName = new Map<string, Kit>();
  for (const [index, statement] of statements.entries()) {
    const { fact } = statement;
    const builder = new KitBuilder(statement, interfaces, formats, names);
    const kit: Kit = {
      index,
      name: fact.name,
      statement,
      ports: builder.ports,
      portsByName: builder.byName,
      carries: fact.carries === undefined ? undefined : kinds.of(fact.carries),
      forwards: fact.forwards,
      routes: fact.routes,
      delay: fact.delay,
      faults: builder.faults,
    };
    // A second declaration of the name is read all the same, so that its own mistakes are told.
    names.declare('kits', byName, fact.name, kit);
  }
  return byName;
}

class KitBuilder {
  readonly ports: Building<KitPort>[] = [];
  readonly byName = new Map<string, Building<KitPort>>();
  readonly faults: KitFault[] = [];
  readonly #statement: StatementOf<'kit'>;
  readonly #interfaces: ReadonlyMap<string, Interface>;
  readonly #formats: FormatTable;
  readonly #names: NameBook;

  constructor(
    statement: StatementOf<'kit'>,
    interfaces: ReadonlyMap<string, Interface>,
    formats: FormatTable,
    names: NameBook,
  ) {
    this.#statement = statement;
    this.#interfaces = interfaces;
    this.#formats = formats;
    this.#names = names;
    const fact: KitFact = statement.fact;
    const groups = fact.groups.map((group, i) => this.#addGroup(group, `groups/${i}`));
    fact.joins.forEach((join, i) => {
      this.#addJoin(join, `joins/${i}`);
    });
    // Only now are all inputs known that an output may follow.
    fact.groups.forEach((group, i) => {
      if (group.follows) this.#follow(groups[i]!, group.follows, `groups/${i}`);
    });
  }

  #addGroup(group: PortGroupFact, part: string): Building<KitPort>[] {
    const face = this.#interface(group.interface, part);
    const gives = group.gives && this.#formats.stated(group.gives);
    return group.ports.flatMap((names, i) =>
      this.#expand(names, `${part}.ports/${i}`).flatMap((name) => {
        const port = this.#addPort(name, group.role, face, `${part}.ports/${i}`);
        if (port && gives) port.gives = gives;
        return port ?? [];
      }),
    );
  }

  #addJoin(join: JoinFact, part: string): void {
    const face = this.#interface(join.interface, part);
    const add = (names: PortNamesFact, side: string) =>
      this.#expand(names, `${part}.${side}`).map((name) =>
        this.#addPort(name, 'pass', face, `${part}.${side}`),
      );
    const front = add(join.front, 'front');
    const rear = add(join.rear, 'rear');
    if (front.length !== rear.length) {
      this.faults.push({ kind: 'join counts differ', name: join.front.name, part });
    }
    front.forEach((port, i) => {
      const other = rear[i];
      if (!port || !other) return;
      port.joined = other;
      other.joined = port;
    });
  }

  #addPort(
    name: string,
    role: PortRole,
    face: Interface | undefined,
    part: string,
  ): Building<KitPort> | undefined {
    if (this.byName.has(name)) {
      this.faults.push({ kind: 'port declared twice', name, part });
      return undefined;
    }
    const port: Building<KitPort> = {
      index: this.ports.length,
      name,
      role,
      interface: face,
      follows: undefined,
      joined: undefined,
      gives: undefined,
    };
    this.ports.push(port);
    this.byName.set(name, port);
    return port;
  }

  /** Outputs copy inputs one by one, or all the same one. */
  #follow(outputs: readonly Building<KitPort>[], follows: PortNamesFact, part: string): void {
    const inputs = this.#expand(follows, `${part}.follows/0`);
    if (inputs.length !== 1 && inputs.length !== outputs.length) {
      this.faults.push({ kind: 'follow counts differ', name: follows.name, part: `${part}.follows/0` });
    }
    outputs.forEach((output, i) => {
      const name = inputs.length === 1 ? inputs[0]! : inputs[i];
      if (name === undefined || output.role !== 'output') return;
      const input = this.byName.get(name);
      if (input?.role === 'input') output.follows = input;
      else {
        const kind = input === undefined ? 'follows nothing' : 'follows an output';
        this.faults.push({ kind, name, part: `${part}.follows/0` });
      }
    });
  }

  #interface(name: string | undefined, part: string): Interface | undefined {
    if (name === undefined) return undefined;
    return this.#names.find(this.#interfaces, name, 'interface', this.#statement, `${part}.interfaces/0`);
  }

  /** The names that a range stands for. */
  #expand({ name, low, high }: PortNamesFact, part: string): string[] {
    if (low === undefined || high === undefined) return [name];
    if (high < low) {
      this.faults.push({ kind: 'range backwards', name, part });
      return [];
    }
    const room = Math.min(MOST_PORTS_A_RANGE, MOST_PORTS - this.ports.length);
    if (high - low + 1 > room) this.faults.push({ kind: 'range too large', name, part });
    return Array.from({ length: Math.max(0, Math.min(high - low + 1, room)) }, (_, i) => `${name}${low + i}`);
  }
}
