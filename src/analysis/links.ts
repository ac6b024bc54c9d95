import type { EndFact } from '../plan/facts.ts';
import type { Statement, StatementOf } from '../plan/plan.ts';
import { type Building, grown } from './building.ts';
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
  /** Links that have their name already. */
  readonly #reserved = new Map<CableStatement, RawLink>();

  constructor(around: LinkSurroundings) {
    this.#around = around;
  }

  /** Enters the name of a link among all others, in its order, before the things are there that it joins. */
  reserve(statement: StatementOf<'link'>): void {
    const { name, bothWays } = statement.fact;
    if (name === undefined) return;
    const link = newLink(statement, name, bothWays);
    const { names, things } = this.#around;
    if (names.declare('things', things, name, link)) this.#reserved.set(statement, link);
  }

  make(statements: readonly CableStatement[], cycles: Cycle[]): readonly RawLink[] {
    for (const statement of statements) this.#read(statement);
    this.#relate(cycles);
    return this.links;
  }

  #read(statement: CableStatement): void {
    const { fact } = statement;
    if (fact.kind === 'link') {
      const from = this.#end(fact.from, statement, 'from');
      const to = this.#end(fact.to, statement, 'to');
      const link = this.#add(statement, fact.name, from, to, fact.bothWays);
      link.pinned = this.#interface(fact.interface, statement);
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
    source.link = this.#add(statement, undefined, { text: source.name, port }, to, false);
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
    destination.link = this.#add(statement, undefined, from, to, false);
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
    name: string | undefined,
    from: LinkEnd,
    to: LinkEnd,
    bothWays: boolean,
  ): RawLink {
    const { names, cables } = this.#around;
    const { cable } = statement.fact;
    const link = this.#reserved.get(statement) ?? newLink(statement, name, bothWays);
    link.index = this.links.length;
    link.from = from;
    link.to = to;
    if (name === undefined) link.name = `${from.text}>${to.text}`;
    if (cable !== undefined) link.cable = names.find(cables, cable, 'cable', statement, 'cables/0');
    this.links.push(link);
    if (from.port) plugIn(from.port, link);
    if (to.port && to.port !== from.port) plugIn(to.port, link);
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

function plugIn(port: Building<Port>, link: Link): void {
  port.links = grown(port.links, link);
}

/** A link that is not plugged in yet. */
function newLink(statement: CableStatement, name: string | undefined, bothWays: boolean): RawLink {
  const { installed, connections, splices } = statement.fact;
  const link: RawLink = {
    kind: 'link',
    index: -1,
    name: name ?? '',
    named: name !== undefined,
    statement,
    from: nowhere,
    to: nowhere,
    bothWays,
    network: false,
    carriesForward: false,
    carriesBackward: false,
    directionFault: undefined,
    cable: undefined,
    installed,
    connections,
    splices,
    standbyFor: undefined,
    sheath: undefined as never,
    length: undefined as never,
    chain: undefined as never,
    pinned: undefined,
    shares: undefined,
  };
  link.sheath = link;
  return link;
}

const nowhere: LinkEnd = { text: '', port: undefined };

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
