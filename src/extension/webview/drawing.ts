/** The living drawing: draws what the extension sends, follows the cursor, and opens the text of what is clicked. */

import { drawSvg } from '../../documents/drawing/draw-svg.ts';
import type { Placement } from '../../documents/drawing/place-scene.ts';
import type { Scene } from '../../documents/drawing/scene.ts';
import type { ThemeName } from '../../documents/drawing/themes.ts';
import { exportPng, toBase64 } from './export.ts';
import { Layouts } from './layouts.ts';
import { type FromView, isThingKind, isToView } from './messages.ts';
import { Viewport } from './viewport.ts';

interface SavedState {
  readonly segment?: string | null;
}

declare function acquireVsCodeApi(): {
  postMessage(message: FromView): void;
  getState(): SavedState | undefined;
  setState(state: SavedState): void;
};

const vscode = acquireVsCodeApi();
const byId = <E extends HTMLElement>(id: string) => document.getElementById(id) as E;
const frame = byId('frame');
const sheet = byId('sheet');
const notice = byId('notice');
const segments = byId<HTMLSelectElement>('segment');
const feeds = byId<HTMLSelectElement>('feed');
const search = byId<HTMLInputElement>('search');
const figures = byId('figures');
const viewport = new Viewport(frame, sheet);

let shown: { scene: Scene; placement: Placement } | undefined;
let name = 'plan';
let segment: string | null = vscode.getState()?.segment ?? null;
let cursor: string | null = null;
let selected: string | null = null;

const layouts = new Layouts(
  (scene, placement) => {
    const first = shown === undefined;
    shown = { scene, placement };
    draw();
    if (first || !viewport.moved) viewport.fit();
  },
  () => tell('This plan could not be laid out. The text and its findings are not affected.'),
);

window.addEventListener('message', ({ data }) => {
  if (!isToView(data)) return;
  if (data.kind === 'cursor') {
    cursor = data.id;
    light();
  } else if (data.kind === 'nothing') {
    tell(data.reason);
  } else {
    name = data.name;
    tell(
      data.stale
        ? 'The text has errors: this is the last drawing of it that was whole.'
        : emptyNotice(data.scene),
    );
    layouts.request(data.scene);
  }
});

function emptyNotice(scene: Scene): string {
  return scene.boxes.length === 0
    ? 'Nothing stands anywhere yet. Write a place, a node and a source: they appear here.'
    : '';
}

function tell(words: string): void {
  notice.textContent = words;
  notice.hidden = words === '';
}

function draw(): void {
  if (!shown) return;
  const { scene, placement } = shown;
  choices(
    segments,
    scene.situations.map((one) => [one.segment ?? '', one.title]),
    segment ?? '',
  );
  if (!scene.situations.some((one) => one.segment === segment)) segment = null;
  const situation = scene.situations.find((one) => one.segment === segment);
  choices(
    feeds,
    [
      ['', 'every picture'],
      ...(situation?.traces ?? []).map((trace): [string, string] => [trace.feed, trace.feed]),
    ],
    feeds.value,
  );
  const focused = document.activeElement?.getAttribute('data-id');
  sheet.innerHTML = drawSvg(scene, placement, { theme: themeName(), segment });
  for (const thing of things()) thing.setAttribute('tabindex', '0');
  if (focused) thingOf(focused)?.focus();
  light();
}

/** Fills a list without losing what is chosen in it. */
function choices(
  list: HTMLSelectElement,
  entries: readonly (readonly [string, string])[],
  value: string,
): void {
  list.replaceChildren(
    ...entries.map(([id, words]) => {
      const option = document.createElement('option');
      option.value = id;
      option.textContent = words;
      return option;
    }),
  );
  list.value = entries.some(([id]) => id === value) ? value : (entries[0]?.[0] ?? '');
  list.hidden = entries.length < 2;
}

function themeName(): ThemeName {
  const { classList } = document.body;
  if (classList.contains('vscode-high-contrast'))
    return classList.contains('vscode-high-contrast-light') ? 'light' : 'contrast';
  return classList.contains('vscode-dark') ? 'dark' : 'light';
}

function things(): SVGGElement[] {
  return [...sheet.querySelectorAll<SVGGElement>('g[data-id]')];
}

