/** A scene as the layout library ELK takes it: rooms are containers, boxes and ribbons nodes, wires edges. */
import type { ElkExtendedEdge, ElkNode, ElkPort } from 'elkjs/lib/elk-api.js';
import {
  fonts,
  measureBox,
  measureLabel,
  measureRibbon,
  portPitch,
  type RibbonScale,
  ribbonScale,
} from './measures.ts';
import type { Box, Ribbon, Scene, Wire } from './scene.ts';
import { textWidth } from './text-size.ts';

/** Of the whole drawing and of each room: what contains something hands nothing of this down. */
const everywhere = {
  'elk.algorithm': 'layered',
  'elk.direction': 'RIGHT',
  'elk.hierarchyHandling': 'INCLUDE_CHILDREN',
  'elk.edgeRouting': 'ORTHOGONAL',
  'elk.layered.thoroughness': '20',
  'elk.layered.nodePlacement.strategy': 'NETWORK_SIMPLEX',
  'elk.layered.compaction.postCompaction.strategy': 'EDGE_LENGTH',
  'elk.layered.spacing.nodeNodeBetweenLayers': '30',
  // An arrow has room before the box that it points at.
  'elk.layered.spacing.edgeNodeBetweenLayers': '18',
  'elk.layered.spacing.edgeEdgeBetweenLayers': '10',
  'elk.spacing.nodeNode': '20',
  'elk.spacing.edgeNode': '14',
  'elk.spacing.edgeEdge': '10',
  'elk.spacing.componentComponent': '30',
  'elk.spacing.edgeLabel': '4',
};

/** What is written first stands first, so that a line typed below moves little. Rooms cannot have it. */
const asWritten = { 'elk.layered.considerModelOrder.strategy': 'NODES_AND_EDGES' };

const options = {
  ...everywhere,
  'elk.json.shapeCoords': 'ROOT',
  'elk.json.edgeCoords': 'ROOT',
  'elk.padding': '[top=12,left=12,bottom=12,right=12]',
};

const longestRoomTitle = 300;

/** Ids of a plan may be anything: the layout gets its own, made of a letter for the kind and the id. */
export const idOf = {
  room: (id: string) => `R${id}`,
  box: (id: string) => `B${id}`,
  port: (id: string) => `P${id}`,
  ribbon: (id: string) => `N${id}`,
  wire: (id: string) => `W${id}`,
  stub: (id: string, side: 'left' | 'right') => `${side === 'left' ? 'L' : 'M'}${id}`,
};

export function elkGraph(scene: Scene, { keepOrder = true } = {}): ElkNode {
  const inRooms = new Map(scene.rooms.map((room) => [room.id, [] as ElkNode[]]));
  const outside: ElkNode[] = [];
  const inRoom = (room: string | undefined) =>
    (room === undefined ? undefined : inRooms.get(room)) ?? outside;
  const roomOf = new Map(scene.boxes.map((box) => [box.id, box.room]));
  const plugged = new Set([...scene.wires, ...scene.ribbons].flatMap(({ from, to }) => [from.port, to.port]));
  for (const box of scene.boxes) inRoom(box.room).push(elkBox(box, plugged));
  const scale = ribbonScale(scene);
  for (const ribbon of scene.ribbons) {
    const [a, b] = [roomOf.get(ribbon.from.box), roomOf.get(ribbon.to.box)];
    inRoom(a === b ? a : undefined).push(elkRibbon(ribbon, scale));
  }
  const rooms = scene.rooms.flatMap(({ id, title }) => {
    const children = inRooms.get(id) ?? [];
    return children.length === 0 ? [] : [elkRoom(id, title, children)];
  });
  return {
    id: 'root',
    layoutOptions: { ...options, ...(keepOrder ? asWritten : {}) },
    children: [...rooms, ...outside],
    edges: [...scene.wires.map(elkWire), ...scene.ribbons.flatMap(elkStubs)],
  };
}

function elkRoom(id: string, title: string, children: ElkNode[]): ElkNode {
  const width = Math.min(longestRoomTitle, textWidth(title, fonts.box, true)) + 36;
  return {
    id: idOf.room(id),
    children,
    layoutOptions: {
      ...everywhere,
      'elk.padding': '[top=44,left=20,bottom=20,right=20]',
      'elk.nodeSize.constraints': 'MINIMUM_SIZE',
      'elk.nodeSize.minimum': `(${Math.ceil(width)},80)`,
    },
  };
}

interface SpacedElkNode extends ElkNode {
  readonly individualSpacings?: Readonly<Record<string, string>>;
}

/** Ports keep their sides; along a side the layout orders those with cables so that few cables cross. */
function elkBox(box: Box, plugged: ReadonlySet<string>): SpacedElkNode {
  const { width, height, firstPort } = measureBox(box);
  const ports = box.ports
    .filter((port) => plugged.has(port.id))
    .map(
      (port): ElkPort => ({
        id: idOf.port(port.id),
        width: 0,
        height: 0,
        layoutOptions: { 'elk.port.side': port.side === 'west' ? 'WEST' : 'EAST' },
      }),
    );
  return {
    id: idOf.box(box.id),
    width,
    height,
    ports,
    layoutOptions: {
      'elk.portConstraints': 'FIXED_SIDE',
      'elk.portAlignment.default': 'BEGIN',
      'elk.nodeSize.constraints': 'PORTS MINIMUM_SIZE',
      'elk.nodeSize.minimum': `(${width},${height})`,
    },
    individualSpacings: {
      'elk.spacing.portPort': `${portPitch}`,
      // The layout puts the first port one above this.
      'elk.spacing.portsSurrounding': `[top=${firstPort + 1},left=0,bottom=0,right=0]`,
    },
  };
}

function elkRibbon(ribbon: Ribbon, scale: RibbonScale): ElkNode {
  const { width, height, lanesTop, notesTop } = measureRibbon(ribbon, scale);
  const id = idOf.ribbon(ribbon.id);
  const end = (side: 'WEST' | 'EAST'): ElkPort => ({
    id: `${id}:${side}`,
    width: 0,
    height: 0,
    x: side === 'WEST' ? 0 : width,
    y: (lanesTop + notesTop) / 2,
    layoutOptions: { 'elk.port.side': side },
  });
  return {
    id,
    width,
    height,
    ports: [end('WEST'), end('EAST')],
    layoutOptions: { 'elk.portConstraints': 'FIXED_POS' },
  };
}

/** Edges go from left to right, whichever way the picture goes. */
function elkWire(wire: Wire): ElkExtendedEdge {
  const [left, right] = wire.fromLeft ? [wire.from, wire.to] : [wire.to, wire.from];
  const { words, width, height } = measureLabel(wire);
  return {
    id: idOf.wire(wire.id),
    sources: [idOf.port(left.port)],
    targets: [idOf.port(right.port)],
    // The layout forgets a label without words.
    labels: [{ text: words || '-', width, height, layoutOptions: { 'elk.edgeLabels.inline': 'true' } }],
  };
}

function elkStubs(ribbon: Ribbon): ElkExtendedEdge[] {
  const id = idOf.ribbon(ribbon.id);
  const [left, right] = ribbon.fromLeft ? [ribbon.from, ribbon.to] : [ribbon.to, ribbon.from];
  return [
    { id: idOf.stub(ribbon.id, 'left'), sources: [idOf.port(left.port)], targets: [`${id}:WEST`] },
    { id: idOf.stub(ribbon.id, 'right'), sources: [`${id}:EAST`], targets: [idOf.port(right.port)] },
  ];
}
