/** The view of a comparison: the show drawn before and after, side by side, and what the change does, each line with its text. */
import { drawSvg } from '../../documents/drawing/draw-svg.ts';
import { type Placement, placeScene } from '../../documents/drawing/place-scene.ts';
import type { ThemeName } from '../../documents/drawing/themes.ts';
import type { ShownEntry, ShownReview, ShownSection } from '../../server/protocol/review.ts';
import { type FromReviewView, isToReviewView } from './review-messages.ts';

declare function acquireVsCodeApi(): { postMessage(message: FromReviewView): void };

const vscode = acquireVsCodeApi();
const byId = <E extends HTMLElement>(id: string) => document.getElementById(id) as E;
const frames = { before: byId('before'), after: byId('after') };
const segments = byId<HTMLSelectElement>('segment');

let shown: { readonly review: ShownReview; readonly placement: Placement } | undefined;
let segment: string | null = null;
/** Undefined: as large as fits. */
let scale: number | undefined;
/** What is compared with what; where that is new, the view begins at the changes. */
let comparison = '';
/** Which of the messages is the latest: an earlier one may be laid out later. */
let latest = 0;

window.addEventListener('message', ({ data }) => {
  if (!isToReviewView(data)) return;
  if (data.kind === 'nothing') notice(data.reason);
  else void show(data.review);
});

async function show(review: ShownReview): Promise<void> {
  const mine = ++latest;
  byId('headline').textContent = review.headline;
  byId('compared').textContent = review.compared;
  list(review.sections);
  try {
    const placement = await placeScene(review.scenes.after);
    if (mine !== latest) return;
    const isOther = comparison !== `${review.plan} ${review.compared}`;
    comparison = `${review.plan} ${review.compared}`;
    shown = { review, placement };
    notice('');
    draw();
    if (isOther) lookAtChanges();
  } catch {
    if (mine === latest) notice('The drawings could not be laid out. The list is not affected.');
  }
}

function notice(words: string): void {
  byId('notice').textContent = words;
  byId('notice').hidden = words === '';
}

function list(sections: readonly ShownSection[]): void {
  const open = new Set([...document.querySelectorAll('details[open]')].map(({ id }) => id));
  byId('list').replaceChildren(
    ...sections.map((section, number) => {
      const whole = document.createElement(section.open ? 'section' : 'details');
      whole.id = `section-${section.name}`;
      if (whole instanceof HTMLDetailsElement) whole.open = open.has(whole.id);
      const entries = element(section.numbered ? 'ol' : 'ul', '');
      entries.append(...section.entries.map((entry, i) => item(entry, number, i)));
      whole.append(element(section.open ? 'h2' : 'summary', section.title));
      if (section.about) whole.append(element('p', section.about, 'about'));
      whole.append(entries);
      if (section.cautions.length > 0) {
        const cautions = element('ul', '', 'cautions');
        cautions.append(...section.cautions.map((caution) => element('li', caution)));
        whole.append(cautions);
      }
      return whole;
    }),
  );
}

function item(entry: ShownEntry, section: number, number: number): HTMLElement {
  const line = element('li', '', entry.grave ? 'grave' : '');
  const words = document.createElement(entry.place ? 'button' : 'span');
  words.append(element('strong', entry.lead), ': ', ...prose(entry.text));
  if (words instanceof HTMLButtonElement) {
    words.type = 'button';
    words.title =
      entry.place?.side === 'old' ? 'Show it in the text before the change' : 'Show it in the text';
    words.addEventListener('click', () => vscode.postMessage({ kind: 'open', section, entry: number }));
  }
  line.append(words, ...entry.notes.map((note) => element('div', note, 'note')));
  return line;
}

/** Our own sentences, in which words between back-quotes are typed as they are. */
function prose(words: string): Node[] {
  return words
    .split('`')
    .map((part, i) => (i % 2 === 1 ? element('code', part) : document.createTextNode(part)));
}

/** Text of a plan is set as text, never as HTML. */
function element(tag: string, words: string, name = ''): HTMLElement {
  const made = document.createElement(tag);
  made.textContent = words;
  if (name) made.className = name;
  return made;
}

function draw(): void {
  if (!shown) return;
  const { review, placement } = shown;
  const { before, after, marks } = review.scenes;
  segments.replaceChildren(
    ...after.situations.map((situation) => {
      const option = document.createElement('option');
      option.value = situation.segment ?? '';
      option.textContent = situation.title;
      return option;
    }),
  );
  if (!after.situations.some((situation) => situation.segment === segment)) segment = null;
  segments.value = segment ?? '';
  segments.hidden = after.situations.length < 2;
  const theme = themeName();
  frames.before.innerHTML = drawSvg(before, placement, { theme, segment, marks: marks.before });
  frames.after.innerHTML = drawSvg(after, placement, { theme, segment, marks: marks.after });
  size();
}

