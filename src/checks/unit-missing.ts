import { faultCheck } from './check.ts';
import { changedPlan, smallPlan } from './example-plans.ts';

export const unitMissing = faultCheck({
  name: 'unit-missing',
  severity: 'error',
  summary: 'A number stands without its unit.',
  explanation: `A bare number is ambiguous: \`within 6\` may be frames or milliseconds, \`58\` may be metres or feet. Nobody
guesses for you, because a wrong guess is found out on the day; the value is left out of the arithmetic.

**How it is judged.** Every quantity but a price, a count or a class needs a unit.

**What mends it.** The unit behind the number, for example \`58 m\`, \`190 ft\` or \`6 frames\`.`,
  examples: [
    { wrong: changedPlan('box_d.out1 over rg6 5 m', 'box_d.out1 over rg6 5 m within 6'), right: smallPlan() },
  ],
});
