import { subjectText } from '../analysis/subjects.ts';
import type { Check } from './check.ts';
import { smallPlan } from './example-plans.ts';
import { statementsWithUnknownNames } from './unknown-name.ts';
import { shown } from './words.ts';

export const nothingMeasured: Check = {
  name: 'nothing-measured',
  severity: 'warning',
  summary: 'A measured value has no effect.',
  explanation: `Somebody walked the hall with a tape, and the plan does not use what they found: the sheets still show the
planned length.

**How it is judged.** A length belongs to a link or a run, a delay to a feed that is written in the plan, a rate to an uplink. Of two measurements
of the same thing the first counts. The delay of a feed that has no way is no delay of this plan.

**What mends it.** The name or the two ends as they stand in the plan; the unit that fits; one measurement for each
thing.`,
  examples: [
    {
      wrong: smallPlan('measured screen -> camera 40 ms'),
      right: smallPlan('measured camera -> screen 40 ms'),
    },
    { wrong: smallPlan('measured box_s 40 m'), right: smallPlan('measured trunk 43 m') },
    {
      wrong: smallPlan('measured trunk 43 m', 'measured trunk 44 m'),
      right: smallPlan('measured trunk 44 m'),
    },
  ],

  find(analysis, report) {
    const unknown = statementsWithUnknownNames(analysis);
    for (const { statement, useless } of analysis.measurements) {
      if (useless === undefined || unknown.has(statement) || statement.faults.length > 0) continue;
      const subject = shown(subjectText(statement.fact.subject));
      const message = {
        'matches nothing': `Nothing in the plan is ${subject}, so this value counts nowhere. Name a link, a run, a feed or an uplink as it is written in the plan.`,
        'wrong quantity': `${subject} is not measured in this unit, so the value counts nowhere. A link or a run has a length, a feed a delay, an uplink a rate.`,
        'no way': `${subject} has no way in this plan, so nobody knows what was measured. Mend the way, or delete the measurement.`,
        'measured before': `${subject} has been measured already; the first value counts. Delete the one that is older.`,
      }[useless];
      report({
        statement,
        part: useless === 'wrong quantity' ? 'value' : 'subject',
        message,
        fixes: [{ title: 'Delete this measurement', edits: [{ kind: 'delete', statement }] }],
      });
    }
  },
};
