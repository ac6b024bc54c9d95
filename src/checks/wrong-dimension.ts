import { faultCheck } from './check.ts';
import { changedPlan } from './example-plans.ts';

export const wrongDimension = faultCheck({
  name: 'wrong-dimension',
  severity: 'error',
  summary: 'A quantity of another kind is expected here.',
  explanation: `A length stands where a power belongs, or frames where metres are expected. The value is left out of the
arithmetic: a cable whose length cannot be read is checked for nothing.

**How it is judged.** By the unit: every quantity of the language has one kind of unit. Units are those of the SI and
the foot and pound of 1959 (exact).

**What mends it.** A unit of the kind that the message names, or the value at the clause that it belongs to.`,
  examples: [
    {
      wrong: changedPlan('over cat6a', 'over cat6a 60 W'),
      right: changedPlan('over cat6a', 'over cat6a 44 m'),
    },
  ],
});
