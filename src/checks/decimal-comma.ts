import { faultCheck } from './check.ts';
import { changedPlan } from './example-plans.ts';

export const decimalComma = faultCheck({
  name: 'decimal-comma',
  severity: 'error',
  summary: 'A number is written with a comma.',
  explanation: `In a plan a comma separates the items of a list, so \`58,5 m\` could be two numbers. It is read as 58.5, which is
probably meant, but a reader from another country may read it otherwise.

**How it is judged.** A comma between digits.

**What mends it.** A decimal point.`,
  examples: [
    {
      wrong: changedPlan('stage <-> desk 40 m', 'stage <-> desk 40,5 m'),
      right: changedPlan('stage <-> desk 40 m', 'stage <-> desk 40.5 m'),
    },
  ],
});
