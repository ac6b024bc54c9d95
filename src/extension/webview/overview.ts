import type { DrawnParts } from '../../documents/drawing/draw-svg.ts';
import type { Placement, Rectangle } from '../../documents/drawing/placement.ts';
import type { Sight } from './viewport.ts';

const SVG = 'http://www.w3.org/2000/svg';
/** The largest that it gets, on the screen. */
const most = { width: 190, height: 130 };

/**
 * The whole picture in a corner while only a part of it is in sight: rooms and boxes without words, and a frame around
 * what is in sight. A pointer on it moves there; keys and listeners have the picture itself.
 */
export class Overview {
  readonly #svg: SVGSVGElement;
  readonly #frame: SVGRectElement;
  #size = { width: 0, height: 0 };

  /** @param moveTo Is told the point of the picture that a person wants in the middle. */
  constructor(svg: SVGSVGElement, moveTo: (x: number, y: number) => void) {
    this.#svg = svg;
    this.#frame = rectangle('sight', { x: 0, y: 0, width: 0, height: 0 });
    const go = (event: PointerEvent) => {
      if ((event.buttons & 1) === 0) return;
      event.stopPropagation();
      const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(svg.getScreenCTM()!.inverse());
      moveTo(at.x, at.y);
    };
    svg.addEventListener('pointerdown', (event) => {
      svg.setPointerCapture(event.pointerId);
      go(event);
    });
    svg.addEventListener('pointermove', go);
  }

  draw(
    { width, height, origin }: Pick<DrawnParts, 'width' | 'height' | 'origin'>,
    placement: Placement,
  ): void {
    this.#size = { width, height };
    const scale = Math.min(most.width / width, most.height / height);
    this.#svg.setAttribute('viewBox', `0 0 ${width} ${height}`);
    this.#svg.setAttribute('width', String(width * scale));
    this.#svg.setAttribute('height', String(height * scale));
    const things = document.createElementNS(SVG, 'g');
    things.setAttribute('transform', `translate(${origin.x} ${origin.y})`);
    for (const room of placement.rooms.values()) things.append(rectangle('room', room));
    for (const box of placement.boxes.values()) things.append(rectangle('box', box));
    for (const ribbon of placement.ribbons.values()) things.append(rectangle('box', ribbon));
    this.#svg.replaceChildren(things, this.#frame);
  }

  /** Away while all is in sight. */
  look(sight: Sight): void {
    const { width, height } = this.#size;
    const slack = 1;
    const isAll =
      sight.x <= slack &&
      sight.y <= slack &&
      sight.x + sight.width >= width - slack &&
      sight.y + sight.height >= height - slack;
    this.#svg.toggleAttribute('hidden', width === 0 || isAll);
    // So that its edge is seen where the sight goes beyond the picture.
    const left = Math.max(0, Math.min(sight.x, width));
    const top = Math.max(0, Math.min(sight.y, height));
    place(this.#frame, {
      x: left,
      y: top,
      width: Math.max(0, Math.min(sight.x + sight.width, width) - left),
      height: Math.max(0, Math.min(sight.y + sight.height, height) - top),
    });
  }

  clear(): void {
    this.#size = { width: 0, height: 0 };
    this.#svg.toggleAttribute('hidden', true);
  }
}

function rectangle(kind: string, at: Rectangle): SVGRectElement {
  const rect = document.createElementNS(SVG, 'rect');
  rect.setAttribute('class', kind);
  place(rect, at);
  return rect;
}

function place(rect: SVGRectElement, at: Rectangle): void {
  for (const name of ['x', 'y', 'width', 'height'] as const) rect.setAttribute(name, String(at[name]));
}
