import { add } from '../../analysis/lists.ts';
import type { Analysis, Node, Port, Source } from '../../analysis/model.ts';
import { bareSocket, socketsOf } from '../../analysis/ports.ts';
import type { Titles } from '../sheets/titles.ts';
import type { PortOwner } from './choose-things.ts';
import type { Positions } from './positions.ts';
import type { Box, BoxPort } from './scene.ts';
import { apart, joined, nameText } from './words.ts';

/** So many free ports of each side are drawn; the others are counted. */
const FREE_PORTS_DRAWN = 3;

/** Makes the boxes of nodes and the chips of sources and destinations. */
export class BoxMaker {
  readonly #titles: Titles;
  readonly #positions: Positions;
  /** Sources that come out of a node. */
  readonly #begun = new Map<PortOwner, Source[]>();

  constructor(analysis: Analysis, titles: Titles, positions: Positions) {
    this.#titles = titles;
    this.#positions = positions;
    for (const source of analysis.sources.values())
      if (source.from) add(this.#begun, source.from.owner, source);
  }

  box(owner: PortOwner): Box {
    const common = {
      id: owner.name,
      title: nameText(this.#titles.of(owner)),
      room: owner.place?.name,
      noteLines: 0,
    };
    if (owner.kind === 'node') {
      const subtitle = nameText(owner.kit?.statement.label ?? owner.kit?.name ?? '');
      return { ...common, kind: 'node', subtitle, ...this.#ports(owner), picture: undefined };
    }
    const { kind, port } = owner;
    const only: BoxPort = {
      id: owner.name,
      title: '',
      side: (port && this.#positions.sideOf(port)) ?? (kind === 'source' ? 'east' : 'west'),
      free: false,
      begins: undefined,
    };
    const picture = kind === 'source' ? this.#titles.numberOf(owner) : undefined;
    return { ...common, kind, subtitle: '', ports: [only], moreFree: 0, picture };
  }

  #ports(node: Node): Pick<Box, 'ports' | 'moreFree'> {
    const begins = this.#beginnings(node);
    const freeDrawn = { west: 0, east: 0 };
    let moreFree = 0;
    const ports: BoxPort[] = [];
    for (const { port, label } of portsOf(node)) {
      const begun = begins.get(port);
      const free = port.links.length === 0 && begun === undefined;
      const side = this.#positions.sideOf(port) ?? (port.role === 'input' ? 'west' : 'east');
      if (free && freeDrawn[side]++ >= FREE_PORTS_DRAWN) {
        moreFree++;
        continue;
      }
      const title = joined([port.name, label && apart(label)], ' ');
      ports.push({ id: port.text, title, side, free, begins: begun });
    }
    return { ports, moreFree };
  }

  /** The pictures that come out of a node's own ports. */
  #beginnings(node: Node): ReadonlyMap<Port, number> {
    const begins = new Map<Port, number>();
    for (const source of this.#begun.get(node) ?? []) {
      const number = this.#titles.numberOf(source);
      if (source.from && number !== undefined) begins.set(source.from, number);
    }
    return begins;
  }
}

/** The sockets of its kit, then those that the plan speaks of while the kit is not known. */
function portsOf(node: Node): { port: Port; label: string | undefined }[] {
  return [
    ...socketsOf(node).map(({ kitPort, label, port }) => ({
      port: port ?? bareSocket(node, kitPort),
      label,
    })),
    ...node.loosePorts.map((port) => ({ port, label: port.label })),
  ];
}
