import type { ElkNode } from 'elkjs/lib/elk-api.js';
import { elkGraph } from './elk-graph.ts';
import type { Placement } from './placement.ts';
import { readLayout } from './read-layout.ts';
import type { Scene } from './scene.ts';

/** The layout library, wherever it runs. */
export type LayOut = (graph: ElkNode) => Promise<ElkNode>;

/** Where everything of a scene lies. */
export async function arrange(scene: Scene, layOut: LayOut): Promise<Placement> {
  try {
    return readLayout(scene, await layOut(elkGraph(scene)));
  } catch {
    // The library fails on a few graphs whose order it is to keep.
    return readLayout(scene, await layOut(elkGraph(scene, { keepOrder: false })));
  }
}
