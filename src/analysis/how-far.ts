/** How far a picture without a route gets, and what is missing there. Worked out when somebody asks. */
import type { Graph } from './graph.ts';
import type { Analysis, Carried, Delivery, HowFar, Link, Missing, Node, Port } from './model.ts';
import { bareSocket } from './ports.ts';
import type { Router } from './router.ts';
import { NO_PICTURE } from './search.ts';
import { showOf } from './tools.ts';

/** The look around ends after so many spots on either side: what is missing is near one of the two ends. */
const MOST_LOOKED_AT = 2000;

const nowhere: HowFar = { reaches: [], missing: { kind: 'nothing' } };

/** Follows the picture of a delivery that has no route. */
export function howFar(analysis: Analysis, delivery: Delivery): HowFar {
  const { source, target } = delivery.feed;
  const { noRoute, segment } = delivery;
  if (!source || !target || (noRoute?.kind !== 'no way' && noRoute?.kind !== 'via cannot be met'))
    return nowhere;
  const { router } = showOf(analysis);
  const situation = analysis.situations.find((one) => one.segment === segment);
  return router.during(situation?.lostLinks ?? [], situation?.standbys ?? [], () => {
    const starts = router.startsOf(source);
    const ends = noRoute.via ? router.stopsAt(noRoute.via) : router.endsOf(target);
    return new Look(analysis, router, starts, ends).find(situation?.lostLinks ?? new Set());
  });
}

/** What can be reached from one end: each vertex with the one before it. */
type Reached = Map<number, number>;

class Look {
  readonly #analysis: Analysis;
  readonly #graph: Graph;
  readonly #router: Router;
  readonly #starts: readonly number[];
  readonly #ends: readonly number[];
  /** From the source on, and from the target back. */
  readonly #onwards: Reached;
  readonly #back: Reached;
  readonly #portsOn: ReadonlyMap<Port, number>;
  readonly #portsBack: ReadonlyMap<Port, number>;

  constructor(analysis: Analysis, router: Router, starts: readonly number[], ends: readonly number[]) {
    const { graph } = router;
    this.#analysis = analysis;
    this.#graph = graph;
    this.#router = router;
    this.#starts = starts;
    this.#ends = ends;
    this.#onwards = spread(starts, graph.outStart, graph.outTo, graph.outLink, router.linkOff);
    this.#back = spread(ends, graph.inStart, graph.inFrom, graph.inLink, router.linkOff);
    this.#portsOn = this.#portsOf(this.#onwards);
    this.#portsBack = this.#portsOf(this.#back);
  }

  /** The first explanation that fits, the plainest first. */
  find(lost: ReadonlySet<Link>): HowFar {
    return (
      this.#behindStandby(lost) ??
      this.#brokenLink() ??
      this.#wrongWay() ??
      this.#otherCarriage() ??
      this.#passesNothing() ??
      this.#kitNotKnown() ??
      this.#notJoined() ??
      this.#noCable() ??
      this.#deadEnd()
    );
  }

