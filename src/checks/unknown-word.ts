import { faultCheck } from './check.ts';
import { changedPlan } from './example-plans.ts';

export const unknownWord = faultCheck({
  name: 'unknown-word',
  severity: 'error',
  summary: 'A setting has a word that it does not know.',
  explanation: `Some settings know only a few words, such as the medium of a cable. With another word the setting is not made, and
what follows from it (a loss formula, a packing rule) is not worked out.

**How it is judged.** By the list that the message gives.

**What mends it.** One of the words of that list.`,
  examples: [
    {
      wrong: changedPlan('rate 50', 'rate 50\n  units yards'),
      right: changedPlan('rate 50', 'rate 50\n  units feet'),
    },
  ],
});
