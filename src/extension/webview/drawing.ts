/** The living drawing: draws what the extension sends, follows the cursor, and opens the text of what is clicked. */
import { describeTrace, namesOnWays } from '../../documents/drawing/descriptions.ts';
import { drawParts, drawSvg } from '../../documents/drawing/draw-svg.ts';
import type { Placement } from '../../documents/drawing/placement.ts';
import type { Scene, SceneSituation } from '../../documents/drawing/scene.ts';
import { type ThemeName, themes } from '../../documents/drawing/themes.ts';
import type { ThingsAt } from '../../server/protocol.ts';
import { exportPng, toBase64 } from './export.ts';
import { firstLines } from './first-lines.ts';
import { layoutInWorker } from './layout-worker.ts';
import { Layouts } from './layouts.ts';
import { light } from './lights.ts';
import { type FromView, isThingKind, isToView, type ToView } from './messages.ts';
import { type Direction, nextThing } from './neighbours.ts';
import { Overview } from './overview.ts';
import { Painter } from './painter.ts';
import { Viewport } from './viewport.ts';
import { fillWords } from './words-panel.ts';

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
const places = byId<HTMLSelectElement>('place');
const segments = byId<HTMLSelectElement>('segment');
const feeds = byId<HTMLSelectElement>('feed');
const search = byId<HTMLInputElement>('search');
const count = byId('count');
const figures = byId('figures');
const panel = byId('panel');
const wordsButton = byId('words');
const overview = new Overview(document.querySelector<SVGSVGElement>('#overview')!, (x, y) =>
  viewport.centre(x, y),
);
const viewport: Viewport = new Viewport(frame, sheet, (sight) => overview.look(sight));
const painter = new Painter(sheet);

/** What is drawn, and whose it is. */
let shown: { readonly of: string; readonly scene: Scene; readonly placement: Placement } | undefined;
/** The plan and place of the scene that comes next out of the layout. */
let drawing = '';
let stale = false;
let segment: string | null = vscode.getState()?.segment ?? null;
let cursor: ThingsAt | null = null;
let selected: string | null = null;
/** What the pointer is on. */
let pointed: string | null = null;
/** What keeps the drawing from being as the text is; shown until it is. */
let trouble = '';

const layouts = new Layouts(layoutInWorker(byId('script').dataset.layout ?? ''), {
  placed(scene, placement) {
    const isOther = shown?.of !== drawing;
    viewport.keeping(isOther ? () => undefined : anchor, () => {
      shown = { of: drawing, scene, placement };
      draw();
    });
    if (isOther) viewport.begin();
    else viewport.adjust();
    if (isOther) follow();
  },
  busy: (working) => frame.setAttribute('aria-busy', String(working)),
  failed: () => {
    trouble = 'This plan could not be laid out. The text and its findings are not affected.';
    tell();
  },
});

window.addEventListener('message', ({ data }: MessageEvent<unknown>) => {
  if (!isToView(data)) return;
  if (data.kind === 'cursor') {
    const isOther = JSON.stringify(cursor) !== JSON.stringify(data.at);
    cursor = data.at;
    look();
    if (isOther) follow();
  } else if (data.kind === 'nothing') showNothing(data.reason, data.keep);
  else show(data);
});

function show({ plan, scene, place, onlyPlaces, ...message }: Extract<ToView, { kind: 'scene' }>): void {
  stale = message.stale;
  trouble = '';
  const whole = onlyPlaces ? [] : [['', 'whole plan'] as const];
  choices(
    places,
    [...whole, ...message.places.map(({ name, title }) => [name, title] as const)],
    place ?? '',
  );
  if (scene) {
    drawing = JSON.stringify([plan, place]);
    layouts.request(scene);
  }
  tell();
}

/** @param keep Whether the last picture stays: it is still that of the plan. */
function showNothing(reason: string, keep: boolean): void {
  trouble = reason;
  if (!keep) {
    shown = undefined;
    painter.clear();
    overview.clear();
    figures.textContent = '';
    panel.replaceChildren();
    for (const list of [places, segments, feeds]) list.hidden = true;
  }
  tell();
}

function tell(): void {
  const words =
    trouble ||
    (stale
      ? 'The text has errors: this is the last drawing of it that was whole.'
      : emptyNotice(shown?.scene));
  notice.textContent = words;
  notice.hidden = words === '';
  frame.classList.toggle('stale', stale || (trouble !== '' && shown !== undefined));
}

function emptyNotice(scene: Scene | undefined): string {
  if (!scene || scene.boxes.length > 0) return '';
  return `Nothing stands anywhere yet. Lines like these make the first boxes appear, and the command "Feedplot: New plan" writes a whole plan to change into your own:

${firstLines}`;
}

function situation(): SceneSituation | undefined {
  return shown?.scene.situations.find((one) => one.segment === segment) ?? shown?.scene.situations[0];
}

