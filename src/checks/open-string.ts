import { faultCheck } from './check.ts';
import { changedPlan } from './example-plans.ts';

export const openString = faultCheck({
  name: 'open-string',
  severity: 'error',
  summary: 'Text in quotes is not closed.',
  explanation: `A string ends with its line, closed or not, so that one forgotten quote never swallows the rest of the plan. What
stands on the line behind the open quote became text: a cable length or a limit may be inside.

**How it is judged.** A quote without its partner on the same line.

**What mends it.** A closing \`"\` where the text ends.`,
  examples: [
    {
      wrong: changedPlan('place stage', 'place stage "Stage, left wing'),
      right: changedPlan('place stage', 'place stage "Stage, left wing"'),
    },
  ],
});
