import type { ElkExtendedEdge, ElkNode } from 'elkjs/lib/elk-api.js';
import { idOf } from './elk-graph.ts';
import { measureBox, portPitch } from './measures.ts';
import type { PlacedLine, Placement, Point, Rectangle } from './placement.ts';
import type { Box, Scene } from './scene.ts';

/** Where everything of a scene lies, out of a graph that ELK has laid out. */
export function readLayout(scene: Scene, root: ElkNode): Placement {
  const nodes = new Map<string, Rectangle>();
  const pluggedPorts = new Map<string, Point>();
  const edges = new Map<string, PlacedLine>();
  const open = [root];
  for (const node of open) {
    nodes.set(node.id, rectangleOf(node));
    for (const { id, x = 0, y = 0 } of node.ports ?? []) pluggedPorts.set(id, { x, y });
    for (const edge of node.edges ?? []) edges.set(edge.id, lineOf(edge));
    open.push(...(node.children ?? []));
  }
  const boxes = placed(scene.boxes, nodes, idOf.box);
  const ports = new Map<string, Point>();
  for (const box of scene.boxes) {
    const at = boxes.get(box.id);
    if (at) placePorts(box, at, pluggedPorts, ports);
  }
  return {
    width: root.width ?? 0,
    height: root.height ?? 0,
    rooms: placed(scene.rooms, nodes, idOf.room),
    boxes,
    ports,
    wires: placed(scene.wires, edges, idOf.wire),
    ribbons: placed(scene.ribbons, nodes, idOf.ribbon),
    stubs: new Map(
      scene.ribbons.map(({ id }) => [
        id,
        (['left', 'right'] as const).flatMap((side) => edges.get(idOf.stub(id, side)) ?? []),
      ]),
    ),
  };
}

function placed<T>(
  things: readonly { readonly id: string }[],
  found: ReadonlyMap<string, T>,
  idFor: (id: string) => string,
): Map<string, T> {
  const at = new Map<string, T>();
  for (const { id } of things) {
    const one = found.get(idFor(id));
    if (one !== undefined) at.set(id, one);
  }
  return at;
}

/** Ports with a cable lie where the layout put them; the others follow below them in the order of the kit. */
function placePorts(
  box: Box,
  at: Rectangle,
  plugged: ReadonlyMap<string, Point>,
  ports: Map<string, Point>,
): void {
  const next = at.y + measureBox(box).firstPort;
  const below = { west: next, east: next };
  for (const { id, side } of box.ports) {
    const spot = plugged.get(idOf.port(id));
    if (!spot) continue;
    ports.set(id, spot);
    below[side] = Math.max(below[side], spot.y + portPitch);
  }
  for (const { id, side } of box.ports) {
    if (ports.has(id)) continue;
    ports.set(id, { x: side === 'west' ? at.x : at.x + at.width, y: below[side] });
    below[side] += portPitch;
  }
}

function rectangleOf({ x = 0, y = 0, width = 0, height = 0 }: Partial<Rectangle>): Rectangle {
  return { x, y, width, height };
}

function lineOf({ sections = [], labels = [] }: ElkExtendedEdge): PlacedLine {
  const points = sections.flatMap(({ startPoint, bendPoints = [], endPoint }) => [
    startPoint,
    ...bendPoints,
    endPoint,
  ]);
  const [label] = labels;
  return { points, label: label && rectangleOf(label) };
}
