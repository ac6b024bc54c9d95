import { arrange, type LayOut } from '../../documents/drawing/arrange.ts';
import type { Placement } from '../../documents/drawing/placement.ts';
import type { Scene } from '../../documents/drawing/scene.ts';

export interface LayoutListener {
  placed(scene: Scene, placement: Placement): void;
  /** A layout has begun; or all are done. */
  busy(working: boolean): void;
  failed(error: unknown): void;
}

/**
 * Lays scenes out one at a time. While one is being laid out, later ones wait, and only the latest of them counts; a
 * scene whose boxes and cables are as before keeps its placement, so that a load or a segment moves nothing.
 */
export class Layouts {
  readonly #layOut: LayOut;
  readonly #listener: LayoutListener;
  #placed: { key: string; placement: Placement } | undefined;
  #running = false;
  #waiting: Scene | undefined;

  constructor(layOut: LayOut, listener: LayoutListener) {
    this.#layOut = layOut;
    this.#listener = listener;
  }

  request(scene: Scene): void {
    if (this.#placed?.key === layoutKey(scene)) {
      this.#waiting = undefined;
      this.#listener.placed(scene, this.#placed.placement);
    } else if (this.#running) this.#waiting = scene;
    else void this.#run(scene);
  }

  async #run(scene: Scene): Promise<void> {
    this.#running = true;
    this.#listener.busy(true);
    try {
      const placement = await arrange(scene, this.#layOut);
      this.#placed = { key: layoutKey(scene), placement };
      if (!this.#waiting) this.#listener.placed(scene, placement);
    } catch (error) {
      this.#listener.failed(error);
    }
    this.#running = false;
    const next = this.#waiting;
    this.#waiting = undefined;
    if (next) this.request(next);
    if (!this.#running) this.#listener.busy(false);
  }
}

/** All of a scene that a layout depends on. */
function layoutKey({ rooms, boxes, wires, ribbons }: Scene): string {
  return JSON.stringify([rooms, boxes, wires, ribbons]);
}
