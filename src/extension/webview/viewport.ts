const smallest = 0.02;
const largest = 8;
/** A picture that is shown whole is not blown up beyond this. */
const largestFit = 1.5;
/** Below this scale words are too small to be read. */
const readable = 0.6;
/** As wide a line is for a pointer, on the screen. */
const NEAR_PX = 11;
/** So long after the last movement words are drawn sharp again. */
const REST_MS = 160;

/** What of the picture is in sight, in the picture's own unit. */
export interface Sight {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Moves and scales the picture: wheel, drag, two fingers, keys. Only a transform changes, so that large plans stay fluid. */
export class Viewport {
  readonly #frame: HTMLElement;
  readonly #sheet: HTMLElement;
  readonly #pointers = new Map<number, { x: number; y: number }>();
  #x = 0;
  #y = 0;
  #scale = 1;
  #resting: ReturnType<typeof setTimeout> | undefined;
  #waiting = false;
  /** How the picture is placed when the frame or the picture gets another size; undefined: it stays where it is. */
  #placed: (() => void) | undefined = () => this.begin();
  /** The pointer has just moved the picture: the click that follows opens nothing. */
  dragged = false;

  readonly #looked: (sight: Sight) => void;

  /** @param looked Is told whenever something else is in sight. */
  constructor(frame: HTMLElement, sheet: HTMLElement, looked: (sight: Sight) => void) {
    this.#frame = frame;
    this.#sheet = sheet;
    this.#looked = looked;
    frame.addEventListener('wheel', (event) => this.#wheel(event), { passive: false });
    frame.addEventListener('pointerdown', (event) => this.#press(event));
    window.addEventListener('pointermove', (event) => this.#drag(event));
    for (const kind of ['pointerup', 'pointercancel'] as const)
      window.addEventListener(kind, ({ pointerId }) => this.#pointers.delete(pointerId));
    new ResizeObserver(() => this.adjust()).observe(frame);
  }

  /** Once a person has moved the picture it is not placed anew by itself. */
  get moved(): boolean {
    return this.#placed === undefined;
  }

  /** Places the picture as before, when it or the frame has another size; unless a person has moved it. */
  adjust(): void {
    if (this.#placed) this.#placed();
    else this.#apply();
  }

  /** Shows the whole picture. */
  fit(): void {
    this.#show(smallest);
    this.#placed = () => this.fit();
  }

  /** Shows the whole picture where it can be read so, else its beginning. */
  begin(): void {
    this.#show(readable);
    this.#placed = () => this.begin();
  }

  #show(least: number): void {
    const svg = this.#sheet.querySelector('svg');
    if (!svg) return;
    const [width, height] = [svg.width.baseVal.value, svg.height.baseVal.value];
    const { clientWidth, clientHeight } = this.#frame;
    this.#scale = Math.max(least, Math.min(clientWidth / width, clientHeight / height, largestFit));
    this.#x = Math.max(0, (clientWidth - width * this.#scale) / 2);
    this.#y = Math.max(0, (clientHeight - height * this.#scale) / 3);
    this.#apply();
  }

  /** Brings a point of the picture into the middle. */
  centre(x: number, y: number): void {
    this.#x = this.#frame.clientWidth / 2 - x * this.#scale;
    this.#y = this.#frame.clientHeight / 2 - y * this.#scale;
    this.#placed = undefined;
    this.#apply();
  }

  /** @param at What stays where it is, from the frame's corner; else its middle. */
  zoom(factor: number, at = { x: this.#frame.clientWidth / 2, y: this.#frame.clientHeight / 2 }): void {
    const scale = Math.min(largest, Math.max(smallest, this.#scale * factor));
    this.#x = at.x - ((at.x - this.#x) * scale) / this.#scale;
    this.#y = at.y - ((at.y - this.#y) * scale) / this.#scale;
    this.#scale = scale;
    this.#placed = undefined;
    this.#apply();
  }

  pan(dx: number, dy: number): void {
    this.#x += dx;
    this.#y += dy;
    this.#placed = undefined;
    this.#apply();
  }

  /** Changes the picture, and brings something that is on it before and after to where it was. */
  keeping(find: () => Element | undefined, change: () => void): void {
    const before = find()?.getBoundingClientRect();
    change();
    const after = this.moved ? find()?.getBoundingClientRect() : undefined;
    if (!before || !after) return;
    this.#x += before.left - after.left;
    this.#y += before.top - after.top;
    this.#apply();
  }

  /** Brings an element into the middle when it is out of sight, and near when it is too small to be read. */
  reveal(element: Element): void {
    if (this.#scale < readable) {
      this.zoom(readable / this.#scale);
      // What follows measures on the screen.
      this.#move();
    }
    const frame = this.#frame.getBoundingClientRect();
    const at = element.getBoundingClientRect();
    const inside =
      at.left >= frame.left && at.right <= frame.right && at.top >= frame.top && at.bottom <= frame.bottom;
    if (inside) return;
    this.pan(
      frame.left + frame.width / 2 - (at.left + at.width / 2),
      frame.top + frame.height / 2 - (at.top + at.height / 2),
    );
    this.#move();
  }

  /** Whether any part of an element is in sight. */
  sees(element: Element): boolean {
    if (this.#waiting) this.#move();
    const frame = this.#frame.getBoundingClientRect();
    const at = element.getBoundingClientRect();
    return at.left < frame.right && at.right > frame.left && at.top < frame.bottom && at.bottom > frame.top;
  }

  /** Many movements between two pictures of the screen are one. */
  #apply(): void {
    clearTimeout(this.#resting);
    this.#sheet.style.willChange = 'transform';
    this.#resting = setTimeout(() => {
      this.#sheet.style.willChange = '';
      // At any scale a pointer meets a line as easily.
      this.#sheet.style.setProperty('--near', String(Math.max(6, NEAR_PX / this.#scale)));
    }, REST_MS);
    if (this.#waiting) return;
    this.#waiting = true;
    requestAnimationFrame(() => this.#move());
  }

  #move(): void {
    this.#waiting = false;
    const scale = this.#scale;
    this.#sheet.style.transform = `translate(${this.#x}px, ${this.#y}px) scale(${scale})`;
    const { clientWidth, clientHeight } = this.#frame;
    this.#looked({
      x: -this.#x / scale,
      y: -this.#y / scale,
      width: clientWidth / scale,
      height: clientHeight / scale,
    });
  }

  #wheel(event: WheelEvent): void {
    event.preventDefault();
    if (event.ctrlKey || event.metaKey)
      this.zoom(Math.exp(-event.deltaY / 300), this.#inFrame(event.clientX, event.clientY));
    else if (event.shiftKey && event.deltaX === 0) this.pan(-event.deltaY, 0);
    else this.pan(-event.deltaX, -event.deltaY);
  }

  #inFrame(x: number, y: number): { x: number; y: number } {
    const { left, top } = this.#frame.getBoundingClientRect();
    return { x: x - left, y: y - top };
  }

  #press({ button, pointerId, clientX, clientY }: PointerEvent): void {
    if (button !== 0) return;
    if (this.#pointers.size === 0) this.dragged = false;
    this.#pointers.set(pointerId, { x: clientX, y: clientY });
  }

  /** One finger drags the picture, two scale it. */
  #drag({ pointerId, clientX, clientY }: PointerEvent): void {
    const last = this.#pointers.get(pointerId);
    if (!last) return;
    const [dx, dy] = [clientX - last.x, clientY - last.y];
    if (!this.dragged && Math.hypot(dx, dy) < 4) return;
    this.dragged = true;
    const [other] = [...this.#pointers].filter(([id]) => id !== pointerId).map(([, at]) => at);
    if (other) {
      const before = Math.hypot(last.x - other.x, last.y - other.y);
      const after = Math.hypot(clientX - other.x, clientY - other.y);
      this.zoom(after / Math.max(1, before), this.#inFrame((clientX + other.x) / 2, (clientY + other.y) / 2));
    } else this.pan(dx, dy);
    this.#pointers.set(pointerId, { x: clientX, y: clientY });
  }
}
