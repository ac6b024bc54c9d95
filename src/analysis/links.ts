import type { CableRunFact, EndFact } from '../plan/facts.ts';
import type { Statement } from '../plan/plan.ts';
import { append, type Building } from './building.ts';
import { circlesOf } from './circles.ts';
import type {
  Cable,
  Cycle,
  Destination,
  Interface,
  Link,
  LinkEnd,
  Node,
  Port,
  PortRole,
  Source,
  Thing,
} from './model.ts';
import type { NameBook } from './names.ts';
import type { PortTable } from './ports.ts';
import type { CableStatement } from './statements.ts';

/** What links are made from. */
export interface LinkSurroundings {
  readonly names: NameBook;
  readonly things: Map<string, Thing>;
  readonly cables: ReadonlyMap<string, Cable>;
  readonly interfaces: ReadonlyMap<string, Interface>;
  readonly ports: PortTable;
}

/** A link while it is put together, with what only its making needs. */
export interface RawLink extends Building<Link> {
  /** The interface that it pins. */
  pinned: Interface | undefined;
  shares: RawLink | undefined;
}

/** Links and the short forms of them, in order of statements, plugged into their ports. */
export class LinkMaker {
  readonly links: RawLink[] = [];
  readonly #around: LinkSurroundings;

  constructor(statements: readonly CableStatement[], around: LinkSurroundings, cycles: Cycle[]) {
    this.#around = around;
    for (const statement of statements) this.#read(statement);
    this.#relate(cycles);
  }

  #read(statement: CableStatement): void {
    const { fact } = statement;
    if (fact.kind === 'link') {
      const from = this.#end(fact.from, statement, 'from');
      const to = this.#end(fact.to, statement, 'to');
      const link = this.#add(statement, fact, fact.name, from, to, fact.bothWays);
      link.pinned = this.#interface(fact.interface, statement);
      if (fact.name !== undefined) this.#around.names.declare('things', this.#around.things, fact.name, link);
      return;
    }
    const thing = this.#around.things.get(fact.name);
    if (thing?.statement !== statement) return;
    if (thing.kind === 'source') this.#plugSource(thing as Building<Source>);
    if (thing.kind === 'destination') this.#plugDestination(thing as Building<Destination>);
  }

  #plugSource(source: Building<Source>): void {
    const { statement } = source;
    const { fact } = statement;
    const face = this.#interface(fact.interface, statement);
    if (fact.from) {
      source.from = this.#end(fact.from, statement, 'from/0').port;
      source.sendsByItself = source.from?.role === 'network';
    }
    if (!fact.into) return;
    const to = this.#end(fact.into, statement, 'into/0');
    const port = this.#around.ports.own(source, roleOpposite(to.port, face, 'output'), face);
    source.port = port;
    source.sendsByItself ||= port.role === 'network';
    source.link = this.#add(statement, fact, undefined, { text: source.name, port }, to, false);
  }

  #plugDestination(destination: Building<Destination>): void {
    const { statement } = destination;
    const { fact } = statement;
    const face = this.#interface(fact.interface, statement);
    if (!fact.from) return;
    const from = this.#end(fact.from, statement, 'from/0');
    const port = this.#around.ports.own(destination, roleOpposite(from.port, face, 'input'), face);
    destination.port = port;
    destination.receivesByItself = port.role === 'network';
    const to = { text: destination.name, port };
    destination.link = this.#add(statement, fact, undefined, from, to, false);
  }

  #end({ node, port }: EndFact, statement: Statement, part: string): LinkEnd {
    const found = this.#around.things.get(node);
    if (found?.kind !== 'node') {
      this.#around.names.tellUnknown('node', node, statement, `${part}.node`, found?.statement);
      return { text: `${node}.${port}`, port: undefined };
    }
    const known = this.#around.ports.of(found as Node, port, statement, `${part}.port`);
    return { text: known?.text ?? `${node}.${port}`, port: known };
  }

  #interface(name: string | undefined, statement: Statement): Interface | undefined {
    if (name === undefined) return undefined;
    const { names, interfaces } = this.#around;
    return names.find(interfaces, name, 'interface', statement, 'interfaces/0');
  }

  #add(
    statement: CableStatement,
    run: CableRunFact,
    name: string | undefined,
    from: LinkEnd,
    to: LinkEnd,
    bothWays: boolean,
  ): RawLink {
    const { names, cables } = this.#around;
    const link: RawLink = {
      kind: 'link',
      index: this.links.length,
      name: name ?? `${from.text}>${to.text}`,
      named: name !== undefined,
      statement,
      from,
      to,
      bothWays,
      network: false,
      carriesForward: false,
      carriesBackward: false,
      directionFault: undefined,
      cable:
        run.cable === undefined ? undefined : names.find(cables, run.cable, 'cable', statement, 'cables/0'),
      installed: run.installed,
      connections: run.connections,
      splices: run.splices,
      standbyFor: undefined,
      sheath: undefined as never,
      length: undefined as never,
      chain: undefined as never,
      pinned: undefined,
      shares: undefined,
    };
    link.sheath = link;
    this.links.push(link);
    if (from.port) append(from.port.links, link);
    if (to.port && to.port !== from.port) append(to.port.links, link);
    return link;
  }

  /** Standbys and shared sheaths, now that every link has its name. */
  #relate(cycles: Cycle[]): void {
    for (const link of this.links) {
      const { fact } = link.statement;
      if (fact.shares !== undefined) link.shares = this.#linkNamed(fact.shares, link.statement, 'shares/0');
      if (fact.kind === 'link' && fact.standbyFor !== undefined) {
        link.standbyFor = this.#linkNamed(fact.standbyFor, link.statement, 'standbyFor/0');
      }
    }
    for (const circle of circlesOf(this.links, (link) => link.standbyFor as RawLink | undefined)) {
      cycles.push({ kind: 'standby for', statements: circle.map(({ statement }) => statement) });
      for (const link of circle) link.standbyFor = undefined;
    }
    for (const circle of circlesOf(this.links, (link) => link.shares)) {
      cycles.push({ kind: 'shares', statements: circle.map(({ statement }) => statement) });
      for (const link of circle) link.shares = undefined;
    }
    for (const link of this.links) if (link.shares) link.sheath = sheathOf(link);
  }

  #linkNamed(name: string, statement: Statement, part: string): RawLink | undefined {
    const found = this.#around.things.get(name);
    if (found?.kind === 'link') return found as RawLink;
    this.#around.names.tellUnknown('link', name, statement, part, found?.statement);
    return undefined;
  }
}

/** The first link of a sheath; what was followed once is remembered, so that long chains cost little. */
function sheathOf(link: RawLink): RawLink {
  const passed: RawLink[] = [];
  let at = link;
  while (at.shares && at.sheath === at) {
    passed.push(at);
    at = at.shares;
  }
  const sheath = at.sheath as RawLink;
  for (const one of passed) one.sheath = sheath;
  return sheath;
}

/** A source or destination is a network device when it says so, or is plugged into a network port and says nothing. */
function roleOpposite(
  other: Port | undefined,
  face: Interface | undefined,
  otherwise: 'input' | 'output',
): PortRole {
  if (face) return face.signal === 'network' ? 'network' : otherwise;
  return other?.role === 'network' ? 'network' : otherwise;
}
