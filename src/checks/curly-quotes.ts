import { faultCheck } from './check.ts';
import { changedPlan } from './example-plans.ts';

export const curlyQuotes = faultCheck({
  name: 'curly-quotes',
  severity: 'error',
  summary: 'Text stands between curly quotes.',
  explanation: `A word processor or a chat has turned the quotes round. The text is read, but the file will not be searched and
compared as expected, and the next person to copy the line gets the same trouble.

**How it is judged.** By the character: text in a plan stands between \`"\` (U+0022).

**What mends it.** Straight quotes.`,
  examples: [
    {
      wrong: changedPlan('place stage', 'place stage “Stage, left wing”'),
      right: changedPlan('place stage', 'place stage "Stage, left wing"'),
    },
  ],
});
