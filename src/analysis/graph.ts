/**
 * The plant as a graph in which routes are searched.
 *
 * Each port has a vertex for the picture that arrives at it over its cable and one for the picture that leaves by it.
 * An edge from leaving to arriving is a cable. Inside a node, edges run from arriving to leaving through a hub: one
 * vertex that stands for everything that may pass on there, so that a switch of a thousand ports has two thousand
 * edges and not a million. So every way is cable, passage, cable, passage …, each passage two edges long.
 *
 * Network ports have their vertices once for each kind of carriage (a plane): a picture enters the plane of the node
 * that puts it onto the network and can only leave where a node of the same kind takes it off.
 */
import type { Carried, Kit, Link, Node, Plant, Port } from './model.ts';

export interface Graph {
  readonly vertexCount: number;
  /** How many planes network ports have. */
  readonly planeCount: number;
  /** By port: its first vertex for what arrives (leaves), -1 when nothing can; the planes follow each other. */
  readonly arriving: Int32Array;
  readonly leaving: Int32Array;
  /** By port: 1 when it is part of the network. */
  readonly onNetwork: Uint8Array;
  /** By vertex: its port; for a hub -1. */
  readonly portOf: Int32Array;
  /** By vertex: 1 for the hub of a switch, which never sends a picture back where it came from. */
  readonly forwards: Uint8Array;
  /** By vertex: where at most one picture may be, the number of that spot; else -1. */
  readonly spotOf: Int32Array;
  /** Edges by their first vertex: ends and the cable's link (-1 inside a node). */
  readonly outStart: Int32Array;
  readonly outTo: Int32Array;
  readonly outLink: Int32Array;
  /** The same edges by their second vertex. */
  readonly inStart: Int32Array;
  readonly inFrom: Int32Array;
  readonly inLink: Int32Array;
  /** By kind of carriage: its plane, -1 when nothing sends so. */
  readonly planeOf: Int32Array;
}

/** The hubs of one node that were made so far, -1 where none was needed yet. */
interface Hubs {
  entry: number;
  exit: number;
  matrix: number;
  /** The first of one for each plane. */
  switch: number;
}

/** More kinds of carriage than fit into so many vertices share the last plane; routes check the kind again. */
const MOST_NETWORK_VERTICES = 2_000_000;

/** The spot of a port's arriving or leaving picture, as `Graph.spotOf` numbers them. */
export function spotsOf(portCount: number): number {
  return portCount * 2;
}

export function graphOf(plant: Plant, usual: Carried): Graph {
  return new GraphMaker(plant, usual).graph();
}

class GraphMaker {
  readonly #planeOf: Int32Array;
  readonly #planeCount: number;
  readonly #arriving: Int32Array;
  readonly #leaving: Int32Array;
  readonly #onNetwork: Uint8Array;
  readonly #portOf: number[] = [];
  readonly #spotOf: number[] = [];
  readonly #switchHubs: number[] = [];
  readonly #from: number[] = [];
  readonly #to: number[] = [];
  readonly #link: number[] = [];

  constructor(plant: Plant, usual: Carried) {
    const { ports } = plant;
    this.#arriving = new Int32Array(ports.length).fill(-1);
    this.#leaving = new Int32Array(ports.length).fill(-1);
    this.#onNetwork = new Uint8Array(ports.length);
    for (const port of ports) this.#onNetwork[port.index] = isOnNetwork(port) ? 1 : 0;
    this.#planeOf = planesOf(plant, usual);
    const kinds = this.#planeOf.reduce((most, plane) => Math.max(most, plane + 1), 1);
    const networkPorts = this.#onNetwork.reduce((sum, one) => sum + one, 1);
    this.#planeCount = Math.max(1, Math.min(kinds, Math.floor(MOST_NETWORK_VERTICES / networkPorts)));
    for (let kind = 0; kind < this.#planeOf.length; kind++) {
      this.#planeOf[kind] = Math.min(this.#planeOf[kind]!, this.#planeCount - 1);
    }
    for (const port of ports) this.#addPort(port);
    for (const link of plant.links) this.#addCable(link);
    for (const node of plant.nodes.values()) this.#addPassages(node);
  }