  /** Where the picture gets to last: at a node that passes it nowhere, or at a socket from which nothing leads on. */
  #deadEnd(): HowFar {
    const last = this.#deepest();
    const port = last === undefined ? undefined : this.#portOf(last);
    const isEnd = port?.owner.kind === 'node' && this.#arrivesAt(port, last!) && !passesOn(port);
    return this.#as(last, isEnd ? { kind: 'passes nothing', node: port.owner as Node } : { kind: 'nothing' });
  }

  #as(vertex: number | undefined, missing: Missing): HowFar {
    return { reaches: vertex === undefined ? [] : this.#wayTo(vertex), missing };
  }

  #portsOf(reached: Reached): Map<Port, number> {
    const ports = new Map<Port, number>();
    for (const vertex of reached.keys()) {
      const port = this.#portOf(vertex);
      if (port && !ports.has(port)) ports.set(port, vertex);
    }
    return ports;
  }

  #portOf(vertex: number): Port | undefined {
    const index = this.#graph.portOf[vertex]!;
    return index < 0 ? undefined : this.#analysis.ports[index];
  }

  #wayTo(vertex: number): Port[] {
    const ports: Port[] = [];
    for (let at = vertex; at >= 0; at = this.#onwards.get(at) ?? -1) {
      const port = this.#portOf(at);
      if (port) ports.push(port);
    }
    return ports.reverse();
  }

  /** The last vertex that was reached: none is further away. */
  #deepest(): number | undefined {
    let last: number | undefined;
    for (const vertex of this.#onwards.keys()) if (this.#graph.portOf[vertex]! >= 0) last = vertex;
    return last;
  }

  #behindStandby(lost: ReadonlySet<Link>): HowFar | undefined {
    const standbys = this.#analysis.links.filter((link) => link.standbyFor && !lost.has(link));
    if (standbys.length === 0) return undefined;
    const way = this.#router.during([], standbys, () =>
      this.#router.search.find(this.#starts, this.#ends, NO_PICTURE),
    );
    const at = way?.links.findIndex((link) => this.#router.linkOff[link]! > 0) ?? -1;
    if (!way || at < 0) return undefined;
    const reaches = way.vertices.slice(0, at * 2 + 1).flatMap((vertex) => this.#portOf(vertex) ?? []);
    return { reaches, missing: { kind: 'standby', link: this.#analysis.links[way.links[at]!]! } };
  }

  #brokenLink(): HowFar | undefined {
    for (const [port, vertex] of this.#portsOn) {
      const link = port.links.find(isBroken);
      if (link) return this.#as(vertex, { kind: 'broken link', link });
    }
    for (const port of this.#portsBack.keys()) {
      const link = port.links.find(isBroken);
      if (link) return this.#as(this.#deepest(), { kind: 'broken link', link });
    }
    return undefined;
  }

  /** A link between what the picture reaches and what leads to the target, that does not lead this way round. */
  #wrongWay(): HowFar | undefined {
    for (const [port, vertex] of this.#portsOn) {
      for (const link of port.links) {
        const other = link.from.port === port ? link.to.port : link.from.port;
        if (!other || !this.#portsBack.has(other) || this.#router.linkOff[link.index]! > 0) continue;
        const leads = link.from.port === port ? link.carriesForward : link.carriesBackward;
        if (!leads) return this.#as(vertex, { kind: 'wrong way', link });
      }
    }
    return undefined;
  }

  /** The picture gets to a node that leads to the target, but the node takes another kind off the network. */
  #otherCarriage(): HowFar | undefined {
    for (const [port, vertex] of this.#portsOn) {
      if (port.role !== 'network' || port.owner.kind !== 'node') continue;
      const arrives = this.#graph.arriving[port.index]!;
      if (vertex < arrives || vertex >= arrives + this.#graph.planeCount) continue;
      const entry = this.#kindOf(vertex - arrives);
      const exit = port.owner.kit?.carries;
      if (!entry || exit === entry || !this.#leadsOn(port.owner)) continue;
      return this.#as(vertex, { kind: 'other carriage', entry, node: port.owner, exit });
    }
    return undefined;
  }

  #kindOf(plane: number): Carried | undefined {
    return this.#analysis.carriedKinds.find((kind) => this.#graph.planeOf[kind.index] === plane);
  }

  /** One of the node's outputs leads to the target. */
  #leadsOn(node: Node): boolean {
    return node.usedPorts.some((port) => port?.role === 'output' && this.#portsBack.has(port));
  }

  /** The picture comes into a node from which another port leads to the target, but the node does not pass it there. */
  #passesNothing(): HowFar | undefined {
    const leading = new Set<Node>();
    for (const port of this.#portsBack.keys()) {
      if (port.owner.kind === 'node' && port.owner.kit && port.role !== 'input') leading.add(port.owner);
    }
    for (const [port, vertex] of this.#portsOn) {
      const { owner } = port;
      if (owner.kind !== 'node' || !leading.has(owner) || !this.#arrivesAt(port, vertex)) continue;
      return this.#as(vertex, { kind: 'passes nothing', node: owner });
    }
    return undefined;
  }

  #arrivesAt(port: Port, vertex: number): boolean {
    const first = this.#graph.arriving[port.index]!;
    return first >= 0 && vertex >= first && vertex < first + this.#graph.planeCount;
  }

  #kitNotKnown(): HowFar | undefined {
    for (const [port, vertex] of this.#portsOn) {
      if (port.owner.kind === 'node' && !port.owner.kit && this.#arrivesAt(port, vertex)) {
        return this.#as(vertex, { kind: 'kit not known', node: port.owner });
      }
    }
    for (const { owner } of this.#portsBack.keys()) {
      if (owner.kind === 'node' && !owner.kit)
        return this.#as(this.#deepest(), { kind: 'kit not known', node: owner });
    }
    return undefined;
  }

  /** The picture gets onto the network, or could; and the target hangs on a network, but not on the same. */
  #notJoined(): HowFar | undefined {
    const from = lastOf(this.#portsOn.keys(), (port) => this.#networkSocket(port, 'near'));
    const to = lastOf(this.#portsBack.keys(), (port) => this.#networkSocket(port, 'far'));
    if (!from || !to || from.port.owner === to.port.owner) return undefined;
    const vertex = this.#portsOn.get(from.at);
    return this.#as(vertex, { kind: 'not joined', from: from.port, to: to.port });
  }

  /**
   * A network port of the node that a port belongs to, a free one if there is one. What came to a box over the network
   * goes on only if the box is a switch; what leads to the target may come in by any port of the box.
   */
  #networkSocket({ owner, role }: Port, side: 'near' | 'far'): Port | undefined {
    if (owner.kind !== 'node' || !owner.kit) return undefined;
    const { kit, usedPorts } = owner;
    const passes = role === 'network' ? kit.forwards || (side === 'far' && kit.carries) : kit.carries;
    if (!passes) return undefined;
    const sockets = kit.ports.filter((kitPort) => kitPort.role === 'network');
    const free = sockets.find(({ index }) => (usedPorts[index]?.links.length ?? 0) === 0);
    if (free) return usedPorts[free.index] ?? bareSocket(owner, free);
    return sockets[0] && usedPorts[sockets[0].index];
  }

  /** A node that leads to the target through a port into which nothing is plugged. */
  #noCable(): HowFar | undefined {
    const last = lastOf(this.#portsBack.keys(), ({ owner, role }) => {
      if (owner.kind !== 'node' || role !== 'output' || !owner.kit) return undefined;
      const { kit, usedPorts } = owner;
      const leads = kit.routes || kit.ports.some((kitPort) => kitPort.follows);
      const inputs = leads ? kit.ports.filter((kitPort) => kitPort.role === 'input') : [];
      const free = inputs.find(({ index }) => (usedPorts[index]?.links.length ?? 0) === 0);
      return free && (usedPorts[free.index] ?? bareSocket(owner, free));
    });
    return last && this.#as(this.#deepest(), { kind: 'no cable', port: last.port });
  }
}

