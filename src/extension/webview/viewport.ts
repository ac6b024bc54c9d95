/** Moves and scales the picture: wheel, drag, keys. Only a transform changes, so that large plans stay fluid. */
export class Viewport {
  readonly #frame: HTMLElement;
  readonly #sheet: HTMLElement;
  #x = 0;
  #y = 0;
  #scale = 1;
  /** Set once the person has moved the picture: from then on it is not fitted again. */
  moved = false;
  /** The pointer has just moved the picture: the click that follows opens nothing. */
  dragged = false;

  constructor(frame: HTMLElement, sheet: HTMLElement) {
    this.#frame = frame;
    this.#sheet = sheet;
    frame.addEventListener('wheel', (event) => this.#wheel(event), { passive: false });
    frame.addEventListener('pointerdown', (event) => this.#drag(event));
  }

  /** Shows the whole picture. */
  fit(): void {
    const svg = this.#sheet.querySelector('svg');
    if (!svg) return;
    const [width, height] = [svg.width.baseVal.value, svg.height.baseVal.value];
    const scale = Math.min(this.#frame.clientWidth / width, this.#frame.clientHeight / height, 1.5);
    this.#scale = Math.max(0.05, scale);
    this.#x = Math.max(0, (this.#frame.clientWidth - width * this.#scale) / 2);
    this.#y = 0;
    this.moved = false;
    this.#apply();
  }

  zoom(factor: number, at = { x: this.#frame.clientWidth / 2, y: this.#frame.clientHeight / 2 }): void {
    const scale = Math.min(8, Math.max(0.05, this.#scale * factor));
    this.#x = at.x - ((at.x - this.#x) * scale) / this.#scale;
    this.#y = at.y - ((at.y - this.#y) * scale) / this.#scale;
    this.#scale = scale;
    this.moved = true;
    this.#apply();
  }

  pan(dx: number, dy: number): void {
    this.#x += dx;
    this.#y += dy;
    this.moved = true;
    this.#apply();
  }

  /** Brings an element into the middle when it is out of sight. */
  reveal(element: Element): void {
    const frame = this.#frame.getBoundingClientRect();
    const at = element.getBoundingClientRect();
    const inside =
      at.left >= frame.left && at.right <= frame.right && at.top >= frame.top && at.bottom <= frame.bottom;
    if (inside) return;
    this.#x += frame.left + frame.width / 2 - (at.left + at.width / 2);
    this.#y += frame.top + frame.height / 2 - (at.top + at.height / 2);
    this.#apply();
  }

  #apply(): void {
    this.#sheet.style.transform = `translate(${this.#x}px, ${this.#y}px) scale(${this.#scale})`;
  }

  #wheel(event: WheelEvent): void {
    event.preventDefault();
    if (event.ctrlKey || event.metaKey) {
      const frame = this.#frame.getBoundingClientRect();
      this.zoom(Math.exp(-event.deltaY / 300), {
        x: event.clientX - frame.left,
        y: event.clientY - frame.top,
      });
    } else this.pan(-event.deltaX, -event.deltaY);
  }

  #drag(start: PointerEvent): void {
    if (start.button !== 0) return;
    this.dragged = false;
    let last = { x: start.clientX, y: start.clientY };
    const move = (event: PointerEvent) => {
      if (!this.dragged && Math.hypot(event.clientX - start.clientX, event.clientY - start.clientY) < 4)
        return;
      this.dragged = true;
      this.pan(event.clientX - last.x, event.clientY - last.y);
      last = { x: event.clientX, y: event.clientY };
    };
    const stop = () => {
      window.removeEventListener('pointermove', move);
      window.removeEventListener('pointerup', stop);
      window.removeEventListener('pointercancel', stop);
    };
    window.addEventListener('pointermove', move);
    window.addEventListener('pointerup', stop);
    window.addEventListener('pointercancel', stop);
  }
}
