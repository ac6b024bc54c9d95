import { add } from './lists.ts';
import type { Circuit, Destination, Link, Node, Plant, Source, Thing } from './model.ts';

/** What is out of service, and which standbys take over. */
export interface Loss {
  readonly links: ReadonlySet<Link>;
  readonly nodes: ReadonlySet<Node>;
  readonly sources: ReadonlySet<Source>;
  readonly destinations: ReadonlySet<Destination>;
  /** Standbys plugged in for links that are lost by themselves, by run or by sheath; a lost node has none. */
  readonly standbys: readonly Link[];
}

export const nothingLost: Loss = {
  links: new Set(),
  nodes: new Set(),
  sources: new Set(),
  destinations: new Set(),
  standbys: [],
};

/** Works out what is lost together with a thing. Kept for a whole plant, so that each question costs what it names. */
export class Losses {
  readonly #standbys = new Map<Link, Link[]>();
  readonly #fedBy = new Map<Circuit, Circuit[]>();
  readonly #devices = new Map<Circuit, (Node | Source | Destination)[]>();

  constructor(plant: Plant) {
    for (const link of plant.links) if (link.standbyFor) add(this.#standbys, link.standbyFor, link);
    for (const circuit of plant.circuits.values()) if (circuit.from) add(this.#fedBy, circuit.from, circuit);
    for (const devices of [plant.nodes, plant.sources, plant.destinations]) {
      for (const device of devices.values()) {
        for (const circuit of device.poweredBy) add(this.#devices, circuit, device);
      }
    }
  }

  of(things: readonly Thing[]): Loss {
    const byThemselves = new Set<Link>();
    const links = new Set<Link>();
    const nodes = new Set<Node>();
    const sources = new Set<Source>();
    const destinations = new Set<Destination>();
    const lose = (device: Node | Source | Destination) => {
      if (device.kind === 'node') {
        nodes.add(device);
        for (const link of linksOf(device)) links.add(link);
      } else {
        if (device.kind === 'source') sources.add(device);
        else destinations.add(device);
        if (device.link) links.add(device.link);
      }
    };
    const darkCircuits = this.#allFedBy(things.filter((thing) => thing.kind === 'circuit'));
    for (const thing of things) {
      if (thing.kind === 'link') byThemselves.add(thing);
      else if (thing.kind === 'node' || thing.kind === 'source' || thing.kind === 'destination') lose(thing);
    }
    for (const circuit of darkCircuits) {
      for (const device of this.#devices.get(circuit) ?? []) {
        if (device.poweredBy.every((one) => darkCircuits.has(one))) lose(device);
      }
    }
    for (const link of byThemselves) links.add(link);
    return { links, nodes, sources, destinations, standbys: this.standbysFor(byThemselves, links) };
  }

  /**
   * The standby of each link that is lost by itself: the first by order of statements that is not lost too.
   *
   * @param lost Everything that is lost.
   */
  standbysFor(links: Iterable<Link>, lost: ReadonlySet<Link>): Link[] {
    const standbys = new Set<Link>();
    for (const link of links) {
      const first = this.#standbys.get(link)?.find((one) => !lost.has(one) && !standbys.has(one));
      if (first) standbys.add(first);
    }
    return [...standbys].sort((a, b) => a.index - b.index);
  }

  /** Links that stand by for this one, in order of statements. */
  standbysOf(link: Link): readonly Link[] {
    return this.#standbys.get(link) ?? [];
  }

  #allFedBy(circuits: readonly Circuit[]): Set<Circuit> {
    const all = new Set(circuits);
    for (const circuit of all) for (const fed of this.#fedBy.get(circuit) ?? []) all.add(fed);
    return all;
  }
}

/** Every cable that is plugged into a node. */
export function linksOf(node: Node): Link[] {
  const links: Link[] = [];
  for (const port of [...node.usedPorts, ...node.loosePorts]) if (port) links.push(...port.links);
  return links;
}