function thingOf(id: string): SVGGElement | undefined {
  return things().find((thing) => thing.dataset.id === id && thing.dataset.kind !== 'room');
}

/** Marks the cursor's thing, what is selected and found, and steps everything else back that a traced feed does not pass. */
function light(): void {
  const situation = shown?.scene.situations.find((one) => one.segment === segment);
  const trace = situation?.traces.find((one) => one.feed === feeds.value);
  const passes = trace && new Set(trace.passes);
  const wanted = search.value.trim().toLocaleLowerCase();
  for (const thing of things()) {
    const id = thing.dataset.id ?? '';
    const room = thing.dataset.kind === 'room';
    const found =
      wanted !== '' && !room && (thing.getAttribute('aria-label') ?? '').toLocaleLowerCase().includes(wanted);
    thing.classList.toggle('cursor', id === cursor && !room);
    thing.classList.toggle('selected', id === selected && !room);
    thing.classList.toggle('found', found);
    thing.classList.toggle(
      'aside',
      !room && ((passes !== undefined && !passes.has(id)) || (wanted !== '' && !found)),
    );
  }
  const named = selected ?? cursor;
  figures.textContent = (named && thingOf(named)?.getAttribute('aria-label')) || '';
}

function open(thing: Element): void {
  const { id, kind } = (thing as SVGGElement).dataset;
  if (id !== undefined && isThingKind(kind)) vscode.postMessage({ kind: 'open', id, what: kind });
}

sheet.addEventListener('click', (event) => {
  const thing = (event.target as Element).closest<SVGGElement>('g[data-id]');
  if (!thing || viewport.dragged) return;
  selected = thing.dataset.kind === 'room' ? null : (thing.dataset.id ?? null);
  light();
  open(thing);
});

frame.addEventListener('keydown', (event) => {
  const step = 60;
  const keys: Record<string, () => void> = {
    '+': () => viewport.zoom(1.2),
    '=': () => viewport.zoom(1.2),
    '-': () => viewport.zoom(1 / 1.2),
    '0': () => viewport.fit(),
    ArrowLeft: () => viewport.pan(step, 0),
    ArrowRight: () => viewport.pan(-step, 0),
    ArrowUp: () => viewport.pan(0, step),
    ArrowDown: () => viewport.pan(0, -step),
    Enter: () => {
      const thing = document.activeElement?.closest('g[data-id]');
      if (thing) open(thing);
    },
  };
  const act = keys[event.key];
  if (!act || event.ctrlKey || event.metaKey || event.altKey) return;
  event.preventDefault();
  act();
});

frame.addEventListener('focusin', (event) => {
  const thing = (event.target as Element).closest<SVGGElement>('g[data-id]');
  if (!thing) return;
  selected = thing.dataset.id ?? null;
  viewport.reveal(thing);
  light();
});

segments.addEventListener('change', () => {
  segment = segments.value || null;
  vscode.setState({ segment });
  draw();
});
feeds.addEventListener('change', light);
search.addEventListener('input', light);
search.addEventListener('keydown', (event) => {
  if (event.key !== 'Enter') return;
  const found = things().filter((thing) => thing.classList.contains('found'));
  const next = found[(found.findIndex((thing) => thing.dataset.id === selected) + 1) % found.length];
  if (!next) return;
  selected = next.dataset.id ?? null;
  viewport.reveal(next);
  light();
});
byId('closer').addEventListener('click', () => viewport.zoom(1.2));
byId('further').addEventListener('click', () => viewport.zoom(1 / 1.2));
byId('whole').addEventListener('click', () => viewport.fit());
byId('svg').addEventListener('click', () => {
  if (shown) vscode.postMessage({ kind: 'export', name, format: 'svg', base64: toBase64(paper()) });
});
byId('png').addEventListener('click', async () => {
  if (shown) vscode.postMessage({ kind: 'export', name, format: 'png', base64: await exportPng(paper()) });
});

/** The drawing as it leaves the editor: on white paper, whatever the editor's theme. */
function paper(): string {
  return shown ? drawSvg(shown.scene, shown.placement, { theme: 'light', segment }) : '';
}

new MutationObserver(draw).observe(document.body, { attributes: true, attributeFilter: ['class'] });
vscode.postMessage({ kind: 'ready' });
