import elkModule from 'elkjs/lib/elk.bundled.js';
import type { ELK, ElkExtendedEdge, ElkNode, ElkPort } from 'elkjs/lib/elk-api.js';
import {
  boxSize,
  chipHeight,
  fonts,
  headHeight,
  portPitch,
  ribbonNoteHeight,
  ribbonScale,
  ribbonSize,
  ribbonTitleHeight,
} from './measures.ts';
import type { Box, Ribbon, Scene, SceneEnd, Wire } from './scene.ts';
import { textWidth } from './text-size.ts';

/** Its types say that the module has a default export; Node and esbuild give the constructor itself. */
const Elk = elkModule as unknown as new () => ELK;

export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Rectangle extends Point {
  readonly width: number;
  readonly height: number;
}

export interface PlacedLine {
  readonly points: readonly Point[];
  readonly label: Rectangle | undefined;
}

/** Where everything of a scene lies. Nothing in it depends on loads or segments: those never move anything. */
export interface Placement {
  readonly width: number;
  readonly height: number;
  readonly rooms: Readonly<Record<string, Rectangle>>;
  readonly boxes: Readonly<Record<string, Rectangle>>;
  /** The middle of each port, by its id. */
  readonly ports: Readonly<Record<string, Point>>;
  readonly wires: Readonly<Record<string, PlacedLine>>;
  readonly ribbons: Readonly<Record<string, Rectangle>>;
  /** The short cables from a ribbon's ends to its ports. */
  readonly stubs: Readonly<Record<string, readonly PlacedLine[]>>;
}

const options = {
  'elk.algorithm': 'layered',
  'elk.direction': 'RIGHT',
  'elk.hierarchyHandling': 'INCLUDE_CHILDREN',
  'elk.edgeRouting': 'ORTHOGONAL',
  'elk.json.shapeCoords': 'ROOT',
  'elk.json.edgeCoords': 'ROOT',
  // What is written first stands first, so that a line typed below moves little.
  'elk.layered.considerModelOrder.strategy': 'NODES_AND_EDGES',
  'elk.layered.nodePlacement.strategy': 'NETWORK_SIMPLEX',
  'elk.layered.spacing.nodeNodeBetweenLayers': '46',
  'elk.layered.spacing.edgeNodeBetweenLayers': '18',
  'elk.layered.spacing.edgeEdgeBetweenLayers': '12',
  'elk.spacing.nodeNode': '26',
  'elk.spacing.edgeNode': '16',
  'elk.spacing.edgeEdge': '12',
  'elk.spacing.componentComponent': '40',
  'elk.spacing.edgeLabel': '4',
};

/** Rooms, boxes and ribbons get sizes and positions from ELK's layered layout; the ports keep their sides. */
export async function placeScene(scene: Scene): Promise<Placement> {
  return read(await new Elk().layout(graphOf(scene)));
}

/** Ids of a plan may be anything: the layout gets its own, made of a letter for the kind and the id. */
const idOf = {
  room: (id: string) => `R${id}`,
  box: (id: string) => `B${id}`,
  port: (id: string) => `P${id}`,
  ribbon: (id: string) => `N${id}`,
  wire: (id: string) => `W${id}`,
};

function graphOf(scene: Scene): ElkNode {
  const inRooms = new Map(scene.rooms.map((room) => [room.id, [] as ElkNode[]]));
  const outside: ElkNode[] = [];
  const roomOf = new Map(scene.boxes.map((box) => [box.id, box.room]));
  for (const box of scene.boxes) (inRooms.get(box.room ?? '') ?? outside).push(elkBox(box));
  const scale = ribbonScale(scene);
  for (const ribbon of scene.ribbons) {
    const [a, b] = [roomOf.get(ribbon.from.box), roomOf.get(ribbon.to.box)];
    const home = a !== undefined && a === b ? (inRooms.get(a) ?? outside) : outside;
    home.push(elkRibbon(ribbon, ribbonSize(ribbon, scale)));
  }
  const rooms = scene.rooms
    .filter((room) => (inRooms.get(room.id) ?? []).length > 0)
    .map((room): ElkNode => {
      const width = textWidth(room.title, fonts.box, true) + 40;
      return {
        id: idOf.room(room.id),
        children: inRooms.get(room.id) ?? [],
        layoutOptions: {
          'elk.padding': '[top=44,left=20,bottom=22,right=20]',
          'elk.nodeSize.constraints': 'MINIMUM_SIZE',
          'elk.nodeSize.minimum': `(${width},80)`,
        },
      };
    });
  const westPorts = new Set(
    scene.boxes.flatMap((box) => box.ports.filter((port) => port.side === 'west').map((port) => port.id)),
  );
  return {
    id: 'root',
    layoutOptions: { ...options, 'elk.padding': '[top=12,left=12,bottom=12,right=12]' },
    children: [...rooms, ...outside],
    edges: [...scene.wires.map((wire) => elkWire(wire, westPorts)), ...scene.ribbons.flatMap(elkStubs)],
  };
}

