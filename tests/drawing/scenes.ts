/** Scenes out of texts and out of the shipped plans, for tests of the drawing. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { analyse } from '../../src/analysis/analyse.ts';
import type { Analysis } from '../../src/analysis/model.ts';
import { makeScene, type SceneChoice } from '../../src/documents/drawing/make-scene.ts';
import type { Scene } from '../../src/documents/drawing/scene.ts';
import { planOf } from '../support/plans.ts';

const examples = resolve(import.meta.dirname, '../../examples');

/** The plan first, then all that it may import. */
const shown = {
  starter: 'starter/starter.feedplot',
  finals: 'finals/finals.feedplot',
  arena: 'arena/arena.feedplot',
} as const;

export type Example = keyof typeof shown;
export const exampleNames = Object.keys(shown) as Example[];

/** Plans with mistakes of every kind. */
export const mistakeNames = readdirSync(join(examples, 'mistakes')).filter(
  (file) => file.endsWith('.feedplot') && !/^(without_plan|two_plans)/.test(file),
);

export function analysisOfText(text: string | Record<string, string>): Analysis {
  return analyse(planOf(text));
}

export function sceneOfText(text: string | Record<string, string>, choice: SceneChoice = {}): Scene {
  return makeScene(analysisOfText(text), choice);
}

export function analysisOfExample(name: Example): Analysis {
  const path = shown[name];
  const folder = path.slice(0, path.indexOf('/'));
  const others = readdirSync(join(examples, folder), { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.feedplot'))
    .map((file) => `${folder}/${file.replaceAll('\\', '/')}`)
    .filter((file) => file !== path);
  const files = [path, ...others].map((file) => [
    file.slice(folder.length + 1),
    readFileSync(join(examples, file), 'utf8'),
  ]);
  return analysisOfText(Object.fromEntries(files));
}

export function sceneOfExample(name: Example, choice: SceneChoice = {}): Scene {
  return makeScene(analysisOfExample(name), choice);
}

export function sceneOfMistakes(file: string): Scene {
  const read = (name: string) => readFileSync(join(examples, 'mistakes', name), 'utf8');
  return sceneOfText({ [file]: read(file), 'kit.feedplot': read('kit.feedplot') });
}