function draw(): void {
  if (!shown) return;
  const { scene, placement } = shown;
  if (!scene.situations.some((one) => one.segment === segment)) segment = null;
  choices(
    segments,
    scene.situations.map((one) => [one.segment ?? '', one.title]),
    segment ?? '',
  );
  choices(
    feeds,
    [['', 'all pictures'], ...(situation()?.traces ?? []).map(({ feed }) => [feed, feed] as const)],
    feeds.value,
  );
  const theme = themeName();
  const parts = drawParts(scene, placement, { theme, segment });
  frame.style.background = themes[theme].paper;
  painter.paint(parts);
  overview.draw(parts, placement);
  tell();
  look();
}

/** Fills a list without losing what is chosen in it, and leaves it alone while it is as before. */
function choices(
  list: HTMLSelectElement,
  entries: readonly (readonly [string, string])[],
  value: string,
): void {
  const isSame =
    list.options.length === entries.length &&
    entries.every(([id, words], i) => list.options[i]?.value === id && list.options[i]?.text === words);
  if (!isSame) list.replaceChildren(...entries.map(([id, words]) => new Option(words, id)));
  list.value = entries.some(([id]) => id === value) ? value : (entries[0]?.[0] ?? '');
  list.hidden = entries.length < 2;
}

function themeName(): ThemeName {
  const { classList } = document.body;
  if (classList.contains('vscode-high-contrast-light')) return 'contrast-light';
  if (classList.contains('vscode-high-contrast')) return 'contrast';
  return classList.contains('vscode-dark') ? 'dark' : 'light';
}

function things(): SVGGElement[] {
  return [...sheet.querySelectorAll<SVGGElement>('g[data-id]')];
}

function thingOf(id: string | null): SVGGElement | undefined {
  if (id === null) return undefined;
  return things().find(({ dataset }) => dataset.id === id && dataset.kind !== 'room');
}

/** What stays where it is when the picture changes: what a person has chosen, is writing about, or looks at. */
function anchor(): SVGGElement | undefined {
  const named = thingOf(selected) ?? thingOf(cursor?.kind === 'thing' ? (cursor.names[0] ?? null) : null);
  if (named) return named;
  const { left, top, width, height } = frame.getBoundingClientRect();
  const middle = document.elementFromPoint(left + width / 2, top + height / 2);
  return middle?.closest<SVGGElement>('g[data-id]') ?? undefined;
}

function look(): void {
  if (!shown) return;
  const all = things();
  const looks = { cursor, selected, feed: feeds.value, search: search.value };
  const { found } = light(all, shown.scene, situation(), looks);
  const isSearching = search.value.trim() !== '';
  count.textContent = isSearching ? `${found.length} found` : '';
  const current = thingOf(selected) ?? all.find(({ dataset }) => dataset.kind !== 'room');
  for (const thing of all) {
    const index = thing === current ? '0' : '-1';
    if (thing.dataset.kind !== 'room' && thing.getAttribute('tabindex') !== index)
      thing.setAttribute('tabindex', index);
  }
  figures.textContent = saidOf();
  if (!panel.hidden)
    fillWords(panel, all, shown.scene, situation(), {
      chosen(thing) {
        select(thing);
        viewport.reveal(thing);
        open(thing);
      },
    });
}

/** Brings what the cursor's statement speaks of into sight, when nothing of it is. */
function follow(): void {
  const lit = [...sheet.querySelectorAll('g.cursor')];
  if (lit[0] && !lit.some((thing) => viewport.sees(thing))) viewport.reveal(lit[0]);
}

/** The figures of what is pointed at, selected, followed, or written about. */
function saidOf(): string {
  const trace = situation()?.traces.find(({ feed }) => feed === feeds.value);
  const named = thingOf(pointed ?? selected ?? (cursor?.kind === 'thing' ? (cursor.names[0] ?? null) : null));
  const said = named?.getAttribute('aria-label');
  const way = shown && trace && `${trace.feed}: ${describeTrace(trace, namesOnWays(shown.scene))}`;
  return [way, said].filter(Boolean).join(' — ');
}

function select(thing: SVGGElement | undefined): void {
  selected = thing?.dataset.kind === 'room' ? null : (thing?.dataset.id ?? null);
  look();
}

function open(thing: SVGGElement): void {
  const { id, kind } = thing.dataset;
  if (id !== undefined && isThingKind(kind)) vscode.postMessage({ kind: 'open', id, what: kind });
}

function openSelected(): void {
  const thing = thingOf(selected);
  if (thing) open(thing);
}

function chooseSegment(value: string | null): void {
  segment = value;
  vscode.setState({ segment });
  draw();
}

