/** The papers beside the text: lays the drawings out, shows the book, and hands it over as one file. */
import type { BookParts } from '../../documents/book/book.ts';
import { bookBody, bookPage } from '../../documents/book/page.ts';
import { type Placement, placeScene } from '../../documents/drawing/place-scene.ts';
import type { Scene } from '../../documents/drawing/scene.ts';
import { type FromBookView, isToBookView } from './book-messages.ts';

declare function acquireVsCodeApi(): { postMessage(message: FromBookView): void };

const vscode = acquireVsCodeApi();
const byId = <E extends HTMLElement>(id: string) => document.getElementById(id) as E;
const book = byId('book');
const state = byId('state');
const save = byId<HTMLButtonElement>('save');

let shown: { name: string; parts: BookParts; placements: readonly (Placement | undefined)[] } | undefined;
/** Counts what was sent: work on an older book is given up. */
let latest = 0;
/** Of drawings whose boxes and cables are as before. */
let placed = new Map<string, Placement>();

window.addEventListener('message', ({ data }: MessageEvent<unknown>) => {
  if (!isToBookView(data)) return;
  latest++;
  if (data.kind === 'nothing') state.textContent = data.reason;
  else void show(data.name, data.parts, latest);
});
save.addEventListener('click', () => void handOver());
vscode.postMessage({ kind: 'ready' });

async function show(name: string, parts: BookParts, number: number): Promise<void> {
  const before = placed;
  const now = new Map<string, Placement>();
  const placements: (Placement | undefined)[] = [];
  for (const [i, { scene, title }] of parts.drawings.entries()) {
    const key = layoutKey(scene);
    let placement = before.get(key);
    if (!placement) {
      state.textContent = `Drawing ${i + 1} of ${parts.drawings.length}: ${title}`;
      // The page is painted and listens before the next layout begins.
      await new Promise((resolve) => setTimeout(resolve, 0));
      placement = await placeScene(scene).catch(() => undefined);
      if (number !== latest) return;
    }
    if (placement) now.set(key, placement);
    placements.push(placement);
  }
  placed = now;
  const missing = placements.filter((one) => one === undefined).length;
  const { scrollX, scrollY } = window;
  byId('book-style').textContent = parts.style;
  book.innerHTML = bookBody(parts, placements);
  window.scrollTo(scrollX, scrollY);
  shown = { name, parts, placements };
  save.disabled = false;
  state.textContent =
    missing > 0
      ? `${missing} drawings could not be laid out; everything else is here.`
      : 'As the text is now.';
}

async function handOver(): Promise<void> {
  if (!shown) return;
  const { name, parts, placements } = shown;
  try {
    vscode.postMessage({ kind: 'save', name, html: await bookPage(parts, placements) });
  } catch {
    // Without a secure origin a browser makes no hashes, and the file's policy needs one.
    state.textContent = 'This editor cannot put the file together; the command `feedplot book` can.';
  }
}

/** All of a scene that a layout depends on. */
function layoutKey({ title, rooms, boxes, wires, ribbons }: Scene): string {
  return JSON.stringify([title, rooms, boxes, wires, ribbons]);
}
