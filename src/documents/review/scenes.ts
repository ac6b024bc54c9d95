import type { Analysis } from '../../analysis/model.ts';
import { type ComparedScenes, compareScenes } from '../drawing/compare-scenes.ts';
import { makeScene } from '../drawing/make-scene.ts';
import { Comparison } from './comparison.ts';

/** The show as it was and as it is, to be drawn with everything in the same places. */
export function reviewScenes(was: Analysis, is: Analysis): ComparedScenes {
  const { renames, links } = new Comparison(was, is);
  const linkNames = new Map(
    links.flatMap(({ before, after }) => (before && after ? [[before.name, after.name]] : [])),
  );
  return compareScenes(makeScene(was), makeScene(is), {
    room: (id) => renames.of('places', id),
    box: (id) => renames.of('things', id),
    port: (id) => renames.socket(id),
    link: (id) => linkNames.get(id) ?? id,
    picture: (name) => renames.of('things', name),
    segment: (name) => renames.of('segments', name),
  });
}
