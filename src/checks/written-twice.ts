import { faultCheck } from './check.ts';
import { changedPlan, smallPlan } from './example-plans.ts';

export const writtenTwice = faultCheck({
  name: 'written-twice',
  severity: 'error',
  summary: 'A clause that can stand once stands twice.',
  explanation: `Two lengths, two places, two formats: one of them is wrong, and whoever reads the sheet cannot know which. The first
is used.

**How it is judged.** Clauses may stand in any order, but each of them once; only lists (\`by\`, \`via\`, \`of\`,
\`powered by\` …) go on.

**What mends it.** Deleting the one that is wrong.`,
  examples: [{ wrong: changedPlan('takes 1080p50', 'at stage takes 1080p50'), right: smallPlan() }],
});
