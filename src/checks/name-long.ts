import { LONGEST_NAME } from '../plan/plan.ts';
import { faultCheck } from './check.ts';
import { smallPlan } from './example-plans.ts';

export const nameLong = faultCheck({
  name: 'name-long',
  severity: 'error',
  summary: 'A name is too long to stand on a label, in a table or in a file name.',
  explanation: `A name is what people say on the intercom and read on a label. One of hundreds of characters is a slip, such as text
that lost its quotes or its blanks; every paper would have to cut it, and two that differ only at their ends would look
the same.

**How it is judged.** A name has at most ${LONGEST_NAME} characters. Words in quotes behind it may be longer.

**What mends it.** A short name, with the words in quotes behind it: \`node box_d "Box D, control desk"\`.`,
  examples: [{ wrong: smallPlan(`place ${'hall_'.repeat(25)}1`), right: smallPlan('place hall_1 "Hall 1"') }],
});
