import type { Analysis } from '../../analysis/model.ts';
import { makingScene } from '../drawing/make-scene.ts';
import type { Scene, SceneSituation } from '../drawing/scene.ts';
import type { Titles } from '../sheets/titles.ts';
import { placeScenes } from './place-scenes.ts';

/** A drawing for the book before it is laid out: one layout, and the parts of the show in which it looks otherwise. */
export interface BookDrawing {
  readonly id: string;
  readonly title: string;
  readonly scene: Scene;
  readonly views: readonly DrawingView[];
  /** Drawings of places show all of it as well. */
  readonly inPlaces: boolean;
}

interface DrawingView {
  readonly segment: string | null;
  readonly title: string;
}

/** More boxes on one page are nothing but a pattern. */
const MOST_BOXES = 120;

export interface BookDrawings {
  readonly drawings: readonly BookDrawing[];
  /** What is not drawn because it has too many boxes, by its title. */
  readonly tooLarge: readonly { readonly title: string; readonly boxes: number; readonly place?: string }[];
}

/** The whole drawing and one of each place with boxes in it, in short steps. */
export function* makingDrawings(analysis: Analysis, titles: Titles): Generator<undefined, BookDrawings> {
  const whole = yield* makingScene(analysis);
  const rooms = new Set(whole.boxes.filter(({ kind }) => kind === 'node').map(({ room }) => room));
  const inPlaces = rooms.size >= 2;
  const ofPlaces = inPlaces ? placeScenes(whole) : new Map<string, Scene>();
  const places = [...analysis.places.values()].filter(({ name }) => rooms.has(name));
  const scenes = [
    { id: 'drawing-whole', title: 'The whole show', scene: whole },
    ...places.flatMap((place, i) => {
      const scene = ofPlaces.get(place.name);
      return scene ? [{ id: `drawing-${i + 1}`, title: titles.of(place), scene, place: place.name }] : [];
    }),
  ].filter(({ scene }) => scene.boxes.length > 0);
  yield;
  const drawings: BookDrawing[] = [];
  for (const { id, title, scene } of scenes) {
    if (scene.boxes.length > MOST_BOXES) continue;
    drawings.push({ id, title, scene, views: viewsOf(scene), inPlaces: scene === whole && inPlaces });
    yield;
  }
  return {
    drawings,
    tooLarge: scenes
      .filter(({ scene }) => scene.boxes.length > MOST_BOXES)
      .map(({ title, scene, ...place }) => ({
        title,
        boxes: scene.boxes.length,
        ...('place' in place ? { place: place.place } : {}),
      })),
  };
}

/** What is always on, and what differs from it; segments that look alike are shown once. */
function viewsOf({ situations }: Scene): DrawingView[] {
  const [always, ...segments] = situations;
  const views = new Map([[looks(always!), { segment: always!.segment, titles: [always!.title] }]]);
  for (const situation of segments) {
    const key = looks(situation);
    const alike = views.get(key);
    if (!alike) views.set(key, { segment: situation.segment, titles: [situation.title] });
    else if (alike.segment !== null) alike.titles.push(situation.title);
  }
  return [...views.values()].map(({ segment, titles }) => ({ segment, title: titles.join('; ') }));
}

/** What can be seen of a situation. */
function looks({ wires, ribbons, watched, lost }: SceneSituation): string {
  return JSON.stringify([wires, ribbons, watched, lost]);
}
