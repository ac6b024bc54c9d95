import type { Check } from './check.ts';
import { changedPlan, smallPlan } from './example-plans.ts';
import { cableFixes } from './fixes/cables.ts';
import { linkStart, linkSubject } from './words.ts';

export const cableMissing: Check = {
  name: 'cable-missing',
  severity: 'warning',
  summary: 'A link does not say which cable it is.',
  explanation: `Without a cable nobody knows whether it reaches, and no list says what to pack. The link counts in routes
and loads all the same.

**How it is judged.** Every link, and every source and destination that is plugged in, says \`over CABLE\`.

**What mends it.** \`over\` and a cable of the library or of your own.`,
  examples: [{ wrong: changedPlan(' over cat6a', ''), right: smallPlan() }],

  find(analysis, report) {
    for (const link of analysis.remarkable.links) {
      const { statement, directionFault } = link;
      // A link whose ends are wrong may be another cable once they are right.
      if (statement.fact.cable !== undefined || directionFault !== undefined) continue;
      if (!link.from.port || !link.to.port) continue;
      report({
        statement,
        subject: linkSubject(link),
        message: `${linkStart(link)} does not say which cable it is, so nobody knows whether it reaches. Write \`over\` and the cable.`,
        fixes: () => cableFixes(analysis, link),
      });
    }
  },
};
