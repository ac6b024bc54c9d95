import type { MissingFile } from '../plan/plan.ts';
import type { Check } from './check.ts';
import { smallPlan } from './example-plans.ts';
import { quoted } from './words.ts';

const reasons: Record<MissingFile['reason'], (path: string) => string> = {
  'not found': (path) =>
    `There is no file ${path} here. A path is relative to the file that imports it; mend the path or add the file.`,
  outside: (path) =>
    `${path} lies outside of the folder that this plan belongs to, so it is not read. Move the file into the folder and import it from there.`,
  'has a plan': (path) =>
    `${path} has a \`plan\` of its own and cannot be part of this one. Move what both need into a third file and import that in both.`,
  unreadable: (path) => `${path} could not be read. Look whether it is a text file that you may open.`,
  'too large': (path) => `${path} is too large to be a plan. Import the part that is needed.`,
  'too many': (path) => `${path} is left out: a plan has at most 500 files. Join some of them.`,
};

export const importMissing: Check = {
  name: 'import-missing',
  severity: 'error',
  summary: 'A file that the plan imports cannot be had.',
  explanation: `What the file declares (kits, the hall, stock) is missing from the plan: its names are unknown, and
whatever uses them is not worked out.

**How it is judged.** The path is relative to the file that imports it. Only files in the workspace are read (on the
command line: in the folder of the nearest \`.git\` above, else the plan's own), and none that has a \`plan\`.

**What mends it.** The right path, or the file where the path says.`,
  examples: [{ wrong: smallPlan('import "hall.feedplot"'), right: smallPlan('place gallery') }],

  find({ plan }, report) {
    for (const { statement, reason } of plan.missingFiles) {
      report({ statement, part: 'path', message: reasons[reason](quoted(statement.fact.path)) });
    }
  },
};
