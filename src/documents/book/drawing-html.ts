import { drawParts, face } from '../drawing/draw-svg.ts';
import type { Placement } from '../drawing/place-scene.ts';
import type { Scene } from '../drawing/scene.ts';
import { badge } from './badge.ts';
import {
  type DrawingPages,
  overviewPages,
  readablePages,
  type Sized,
  type Window,
  windowsOn,
} from './drawing-pages.ts';
import type { BookDrawing } from './drawings.ts';
import { attribute, text } from './html.ts';

/** The section's heading and how to read a drawing. */
const HEAD_MM = 26;

/** All drawings, with the section's heading above the first. @param placements Undefined where a layout failed. */
export function drawingsHtml(
  drawings: readonly BookDrawing[],
  placements: readonly (Placement | undefined)[],
  head: string,
): string {
  const html: string[] = [];
  let before: DrawingPages['page'] | undefined;
  drawings.forEach((drawing, i) => {
    const placement = placements[i];
    if (!placement) return;
    const { first, others } = pagesOf(drawing, placement, before ? 0 : HEAD_MM, before);
    if (!before) html.push(`<div class="${first.page}">${head}</div>`);
    html.push(drawingHtml(drawing, placement, first, others));
    before = (drawing.views.length > 1 ? others : first).page;
  });
  return html.length === 0 ? head : html.join('\n');
}

/**
 * What is always on is printed large enough to be read, in parts where one page is too small; then the parts of the
 * show in which it looks otherwise, two on a page where that is enough. What the drawings of its places show as well
 * is only looked over where one page is too small for it.
 */
function pagesOf(
  { inPlaces }: BookDrawing,
  size: Placement,
  taken_mm: number,
  before: DrawingPages['page'] | undefined,
): { first: DrawingPages; others: DrawingPages } {
  const readable = readablePages(size, taken_mm, before);
  if (readable.pages <= 1) return { first: readable, others: readable };
  return { first: inPlaces ? overviewPages(size, 1, taken_mm) : readable, others: overviewPages(size, 2) };
}

function drawingHtml(
  { id, title, scene, views, inPlaces }: BookDrawing,
  placement: Placement,
  first: DrawingPages,
  others: DrawingPages,
): string {
  const figures = views.map((view, i) => {
    const name = views.length > 1 ? `${title}: ${view.title}` : title;
    const drawn = drawnView(`${id}-${i}`, scene, placement, view.segment);
    // Looked over side by side, the others need no key of their own.
    const key = i > 0 && inPlaces && others.mm_per_unit < first.mm_per_unit ? '' : keyHtml(scene);
    return figuresHtml(`${id}-${i}`, name, drawn, i === 0 ? first : others, placement, key);
  });
  return figures.join('\n');
}

interface DrawnView {
  readonly label: string;
  readonly ground: string;
  readonly things: string;
}

/** Without the drawing's own heading and legend: the page has both in letters that do not shrink with it. */
function drawnView(id: string, scene: Scene, placement: Placement, segment: string | null): DrawnView {
  const { label, ground, things } = drawParts(scene, placement, { theme: 'light', segment });
  // Several drawings in one document: each has a hatching of its own.
  const own = (svg: string) =>
    svg.replaceAll('id="hatch"', `id="${id}-hatch"`).replaceAll('url(#hatch)', `url(#${id}-hatch)`);
  return { label, ground: own(ground), things: own([...things.values()].join('\n')) };
}

function figuresHtml(
  id: string,
  title: string,
  drawn: DrawnView,
  pages: DrawingPages,
  size: Sized,
  key: string,
): string {
  const windows = windowsOn(pages, size);
  return windows
    .map((window, i) => {
      const whole = windows.length === 1;
      const part = whole
        ? ''
        : `, part ${i + 1} of ${windows.length}${pages.rows === 1 ? ' from the left' : ''}`;
      const own = whole ? id : `${id}-part-${i + 1}`;
      const svg = windowSvg(drawn, window, pages.mm_per_unit);
      return `<figure class="drawing ${pages.page}" id="${own}"><figcaption>${text(title + part)}</figcaption>${whole ? svg : svg.replaceAll(`${id}-hatch`, `${own}-hatch`)}${key}</figure>`;
    })
    .join('\n');
}

function windowSvg({ label, ground, things }: DrawnView, window: Window, mm_per_unit: number): string {
  const { left, top, width, height } = window;
  const mm = (units: number) => `${(units * mm_per_unit).toFixed(1)}mm`;
  const box = [left, top, width, height].map((units) => Math.round(units * 10) / 10).join(' ');
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${box}" width="${mm(width)}" height="${mm(height)}" role="group" aria-label="${attribute(label)}" font-family='${face}'>${ground}${things}</svg>`;
}

/** Which number is which picture. */
function keyHtml({ pictures }: Scene): string {
  if (pictures.length === 0) return '';
  return `<p class="key">${pictures.map(({ number, title }) => `<span>${badge(number)} ${text(title)}</span>`).join(' ')}</p>`;
}
