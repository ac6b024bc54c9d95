import { targetText } from '../analysis/subjects.ts';
import type { Check } from './check.ts';
import { smallPlan } from './example-plans.ts';
import { statementsWithUnknownNames } from './unknown-name.ts';
import { shown } from './words.ts';

export const nothingProved: Check = {
  name: 'nothing-proved',
  severity: 'warning',
  summary: 'A proof speaks of a feed that is not in the plan.',
  explanation: `The line check says that this picture was seen on site, but the plan no longer sends it there: either the
feed has changed since, and must be checked again, or a name is wrong.

**How it is judged.** A feed from this source to this destination is written in the plan, always or in a segment.

**What mends it.** The names of the feed as it is now, once it has been seen; or deleting the proof.`,
  examples: [
    {
      wrong: smallPlan(
        'destination side at desk takes 1080p50 as sdi_3g from box_d.out2 over rg6 5 m',
        'source slides at stage sends 1080p50 as sdi_3g into box_s.in2 over rg6 5 m',
        'feed slides -> side',
        'proved camera -> side on 2027-05-14',
      ),
      right: smallPlan('proved camera -> screen on 2027-05-14'),
    },
  ],

  find(analysis, report) {
    const unknown = statementsWithUnknownNames(analysis);
    for (const { statement, feeds } of analysis.proofs) {
      if (feeds.length > 0 || unknown.has(statement)) continue;
      const { source, target } = statement.fact;
      report({
        statement,
        part: 'source',
        message: `No feed is ${shown(`${source} -> ${targetText(target)}`)}, so this proves nothing. Write it as the feed stands in the plan, or delete it and check the new one.`,
        fixes: [{ title: 'Delete this proof', edits: [{ kind: 'delete', statement }] }],
      });
    }
  },
};
