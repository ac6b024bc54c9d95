import type { Analysis } from '../../analysis/model.ts';
import { drawSvg } from '../drawing/draw-svg.ts';
import { makeScene } from '../drawing/make-scene.ts';
import type { Placement } from '../drawing/place-scene.ts';
import type { Scene, SceneSituation } from '../drawing/scene.ts';
import type { Titles } from '../sheets/titles.ts';
import { text } from './html.ts';
import { placeScenes } from './place-scenes.ts';

/** A drawing for the book before it is laid out: one layout, and the parts of the show in which it looks otherwise. */
export interface BookDrawing {
  readonly id: string;
  readonly title: string;
  readonly scene: Scene;
  readonly views: readonly DrawingView[];
}

export interface DrawingView {
  readonly segment: string | null;
  readonly title: string;
}

/** More boxes on one page are nothing but a pattern; the drawings of the places show them. */
export const MOST_BOXES = 120;

/** The whole drawing and one of each place with boxes in it. */
export function bookDrawings(analysis: Analysis, titles: Titles): BookDrawing[] {
  const whole = makeScene(analysis);
  const rooms = new Set(whole.boxes.filter(({ kind }) => kind === 'node').map(({ room }) => room));
  const ofPlaces = rooms.size < 2 ? new Map<string, Scene>() : placeScenes(whole);
  const places = [...analysis.places.values()].filter(({ name }) => rooms.has(name));
  const drawings = [
    drawing('drawing-whole', 'The whole show', whole),
    ...places.flatMap((place, i) => {
      const scene = ofPlaces.get(place.name);
      return scene ? [drawing(`drawing-${i + 1}`, titles.of(place), scene)] : [];
    }),
  ];
  return drawings.filter(({ scene }) => scene.boxes.length > 0 && scene.boxes.length <= MOST_BOXES);
}

function drawing(id: string, title: string, scene: Scene): BookDrawing {
  const [always, ...segments] = scene.situations;
  const differing = segments.filter((situation) => always && looks(situation) !== looks(always));
  return {
    id,
    title,
    scene,
    views: [always!, ...differing].map((situation) => ({
      segment: situation.segment,
      title: situation.title,
    })),
  };
}

/** What can be seen of a situation. */
function looks({ wires, ribbons, watched, lost }: SceneSituation): string {
  return JSON.stringify([wires, ribbons, watched, lost]);
}

/** A wider drawing has letters below 5 points across A4 or Letter (267 mm of it at 96 units an inch): it also comes in parts. */
const WIDEST = 1800;
/** What stands on two parts, so that no cable is lost between them. */
const OVERLAP = 80;

/**
 * A laid-out drawing: each view on a page of its own, upright or across as it fits better. What is too wide to be read
 * on one page follows in parts, for what is always on.
 */
export function drawingHtml({ id, title, scene, views }: BookDrawing, placement: Placement): string {
  const svgs = views.map(({ segment }, i) =>
    drawSvg(scene, placement, { theme: 'light', segment })
      // Several drawings in one document: each has a hatching of its own.
      .replaceAll('id="hatch"', `id="${id}-${i}-hatch"`)
      .replaceAll('url(#hatch)', `url(#${id}-${i}-hatch)`),
  );
  const whole = svgs.map((svg, i) =>
    figureHtml(`${id}-${i}`, views.length > 1 ? `${title}: ${views[i]!.title}` : title, svg),
  );
  const parts = partsOf(svgs[0]!).map((svg, i, { length }) =>
    figureHtml(
      `${id}-part-${i + 1}`,
      `${title}, part ${i + 1} of ${length} from the left`,
      svg.replaceAll(`${id}-0-hatch`, `${id}-part-${i + 1}-hatch`),
    ),
  );
  return [...whole, ...parts].join('\n');
}

function figureHtml(id: string, title: string, svg: string): string {
  const [width, height] = sizeOf(svg);
  const shape = height > width * 1.1 ? 'tall' : 'wide';
  return `<figure class="drawing ${shape}" id="${id}"><figcaption>${text(title)}</figcaption>${svg}</figure>`;
}

/** The head of what `drawSvg` writes. */
const HEAD = /viewBox="0 0 ([\d.]+) ([\d.]+)" width="[\d.]+" height="[\d.]+"/;

function sizeOf(svg: string): [width: number, height: number] {
  const [, width = '1', height = '1'] = /viewBox="[\d.]+ [\d.]+ ([\d.]+) ([\d.]+)"/.exec(svg) ?? [];
  return [Number(width), Number(height)];
}

/** The same drawing seen through windows side by side. */
function partsOf(svg: string): string[] {
  const [width, height] = sizeOf(svg);
  if (width <= WIDEST) return [];
  const count = Math.ceil((width - OVERLAP) / (WIDEST - OVERLAP));
  const wide = (width - OVERLAP) / count + OVERLAP;
  return Array.from({ length: count }, (_, i) => {
    const left = i * (wide - OVERLAP);
    return svg.replace(HEAD, `viewBox="${left} 0 ${wide} ${height}" width="${wide}" height="${height}"`);
  });
}