/** The next or the previous part of the show. */
function stepSegment(step: 1 | -1): void {
  const all = shown?.scene.situations ?? [];
  const at = all.findIndex((one) => one.segment === segment);
  const next = all[(at + step + all.length) % all.length];
  if (next) chooseSegment(next.segment);
}

/** Follows the first of the pictures that pass the selected thing, then the next. */
function followNext(): void {
  if (selected === null) return;
  const id = selected;
  const passing = (situation()?.traces ?? []).filter(({ passes }) => passes.includes(id));
  const at = passing.findIndex(({ feed }) => feed === feeds.value);
  feeds.value = passing[at + 1]?.feed ?? '';
  look();
}

function findNext(): void {
  const found = things().filter(({ classList }) => classList.contains('found'));
  const next = found[(found.findIndex(({ dataset }) => dataset.id === selected) + 1) % found.length];
  if (!next) return;
  select(next);
  viewport.reveal(next);
}

sheet.addEventListener('click', ({ target }) => {
  const thing = target instanceof Element ? target.closest<SVGGElement>('g[data-id]') : null;
  if (viewport.dragged) return;
  select(thing ?? undefined);
  if (thing) open(thing);
});

for (const kind of ['pointerover', 'pointerleave'] as const) {
  sheet.addEventListener(kind, ({ target, pointerType }) => {
    const isOn = kind === 'pointerover' && pointerType === 'mouse' && target instanceof Element;
    const thing = isOn ? target.closest<SVGGElement>('g[data-id]:not(.room)') : null;
    pointed = thing?.dataset.id ?? null;
    figures.textContent = saidOf();
  });
}

/** Goes on to the thing in a direction, from the one in focus or else from the first. */
function go(direction: Direction): void {
  const all = things().filter(({ dataset }) => dataset.kind !== 'room');
  const from = thingOf(selected);
  const next = from ? nextThing(from, all, direction) : all[0];
  next?.focus({ preventScroll: true });
}

const step = 60;
const keys: Readonly<Record<string, () => void>> = {
  '+': () => viewport.zoom(1.2),
  '=': () => viewport.zoom(1.2),
  '-': () => viewport.zoom(1 / 1.2),
  '0': () => viewport.fit(),
  '[': () => stepSegment(-1),
  ']': () => stepSegment(1),
  '/': () => search.focus(),
  t: followNext,
  T: followNext,
  ArrowLeft: () => go('left'),
  ArrowRight: () => go('right'),
  ArrowUp: () => go('up'),
  ArrowDown: () => go('down'),
  Enter: openSelected,
  ' ': openSelected,
  Escape: () => {
    feeds.value = '';
    search.value = '';
    select(undefined);
  },
};
const moves: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [step, 0],
  ArrowRight: [-step, 0],
  ArrowUp: [0, step],
  ArrowDown: [0, -step],
};

frame.addEventListener('keydown', (event) => {
  if (event.ctrlKey || event.metaKey || event.altKey) return;
  const move = event.shiftKey ? moves[event.key] : undefined;
  const act = move ? () => viewport.pan(...move) : keys[event.key];
  if (!act) return;
  event.preventDefault();
  act();
});

frame.addEventListener('focusin', ({ target }) => {
  const thing = target instanceof Element ? target.closest<SVGGElement>('g[data-id]') : null;
  if (!thing || thing.dataset.id === selected) return;
  select(thing);
  if (!viewport.dragged && thing.matches(':focus-visible')) viewport.reveal(thing);
});

places.addEventListener('change', () => vscode.postMessage({ kind: 'place', place: places.value || null }));
segments.addEventListener('change', () => chooseSegment(segments.value || null));
feeds.addEventListener('change', look);
search.addEventListener('input', look);
search.addEventListener('keydown', ({ key }) => {
  if (key === 'Enter') findNext();
  if (key === 'Escape') {
    search.value = '';
    look();
    frame.focus();
  }
});
byId('closer').addEventListener('click', () => viewport.zoom(1.2));
byId('further').addEventListener('click', () => viewport.zoom(1 / 1.2));
byId('whole').addEventListener('click', () => viewport.fit());
wordsButton.addEventListener('click', () => {
  panel.hidden = !panel.hidden;
  wordsButton.setAttribute('aria-expanded', String(!panel.hidden));
  look();
});
byId('svg').addEventListener('click', () => {
  if (shown) vscode.postMessage({ kind: 'export', format: 'svg', base64: toBase64(paper()) });
});
byId('png').addEventListener('click', async () => {
  if (shown) vscode.postMessage({ kind: 'export', format: 'png', base64: await exportPng(paper()) });
});

/** The drawing as it leaves the editor: on white paper, whatever the editor's theme. */
function paper(): string {
  return shown ? drawSvg(shown.scene, shown.placement, { theme: 'light', segment }) : '';
}

new MutationObserver(draw).observe(document.body, { attributes: true, attributeFilter: ['class'] });
vscode.postMessage({ kind: 'ready' });
