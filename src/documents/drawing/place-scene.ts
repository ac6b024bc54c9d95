import elkModule from 'elkjs/lib/elk.bundled.js';
import type { ELK } from 'elkjs/lib/elk-api.js';
import { layOutOnce } from './alike.ts';
import { arrange } from './arrange.ts';
import type { Placement } from './placement.ts';
import type { Scene } from './scene.ts';

export type { PlacedLine, Placement, Point, Rectangle } from './placement.ts';

/** Its types say that the module has a default export; Node and esbuild give the constructor itself. */
const Elk = elkModule as unknown as new () => ELK;

/** Rooms, boxes and ribbons get sizes and positions from ELK's layered layout; the ports keep their sides. */
export async function placeScene(scene: Scene): Promise<Placement> {
  return scenePlacer()(scene);
}

/** For many scenes, of which those that are alike are laid out once; it keeps them as long as it is kept. */
export function scenePlacer(): (scene: Scene) => Promise<Placement> {
  const elk = new Elk();
  const layOut = layOutOnce((graph) => elk.layout(graph));
  return (scene) => arrange(scene, layOut);
}
