import type { CheckText } from './check.ts';
import { smallPlan } from './example-plans.ts';

export const unreadable: CheckText = {
  name: 'unreadable',
  severity: 'error',
  summary: 'A piece of text cannot be read as a statement.',
  explanation: `A word stands where none is expected, or one is missing. The statement around it is read as far as it
can be and everything else in the plan still counts, but what stands here may not: a cable that is not read is in no
load and on no packing list.

**How it is judged.** By the grammar of the language; the message says what is expected at this place.

**What mends it.** Write what the message expects. A name begins with a letter; text stands between straight quotes
and ends on its line; every statement begins with its own word (\`place\`, \`node\`, \`link\`, \`feed\` …).`,
  examples: [
    {
      wrong: smallPlan('place 4k_corner'),
      right: smallPlan('place corner_4k'),
    },
  ],
};
