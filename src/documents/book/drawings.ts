import type { Analysis } from '../../analysis/model.ts';
import { drawSvg } from '../drawing/draw-svg.ts';
import { makeScene } from '../drawing/make-scene.ts';
import type { Placement } from '../drawing/place-scene.ts';
import type { Scene, SceneSituation } from '../drawing/scene.ts';
import type { Titles } from '../sheets/titles.ts';
import { text } from './html.ts';

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
  const places = [...analysis.places.values()].filter((place) =>
    whole.boxes.some((box) => box.kind === 'node' && box.room === place.name),
  );
  const drawings = [
    drawing('drawing-whole', 'The whole show', whole),
    ...(places.length < 2 ? [] : places).map((place, i) =>
      drawing(`drawing-${i + 1}`, titles.of(place), makeScene(analysis, { place: place.name })),
    ),
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

/** A laid-out drawing: each view on a page of its own, upright or across as it fits better. */
export function drawingHtml({ id, title, scene, views }: BookDrawing, placement: Placement): string {
  const shape = placement.height > placement.width * 1.1 ? 'tall' : 'wide';
  return views
    .map(({ segment, title: view }, i) => {
      const name = views.length > 1 ? `${title}: ${view}` : title;
      const svg = drawSvg(scene, placement, { theme: 'light', segment })
        // Several drawings in one document: each has a hatching of its own.
        .replaceAll('id="hatch"', `id="${id}-${i}-hatch"`)
        .replaceAll('url(#hatch)', `url(#${id}-${i}-hatch)`);
      return `<figure class="drawing ${shape}" id="${id}-${i}"><figcaption>${text(name)}</figcaption>${svg}</figure>`;
    })
    .join('\n');
}