  graph(): Graph {
    const vertexCount = this.#portOf.length;
    const forwards = new Uint8Array(vertexCount);
    for (const hub of this.#switchHubs) forwards[hub] = 1;
    const out = sorted(vertexCount, this.#from, this.#to, this.#link);
    const back = sorted(vertexCount, this.#to, this.#from, this.#link);
    return {
      vertexCount,
      planeCount: this.#planeCount,
      arriving: this.#arriving,
      leaving: this.#leaving,
      onNetwork: this.#onNetwork,
      portOf: Int32Array.from(this.#portOf),
      forwards,
      spotOf: Int32Array.from(this.#spotOf),
      outStart: out.start,
      outTo: out.ends,
      outLink: out.links,
      inStart: back.start,
      inFrom: back.ends,
      inLink: back.links,
      planeOf: this.#planeOf,
    };
  }

  #addPort(port: Port): void {
    const { index, role, owner } = port;
    const planes = this.#onNetwork[index] === 1 ? this.#planeCount : 1;
    const oneAtATime = owner.kind === 'destination' || role === 'input' || role === 'output';
    if (role !== 'output' && owner.kind !== 'source') {
      this.#arriving[index] = this.#addVertices(planes, index, oneAtATime ? index * 2 : -1);
    }
    if (role !== 'input' && owner.kind !== 'destination') {
      const spot = oneAtATime && owner.kind !== 'source' ? index * 2 + 1 : -1;
      this.#leaving[index] = this.#addVertices(planes, index, spot);
    }
  }

  #addVertices(count: number, port: number, spot: number): number {
    const first = this.#portOf.length;
    for (let i = 0; i < count; i++) {
      this.#portOf.push(port);
      this.#spotOf.push(spot);
    }
    return first;
  }

  #addCable(link: Link): void {
    const from = link.from.port;
    const to = link.to.port;
    if (from === undefined || to === undefined) return;
    if (link.carriesForward) this.#addWay(from, to, link.index);
    if (link.carriesBackward) this.#addWay(to, from, link.index);
  }

  #addWay(from: Port, to: Port, link: number): void {
    const start = this.#leaving[from.index]!;
    const end = this.#arriving[to.index]!;
    if (start < 0 || end < 0 || this.#onNetwork[from.index] !== this.#onNetwork[to.index]) return;
    const planes = this.#onNetwork[from.index] === 1 ? this.#planeCount : 1;
    for (let plane = 0; plane < planes; plane++) this.#addEdge(start + plane, end + plane, link);
  }

  /** What may pass on inside a node, as its kit says. */
  #addPassages({ kit, usedPorts }: Node): void {
    if (!kit) return;
    const hubs: Hubs = { entry: -1, exit: -1, matrix: -1, switch: -1 };
    // By index: the list has holes where a port is not used.
    for (let i = 0; i < usedPorts.length; i++) {
      const port = usedPorts[i];
      if (port === undefined) continue;
      if (port.role === 'input') this.#addInput(port, kit, hubs);
      else if (port.role === 'output') this.#addOutput(port, kit, hubs);
      else if (port.role === 'network') this.#addNetworkPort(port, kit, hubs);
      else if (port.joined) this.#addJoin(port, port.joined);
    }
  }

  /** An input goes out to the network where the kit carries something, and to the outputs of a matrix. */
  #addInput(port: Port, kit: Kit, hubs: Hubs): void {
    const arriving = this.#arriving[port.index]!;
    if (kit.carries) {
      hubs.entry = this.#hub(hubs.entry);
      this.#addEdge(arriving, hubs.entry, -1);
    }
    if (kit.routes) {
      hubs.matrix = this.#hub(hubs.matrix);
      this.#addEdge(arriving, hubs.matrix, -1);
    }
  }

