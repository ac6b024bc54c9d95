import type { Check } from './check.ts';
import { smallPlan } from './example-plans.ts';
import { linkStart, linkSubject, shown } from './words.ts';

export const selfLink: Check = {
  name: 'self-link',
  severity: 'error',
  summary: 'A cable or a run ends where it begins.',
  explanation: `Both ends of a cable are written as the same port, or both ends of a run as the same place. It joins
nothing, and whatever was meant at the other end has no cable.

**How it is judged.** The two ends are the same port or the same place.

**What mends it.** The end that was meant. Cables within one place need no run.`,
  examples: [
    { wrong: smallPlan('link spare box_s.net2 <-> box_s.net2 over cat6a'), right: smallPlan() },
    { wrong: smallPlan('run desk <-> desk 5 m'), right: smallPlan() },
  ],

  find({ remarkable, runs }, report) {
    for (const link of remarkable.links) {
      if (link.directionFault !== 'onto itself') continue;
      report({
        statement: link.statement,
        part: 'to',
        subject: linkSubject(link),
        message: `${linkStart(link)} ends at the port where it begins, ${shown(link.from.text)}. Write the port that was meant.`,
      });
    }
    for (const { from, to, name, statement } of runs) {
      if (!from || from !== to) continue;
      report({
        statement,
        part: 'to',
        subject: name,
        message: `This run ends where it begins, at ${shown(from.name)}. Write the place that was meant; cables within one place need no run.`,
        fixes: [{ title: 'Delete this run', edits: [{ kind: 'delete', statement }] }],
      });
    }
  },
};
