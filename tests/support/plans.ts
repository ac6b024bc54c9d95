/** Plans out of strings, for tests: no disk, no editor. */
import { type AssembledPlan, assemblePlan } from '../../src/plan/assemble.ts';
import { readLibrary } from '../../src/plan/library/read.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { readText } from '../../src/plan/read-text.ts';

export const root = 'file:///show';

/**
 * A plan from its text, or from several files: the keys are paths below one folder, and the plan is the first of
 * them. The shipped library is there.
 */
export function assembledOf(files: string | Record<string, string>): AssembledPlan {
  const texts = new Map(Object.entries(typeof files === 'string' ? { 'show.feedplot': files } : files));
  const [first] = texts.keys();
  const assembled = assemblePlan(`${root}/${first}`, {
    file: (uri) => {
      const text = texts.get(decodeURIComponent(uri.slice(root.length + 1)));
      return text === undefined ? 'not found' : readText(uri, text);
    },
    library: readLibrary('file:///library'),
  });
  if (!assembled) throw new Error(`No plan in ${first}`);
  return assembled;
}

export function planOf(files: string | Record<string, string>): Plan {
  return assembledOf(files).plan;
}