  /** An output copies what it follows; if it follows nothing, it takes from the network and from a matrix. */
  #addOutput(port: Port, kit: Kit, hubs: Hubs): void {
    const leaving = this.#leaving[port.index]!;
    if (port.kitPort?.follows) {
      if (!port.follows) return;
      const hub = this.#hub(-1);
      this.#addEdge(this.#arriving[port.follows.index]!, hub, -1);
      this.#addEdge(hub, leaving, -1);
      return;
    }
    if (kit.carries) {
      hubs.exit = this.#hub(hubs.exit);
      this.#addEdge(hubs.exit, leaving, -1);
    }
    if (kit.routes) {
      hubs.matrix = this.#hub(hubs.matrix);
      this.#addEdge(hubs.matrix, leaving, -1);
    }
  }

  #addNetworkPort(port: Port, kit: Kit, hubs: Hubs): void {
    const arriving = this.#arriving[port.index]!;
    const leaving = this.#leaving[port.index]!;
    if (kit.carries) {
      const plane = this.#planeOf[kit.carries.index]!;
      hubs.entry = this.#hub(hubs.entry);
      this.#addEdge(hubs.entry, leaving + plane, -1);
      hubs.exit = this.#hub(hubs.exit);
      this.#addEdge(arriving + plane, hubs.exit, -1);
    }
    if (!kit.forwards) return;
    if (hubs.switch < 0) hubs.switch = this.#addSwitchHubs();
    for (let plane = 0; plane < this.#planeCount; plane++) {
      this.#addEdge(arriving + plane, hubs.switch + plane, -1);
      this.#addEdge(hubs.switch + plane, leaving + plane, -1);
    }
  }

  /** From one side of a join to the other; the other port adds the way back. */
  #addJoin(port: Port, across: Port): void {
    if (this.#onNetwork[port.index] !== this.#onNetwork[across.index]) return;
    const planes = this.#onNetwork[port.index] === 1 ? this.#planeCount : 1;
    for (let plane = 0; plane < planes; plane++) {
      const hub = this.#hub(-1);
      this.#addEdge(this.#arriving[port.index]! + plane, hub, -1);
      this.#addEdge(hub, this.#leaving[across.index]! + plane, -1);
    }
  }

  #hub(known: number): number {
    return known >= 0 ? known : this.#addVertices(1, -1, -1);
  }

  #addSwitchHubs(): number {
    const first = this.#addVertices(this.#planeCount, -1, -1);
    for (let k = 0; k < this.#planeCount; k++) this.#switchHubs.push(first + k);
    return first;
  }

  #addEdge(from: number, to: number, link: number): void {
    this.#from.push(from);
    this.#to.push(to);
    this.#link.push(link);
  }
}

/** A patch field or a port of an unknown kit belongs to the network when its cable does. */
function isOnNetwork(port: Port): boolean {
  if (port.role === 'network') return true;
  if (port.role !== 'pass' && port.role !== 'unknown') return false;
  const links = port.links.length > 0 ? port.links : (port.joined?.links ?? []);
  return links.some((link) => link.network);
}

/** A plane for each kind of carriage that a node or a source which sends by itself uses. */
function planesOf(plant: Plant, usual: Carried): Int32Array {
  const planes = new Int32Array(plant.carriedKinds.length).fill(-1);
  let count = 0;
  const use = (carried: Carried | undefined) => {
    if (carried && planes[carried.index] === -1) planes[carried.index] = count++;
  };
  for (const node of plant.nodes.values()) use(node.kit?.carries);
  for (const source of plant.sources.values()) if (source.sendsByItself) use(carriageOf(source, usual));
  return planes;
}

/** How a source that sends by itself does so: as its kit or its node's kit says, else uncompressed. */
export function carriageOf(
  source: { readonly kit: Node['kit']; readonly from?: Port | undefined },
  usual: Carried,
): Carried {
  return source.kit?.carries ?? source.from?.owner.kit?.carries ?? usual;
}

function sorted(
  vertexCount: number,
  keys: readonly number[],
  values: readonly number[],
  links: readonly number[],
): { start: Int32Array; ends: Int32Array; links: Int32Array } {
  const start = new Int32Array(vertexCount + 1);
  for (let i = 0; i < keys.length; i++) start[keys[i]! + 1]!++;
  for (let v = 0; v < vertexCount; v++) start[v + 1]! += start[v]!;
  const next = start.slice();
  const ends = new Int32Array(keys.length);
  const ofLink = new Int32Array(keys.length);
  for (let i = 0; i < keys.length; i++) {
    const at = next[keys[i]!]!++;
    ends[at] = values[i]!;
    ofLink[at] = links[i]!;
  }
  return { start, ends, links: ofLink };
}
