import { type Placement, placeScene } from '../../documents/drawing/place-scene.ts';
import type { Scene } from '../../documents/drawing/scene.ts';

/**
 * Lays scenes out one at a time. While one is being laid out, later ones wait, and only the latest of them counts; a
 * scene whose boxes and cables are as before keeps its placement, so that a load or a segment moves nothing.
 */
export class Layouts {
  readonly #done: (scene: Scene, placement: Placement) => void;
  readonly #failed: (error: unknown) => void;
  #placed: { key: string; placement: Placement } | undefined;
  #running = false;
  #waiting: Scene | undefined;

  constructor(done: (scene: Scene, placement: Placement) => void, failed: (error: unknown) => void) {
    this.#done = done;
    this.#failed = failed;
  }

  request(scene: Scene): void {
    if (this.#placed?.key === layoutKey(scene)) {
      this.#waiting = undefined;
      this.#done(scene, this.#placed.placement);
    } else if (this.#running) this.#waiting = scene;
    else void this.#run(scene);
  }

  async #run(scene: Scene): Promise<void> {
    this.#running = true;
    try {
      const placement = await placeScene(scene);
      this.#placed = { key: layoutKey(scene), placement };
      if (!this.#waiting) this.#done(scene, placement);
    } catch (error) {
      this.#failed(error);
    }
    this.#running = false;
    const next = this.#waiting;
    this.#waiting = undefined;
    if (next) this.request(next);
  }
}

/** All of a scene that a layout depends on. */
function layoutKey({ title, rooms, boxes, wires, ribbons }: Scene): string {
  return JSON.stringify([title, rooms, boxes, wires, ribbons]);
}
