/** The papers beside the text: lays the drawings out, shows the book, and hands it over as one file. */
import type { BookParts } from '../../documents/book/book.ts';
import { bookBody, bookPage } from '../../documents/book/page.ts';
import { layOutOnce } from '../../documents/drawing/alike.ts';
import { arrange } from '../../documents/drawing/arrange.ts';
import type { Placement } from '../../documents/drawing/placement.ts';
import type { Scene } from '../../documents/drawing/scene.ts';
import { type FromBookView, isToBookView } from './book-messages.ts';
import { layoutInWorker } from './layout-worker.ts';

declare function acquireVsCodeApi(): { postMessage(message: FromBookView): void };

const vscode = acquireVsCodeApi();
const byId = <E extends HTMLElement>(id: string) => document.getElementById(id) as E;
const book = byId('book');
const state = byId('state');
const save = byId<HTMLButtonElement>('save');
const progress = byId<HTMLProgressElement>('progress');
const layOut = layoutInWorker(byId('script').dataset.layout ?? '');

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
book.addEventListener('click', ({ target }) => openText(target));
vscode.postMessage({ kind: 'ready' });

async function show(name: string, parts: BookParts, number: number): Promise<void> {
  const before = placed;
  const now = new Map<string, Placement>();
  const placements: (Placement | undefined)[] = [];
  const layOutAlike = layOutOnce(layOut);
  for (const [i, { scene, title }] of parts.drawings.entries()) {
    const key = layoutKey(scene);
    let placement = before.get(key);
    if (!placement) {
      state.textContent = `Drawing ${i + 1} of ${parts.drawings.length}: ${title}`;
      progress.hidden = false;
      progress.max = parts.drawings.length;
      progress.value = i;
      placement = await arrange(scene, layOutAlike).catch(() => undefined);
      if (number !== latest) return;
    }
    if (placement) now.set(key, placement);
    placements.push(placement);
  }
  placed = now;
  progress.hidden = true;
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

/** A click on a row or on something drawn leads to its text, unless it ends the marking of words to copy. */
function openText(target: EventTarget | null): void {
  if (!(target instanceof Element) || window.getSelection()?.isCollapsed === false) return;
  const row = target.closest<HTMLElement>('[data-of]');
  const drawn = target.closest<SVGElement>('[data-id]');
  const id = row?.dataset.of ?? drawn?.dataset.id;
  if (id === undefined) return;
  // A row of a patch card is of a socket; what is written is its box.
  const ofSocket = row?.closest('#patch') != null && id.includes('.');
  vscode.postMessage({
    kind: 'open',
    id: ofSocket ? id.slice(0, id.lastIndexOf('.')) : id,
    what: drawn?.dataset.kind ?? 'row',
  });
}

/** All of a scene that a layout depends on. */
function layoutKey({ title, rooms, boxes, wires, ribbons }: Scene): string {
  return JSON.stringify([title, rooms, boxes, wires, ribbons]);
}