/** Both drawings have one scale, so that the same spot is at the same place in both. */
function size(): void {
  for (const frame of Object.values(frames)) {
    const svg = frame.querySelector('svg');
    const width = Number(svg?.viewBox.baseVal.width ?? 0);
    const height = Number(svg?.viewBox.baseVal.height ?? 0);
    if (!svg || width === 0) continue;
    const now = scale ?? Math.min(1, frame.clientWidth / width);
    svg.setAttribute('width', String(width * now));
    svg.setAttribute('height', String(height * now));
  }
}

function zoom(factor: number): void {
  const svg = frames.after.querySelector('svg');
  const width = Number(svg?.viewBox.baseVal.width ?? 0);
  if (width === 0) return;
  scale = Math.min(4, Math.max(0.1, (scale ?? Math.min(1, frames.after.clientWidth / width)) * factor));
  size();
}

/** Around what has changed, in the drawing's own measure. */
const MARGIN = 48;

/**
 * What has changed in both drawings as large as the halves allow, in their middle: the whole of a large show is too small
 * to read.
 */
function lookAtChanges(): void {
  scale = undefined;
  size();
  const areas = Object.values(frames).flatMap(changedAreas);
  if (areas.length === 0) return;
  const [left, top] = [Math.min(...areas.map((one) => one.left)), Math.min(...areas.map((one) => one.top))];
  const right = Math.max(...areas.map((one) => one.right));
  const bottom = Math.max(...areas.map((one) => one.bottom));
  const { clientWidth: width } = frames.after;
  const height = Number.parseFloat(getComputedStyle(frames.after).maxHeight);
  const fits = Math.min(width / (right - left + 2 * MARGIN), height / (bottom - top + 2 * MARGIN), 1);
  if (fits <= scaleOf(frames.after)) return;
  scale = fits;
  size();
  for (const frame of Object.values(frames)) {
    frame.scrollLeft = ((left + right) / 2) * scale - width / 2;
    frame.scrollTop = ((top + bottom) / 2) * scale - frame.clientHeight / 2;
  }
}

/** Where the things stand that have not stepped back. */
function changedAreas(frame: HTMLElement): Area[] {
  const svg = frame.querySelector('svg');
  if (!svg) return [];
  const [from, by] = [svg.getBoundingClientRect(), scaleOf(frame)];
  return [...svg.querySelectorAll<SVGGElement>('g[data-id]')]
    .filter((thing) => thing.dataset.kind !== 'room' && !thing.closest('.aside'))
    .map((thing) => thing.getBoundingClientRect())
    .map(({ left, top, right, bottom }) => ({
      left: (left - from.left) / by,
      top: (top - from.top) / by,
      right: (right - from.left) / by,
      bottom: (bottom - from.top) / by,
    }));
}

type Area = Pick<DOMRect, 'left' | 'top' | 'right' | 'bottom'>;

function scaleOf(frame: HTMLElement): number {
  const svg = frame.querySelector('svg');
  return svg ? svg.getBoundingClientRect().width / svg.viewBox.baseVal.width : 1;
}

function themeName(): ThemeName {
  const { classList } = document.body;
  if (classList.contains('vscode-high-contrast-light')) return 'contrast-light';
  if (classList.contains('vscode-high-contrast')) return 'contrast';
  return classList.contains('vscode-dark') ? 'dark' : 'light';
}

function follow(one: HTMLElement, other: HTMLElement): void {
  one.addEventListener('scroll', () => {
    if (other.scrollLeft !== one.scrollLeft) other.scrollLeft = one.scrollLeft;
    if (other.scrollTop !== one.scrollTop) other.scrollTop = one.scrollTop;
  });
}

follow(frames.before, frames.after);
follow(frames.after, frames.before);
segments.addEventListener('change', () => {
  segment = segments.value || null;
  draw();
});
byId('closer').addEventListener('click', () => zoom(1.25));
byId('further').addEventListener('click', () => zoom(1 / 1.25));
byId('changes').addEventListener('click', lookAtChanges);
byId('whole').addEventListener('click', () => {
  scale = undefined;
  size();
});
window.addEventListener('resize', size);
new MutationObserver(draw).observe(document.body, { attributes: true, attributeFilter: ['class'] });
vscode.postMessage({ kind: 'ready' });
