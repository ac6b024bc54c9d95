import type { Statement } from '../plan/plan.ts';
import { type Building, grown, nothing } from './building.ts';
import type { FormatTable } from './formats.ts';
import type { Destination, Interface, KitPort, Node, Port, PortRole, Source } from './model.ts';
import type { NameBook } from './names.ts';

/** The ports that something speaks of; a port that nobody names is not made. */
export class PortTable {
  readonly ports: Building<Port>[] = [];
  /** Ports of nodes whose kit is not known, by `node.port`. */
  readonly #loose = new Map<string, Building<Port>>();
  readonly #names: NameBook;
  readonly #formats: FormatTable;

  constructor(names: NameBook, formats: FormatTable) {
    this.#names = names;
    this.#formats = formats;
  }

  /** A node's port; undefined, and told, when its kit has none of that name. */
  of(node: Node, name: string, statement: Statement, part: string): Building<Port> | undefined {
    const { kit } = node;
    if (!kit) return this.#loosePort(node, name);
    const kitPort = kit.portsByName.get(name);
    if (kitPort === undefined) {
      this.#names.tellUnknownPort(node, name, statement, part);
      return undefined;
    }
    return node.usedPorts[kitPort.index] ?? this.#use(node, kitPort);
  }

  /** The one connector of a source or destination. */
  own(owner: Source | Destination, role: PortRole, face: Interface | undefined): Building<Port> {
    return this.#add(owner, '', owner.name, role, face, undefined);
  }

  /** Ties each port to the one that it follows or passes to, where both are used. */
  tie(): void {
    for (const port of this.ports) {
      const { kitPort, owner } = port;
      if (kitPort === undefined || owner.kind !== 'node') continue;
      if (kitPort.follows) port.follows = owner.usedPorts[kitPort.follows.index];
      if (kitPort.joined) port.joined = owner.usedPorts[kitPort.joined.index];
    }
  }

  #use(node: Node, kitPort: KitPort): Building<Port> {
    const { name, role } = kitPort;
    const port = this.#add(node, name, `${node.name}.${name}`, role, kitPort.interface, kitPort);
    const { labels, gives } = node.statement.fact;
    port.label = labels.find((label) => label.port === name)?.text;
    const given = gives.find((one) => one.port === name);
    port.gives = given ? this.#formats.stated(given.format) : kitPort.gives;
    (node.usedPorts as (Port | undefined)[])[kitPort.index] = port;
    return port;
  }

  #loosePort(node: Node, name: string): Building<Port> {
    const text = `${node.name}.${name}`;
    const known = this.#loose.get(text);
    if (known) return known;
    const port = this.#add(node, name, text, 'unknown', undefined, undefined);
    this.#loose.set(text, port);
    (node as Building<Node>).loosePorts = grown(node.loosePorts, port);
    return port;
  }

  #add(
    owner: Port['owner'],
    name: string,
    text: string,
    role: PortRole,
    face: Interface | undefined,
    kitPort: KitPort | undefined,
  ): Building<Port> {
    const port: Building<Port> = {
      index: this.ports.length,
      owner,
      name,
      text,
      role,
      interface: face,
      kitPort,
      label: undefined,
      gives: undefined,
      follows: undefined,
      joined: undefined,
      links: nothing,
    };
    this.ports.push(port);
    return port;
  }
}

/** Tells the labels and formats that a node gives to ports which its kit does not have. */
export function tellPortsOfNodes(nodes: readonly Node[], names: NameBook): void {
  for (const node of nodes) {
    const { kit, statement } = node;
    if (!kit) continue;
    const { labels, gives } = statement.fact;
    if (labels.length === 0 && gives.length === 0) continue;
    labels.forEach(({ port }, i) => {
      if (!kit.portsByName.has(port)) names.tellUnknownPort(node, port, statement, `labels/${i}.port`);
    });
    gives.forEach(({ port }, i) => {
      if (!kit.portsByName.has(port)) names.tellUnknownPort(node, port, statement, `gives/${i}.port`);
    });
  }
}

/** A socket that is spoken of without a cable in it: it has no place in the plant, so its index is -1. */
export function bareSocket(node: Node, kitPort: KitPort): Port {
  return {
    index: -1,
    owner: node,
    name: kitPort.name,
    text: `${node.name}.${kitPort.name}`,
    role: kitPort.role,
    interface: kitPort.interface,
    kitPort,
    label: undefined,
    gives: kitPort.gives,
    follows: undefined,
    joined: undefined,
    links: nothing,
  };
}

/** One socket of a node as its kit has it, and what is plugged in. */
export interface Socket {
  readonly kitPort: KitPort;
  readonly label: string | undefined;
  /** Undefined when nothing in the plan speaks of it. */
  readonly port: Port | undefined;
}

/** All sockets of a node, free ones too, in the order of its kit. */
export function socketsOf(node: Node): Socket[] {
  const { labels } = node.statement.fact;
  return (node.kit?.ports ?? []).map((kitPort) => ({
    kitPort,
    label: labels.find((label) => label.port === kitPort.name)?.text,
    port: node.usedPorts[kitPort.index],
  }));
}