/** Whether its kit says at all how a picture goes on from a port. */
function passesOn({ owner, role, kitPort }: Port): boolean {
  const { kit } = owner;
  if (!kit) return true;
  if (kit.carries !== undefined || kitPort?.joined !== undefined) return true;
  if (role === 'network') return kit.forwards;
  return kit.routes || kit.ports.some(({ follows }) => follows === kitPort);
}

function isBroken({ from, to }: Link): boolean {
  return from.port === undefined || to.port === undefined;
}

function lastOf(
  ports: Iterable<Port>,
  socketOf: (port: Port) => Port | undefined,
): { readonly at: Port; readonly port: Port } | undefined {
  let last: { readonly at: Port; readonly port: Port } | undefined;
  for (const at of ports) {
    const port = socketOf(at);
    if (port) last = { at, port };
  }
  return last;
}

function spread(
  from: readonly number[],
  starts: Int32Array,
  ends: Int32Array,
  links: Int32Array,
  linkOff: Uint8Array,
): Reached {
  const reached: Reached = new Map(from.map((vertex) => [vertex, -1]));
  // The map grows while it is gone through.
  for (const vertex of reached.keys()) {
    if (reached.size >= MOST_LOOKED_AT) break;
    for (let edge = starts[vertex]!; edge < starts[vertex + 1]!; edge++) {
      const to = ends[edge]!;
      const link = links[edge]!;
      if (reached.has(to) || (link >= 0 && linkOff[link]! > 0)) continue;
      reached.set(to, vertex);
    }
  }
  return reached;
}
