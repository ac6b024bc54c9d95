import type { ElkExtendedEdge, ElkNode } from 'elkjs/lib/elk-api.js';
import type { LayOut } from './arrange.ts';

/**
 * A layout that does each shape of graph once: rooms that are furnished alike, with names as long, lie alike. It keeps
 * what it has laid out; let go of it with the work that it was made for.
 */
export function layOutOnce(layOut: LayOut): LayOut {
  const done = new Map<string, Promise<ElkNode>>();
  return async (graph) => {
    const numbers = new Map<string, string>();
    const names: string[] = [];
    const numbered = withIds(graph, (id) => {
      const known = numbers.get(id);
      if (known !== undefined) return known;
      const number = `n${names.length}`;
      numbers.set(id, number);
      names.push(id);
      return number;
    });
    const shape = JSON.stringify(numbered);
    let laidOut = done.get(shape);
    if (!laidOut) {
      laidOut = layOut(numbered);
      done.set(shape, laidOut);
    }
    return withIds(await laidOut, (id) => names[Number(id.slice(1))] ?? id);
  };
}

/** A copy of a graph with other ids and without its words, of which the layout needs the size alone. */
function withIds(node: ElkNode, nameOf: (id: string) => string): ElkNode {
  const { ports, children, edges } = node;
  return {
    ...node,
    id: nameOf(node.id),
    ...(ports ? { ports: ports.map((port) => ({ ...port, id: nameOf(port.id) })) } : {}),
    ...(children ? { children: children.map((child) => withIds(child, nameOf)) } : {}),
    ...(edges ? { edges: edges.map((edge) => edgeWithIds(edge, nameOf)) } : {}),
  };
}

function edgeWithIds(edge: ElkExtendedEdge, nameOf: (id: string) => string): ElkExtendedEdge {
  const { labels } = edge;
  return {
    ...edge,
    id: nameOf(edge.id),
    sources: edge.sources.map(nameOf),
    targets: edge.targets.map(nameOf),
    ...(labels ? { labels: labels.map((label) => ({ ...label, text: '-' })) } : {}),
  };
}