function elkBox(box: Box): ElkNode {
  const { width, height } = boxSize(box);
  const rows = { west: 0, east: 0 };
  const ports = box.ports.map((port): ElkPort => {
    const row = rows[port.side]++;
    const y = box.kind === 'node' ? headHeight + row * portPitch + portPitch / 2 : chipHeight / 2;
    return {
      id: idOf.port(port.id),
      width: 0,
      height: 0,
      x: port.side === 'west' ? 0 : width,
      y,
      layoutOptions: { 'elk.port.side': port.side === 'west' ? 'WEST' : 'EAST' },
    };
  });
  return {
    id: idOf.box(box.id),
    width,
    height,
    ports,
    layoutOptions: { 'elk.portConstraints': 'FIXED_POS' },
  };
}

function elkRibbon(ribbon: Ribbon, size: { width: number; height: number }): ElkNode {
  const id = idOf.ribbon(ribbon.id);
  const end = (side: 'WEST' | 'EAST'): ElkPort => ({
    id: `${id}:${side}`,
    width: 0,
    height: 0,
    x: side === 'WEST' ? 0 : size.width,
    y: ribbonTitleHeight + (size.height - ribbonTitleHeight - ribbonNoteHeight) / 2,
    layoutOptions: { 'elk.port.side': side },
  });
  return {
    id,
    ...size,
    ports: [end('WEST'), end('EAST')],
    layoutOptions: { 'elk.portConstraints': 'FIXED_POS' },
  };
}

function portId({ port }: SceneEnd): string {
  return idOf.port(port);
}

function elkWire(wire: Wire, westPorts: ReadonlySet<string>): ElkExtendedEdge {
  // A layout goes from right sides to left sides, whichever way the picture goes.
  const against = westPorts.has(wire.from.port) && !westPorts.has(wire.to.port);
  const [first, last] = against ? [wire.to, wire.from] : [wire.from, wire.to];
  const text = [wire.text, wire.trouble?.text].filter(Boolean).join(' · ');
  const label = {
    text,
    width: textWidth(text, fonts.small, wire.trouble !== undefined) + (wire.trouble ? 26 : 8),
    height: 16,
    layoutOptions: { 'elk.edgeLabels.inline': 'true' },
  };
  return {
    id: idOf.wire(wire.id),
    sources: [portId(first)],
    targets: [portId(last)],
    labels: text ? [label] : [],
  };
}

function elkStubs(ribbon: Ribbon): ElkExtendedEdge[] {
  const id = idOf.ribbon(ribbon.id);
  const [left, right] = ribbon.fromLeft ? [ribbon.from, ribbon.to] : [ribbon.to, ribbon.from];
  return [
    { id: `${id}:left`, sources: [portId(left)], targets: [`${id}:WEST`] },
    { id: `${id}:right`, sources: [`${id}:EAST`], targets: [portId(right)] },
  ];
}

function read(root: ElkNode): Placement {
  const rooms: Record<string, Rectangle> = Object.create(null);
  const boxes: Record<string, Rectangle> = Object.create(null);
  const ports: Record<string, Point> = Object.create(null);
  const ribbons: Record<string, Rectangle> = Object.create(null);
  const wires: Record<string, PlacedLine> = Object.create(null);
  const stubs: Record<string, PlacedLine[]> = Object.create(null);
  const visit = (node: ElkNode) => {
    const rectangle = { x: node.x ?? 0, y: node.y ?? 0, width: node.width ?? 0, height: node.height ?? 0 };
    const [kind, id] = [node.id[0], node.id.slice(1)];
    if (kind === 'R') rooms[id] = rectangle;
    else if (kind === 'B') boxes[id] = rectangle;
    else if (kind === 'N') ribbons[id] = rectangle;
    for (const port of node.ports ?? [])
      if (port.id[0] === 'P') ports[port.id.slice(1)] = { x: port.x ?? 0, y: port.y ?? 0 };
    for (const child of node.children ?? []) visit(child);
    for (const edge of node.edges ?? []) {
      const id = edge.id.slice(1);
      if (edge.id[0] === 'W') wires[id] = line(edge);
      else {
        const ribbon = id.replace(/:(left|right)$/, '');
        stubs[ribbon] = [...(stubs[ribbon] ?? []), line(edge)];
      }
    }
  };
  for (const child of root.children ?? []) visit(child);
  visit({ id: 'root', edges: root.edges ?? [] });
  return { width: root.width ?? 0, height: root.height ?? 0, rooms, boxes, ports, wires, ribbons, stubs };
}

function line(edge: ElkExtendedEdge): PlacedLine {
  const points = (edge.sections ?? []).flatMap((section) => [
    section.startPoint,
    ...(section.bendPoints ?? []),
    section.endPoint,
  ]);
  const label = edge.labels?.[0];
  const at = label && {
    x: label.x ?? 0,
    y: label.y ?? 0,
    width: label.width ?? 0,
    height: label.height ?? 0,
  };
  return { points, label: at };
}
