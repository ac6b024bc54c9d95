import { type DrawnParts, face } from '../../documents/drawing/draw-svg.ts';

const SVG = 'http://www.w3.org/2000/svg';

/** Puts a drawing on the page, and of the next one only what is drawn otherwise: whoever looks at a thing keeps it. */
export class Painter {
  readonly #sheet: HTMLElement;
  #parts: DrawnParts | undefined;
  #things = new Map<string, Element>();

  constructor(sheet: HTMLElement) {
    this.#sheet = sheet;
  }

  /** The drawing, once there is one. */
  get svg(): SVGSVGElement | null {
    return this.#sheet.querySelector('svg');
  }

  paint(parts: DrawnParts): void {
    const { svg } = this;
    if (svg && this.#parts && hasSamePlaces(parts, this.#parts)) this.#repaint(svg, parts, this.#parts);
    else this.#paintAll(parts);
    this.svg?.setAttribute('aria-label', parts.label);
    this.#parts = parts;
  }

  clear(): void {
    this.#sheet.replaceChildren();
    this.#parts = undefined;
    this.#things.clear();
  }

  #paintAll({ width, height, ground, heading, origin, things, legend }: DrawnParts): void {
    const svg = document.createElementNS(SVG, 'svg');
    const attributes = {
      width: String(width),
      height: String(height),
      viewBox: `0 0 ${width} ${height}`,
      role: 'group',
      'font-family': face,
    };
    for (const [name, value] of Object.entries(attributes)) svg.setAttribute(name, value);
    svg.innerHTML = `${ground}${heading}<g class="things" transform="translate(${origin.x} ${origin.y})">${[...things.values()].join('')}</g>${legend}`;
    this.#sheet.replaceChildren(svg);
    const drawn = svg.querySelector('g.things')?.children ?? [];
    const keys = [...things].filter(([, markup]) => markup !== '').map(([key]) => key);
    this.#things = new Map(keys.flatMap((key, i) => (drawn[i] ? [[key, drawn[i]]] : [])));
  }

  #repaint(svg: SVGSVGElement, parts: DrawnParts, before: DrawnParts): void {
    if (parts.heading !== before.heading) replace(svg.querySelector('g.heading'), parts.heading);
    if (parts.legend !== before.legend) replace(svg.querySelector('g.legend'), parts.legend);
    for (const [key, markup] of parts.things) {
      if (markup === before.things.get(key)) continue;
      const fresh = replace(this.#things.get(key), markup);
      if (fresh) this.#things.set(key, fresh);
    }
  }
}

/** The same things in the same order on the same ground. */
function hasSamePlaces(a: DrawnParts, b: DrawnParts): boolean {
  if (a.width !== b.width || a.height !== b.height || a.ground !== b.ground) return false;
  if (a.things.size !== b.things.size) return false;
  const others = b.things.entries();
  for (const [key, markup] of a.things) {
    const [otherKey, otherMarkup] = others.next().value ?? [];
    if (key !== otherKey || (markup === '') !== (otherMarkup === '')) return false;
  }
  return true;
}

/** Puts an element in the place of another, and the focus onto it when the other had it. @returns the new one. */
function replace(old: Element | null | undefined, markup: string): Element | undefined {
  if (!old) return undefined;
  const holder = document.createElementNS(SVG, 'g');
  holder.innerHTML = markup;
  const fresh = holder.firstElementChild;
  if (!fresh) return undefined;
  const hadFocus = document.activeElement === old;
  old.replaceWith(fresh);
  if (hadFocus && fresh instanceof SVGElement) {
    fresh.setAttribute('tabindex', '0');
    fresh.focus({ preventScroll: true });
  }
  return fresh;
}
