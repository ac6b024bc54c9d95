import bidiFactory from 'bidi-js';
import type { Face, Faces } from './faces.ts';

/** A stretch of text in one face and one direction. */
export interface Run {
  readonly face: Face;
  /** In the order of reading, brackets turned where it runs to the left. */
  readonly text: string;
}

export type Direction = 'ltr' | 'rtl';

/** Where a text is read from: by its first letter that has a direction (rules P2 and P3). */
export function directionOf(text: string): Direction {
  bidi ??= bidiFactory();
  const [paragraph] = bidi.getEmbeddingLevels(text, 'auto').paragraphs;
  return (paragraph?.level ?? 0) % 2 === 1 ? 'rtl' : 'ltr';
}

interface LevelRun {
  readonly level: number;
  readonly face: Face;
  text: string;
}

let bidi: ReturnType<typeof bidiFactory> | undefined;

/**
 * A line as runs from left to right: Unicode Bidirectional Algorithm (Unicode Standard Annex 9, published), rule L2, on
 * runs instead of characters.
 */
export function visualRuns(line: string, faces: Faces, base: Direction = directionOf(line)): Run[] {
  bidi ??= bidiFactory();
  const { levels } = bidi.getEmbeddingLevels(line, base);
  const runs: LevelRun[] = [];
  let at = 0;
  for (const { face, text } of faces.split(line)) {
    for (const character of text) {
      const level = levels[at] ?? 0;
      at += character.length;
      const shown = level % 2 === 1 ? (bidi.getMirroredCharacter(character) ?? character) : character;
      const last = runs.at(-1);
      if (last && last.face === face && last.level === level) last.text += shown;
      else runs.push({ level, face, text: shown });
    }
  }
  return reordered(runs);
}

/** L2: from the highest level down to the lowest odd one, whatever stands together at that level or above is turned. */
function reordered(runs: readonly LevelRun[]): LevelRun[] {
  let ordered = [...runs];
  const highest = Math.max(0, ...runs.map(({ level }) => level));
  for (let level = highest; level > 0; level--) {
    const next: LevelRun[] = [];
    let turned: LevelRun[] = [];
    for (const run of ordered) {
      if (run.level >= level) {
        turned.unshift(run);
        continue;
      }
      next.push(...turned, run);
      turned = [];
    }
    ordered = [...next, ...turned];
  }
  return ordered;
}

/** The width of a line in the unit of the size. */
export function lineWidth(line: string, size: number, faces: Faces): number {
  return visualRuns(line, faces).reduce((sum, { face, text }) => sum + runWidth(face, text, size), 0);
}

export function runWidth(face: Face, text: string, size: number): number {
  return face.widthOf(text) * size;
}
