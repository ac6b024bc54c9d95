import type { Node, Plant } from './model.ts';

/**
 * Which ports hang together at all, whichever way round, and where there is a ring in what hangs together. Between
 * islands no search is worth its while; without a ring no picture can come back to a switch by another port.
 */
export class Islands {
  readonly #parent: Int32Array;
  readonly #withRing = new Set<number>();

  constructor(plant: Plant) {
    const { ports, nodes, links } = plant;
    this.#parent = Int32Array.from({ length: ports.length + nodes.size }, (_, i) => i);
    for (const link of links) {
      const [from, to] = [link.from.port, link.to.port];
      if (from && to && (link.carriesForward || link.carriesBackward)) this.#join(from.index, to.index);
    }
    for (const node of nodes.values()) this.#joinInside(node, ports.length + node.index);
  }

  /** A number for the island on which a port lies. */
  of(port: number): number {
    return this.#root(port);
  }

  hasRing(port: number): boolean {
    return this.#withRing.has(this.#root(port));
  }

  /** Everything that a node may pass on, taken together. */
  #joinInside({ kit, usedPorts }: Node, inside: number): void {
    if (!kit) return;
    for (let i = 0; i < usedPorts.length; i++) {
      const port = usedPorts[i];
      if (port === undefined) continue;
      if (port.follows) this.#join(port.index, port.follows.index);
      else if (port.joined) {
        if (port.index < port.joined.index) this.#join(port.index, port.joined.index);
      } else if (port.role === 'network' ? kit.carries || kit.forwards : kit.carries || kit.routes) {
        this.#join(port.index, inside);
      }
    }
  }

  #join(a: number, b: number): void {
    const [one, other] = [this.#root(a), this.#root(b)];
    if (one === other) this.#withRing.add(one);
    else {
      this.#parent[one] = other;
      if (this.#withRing.has(one)) this.#withRing.add(other);
    }
  }

  #root(of: number): number {
    const parent = this.#parent;
    let at = of;
    while (parent[at] !== at) {
      parent[at] = parent[parent[at]!]!;
      at = parent[at]!;
    }
    return at;
  }
}
