import type { Check } from './check.ts';
import { smallPlan } from './example-plans.ts';
import { linkStart, linkSubject, linkText } from './words.ts';

export const standbyShares: Check = {
  name: 'standby-shares',
  severity: 'error',
  summary: 'A standby lies in the same sheath as the link that it stands by for.',
  explanation: `What cuts one cuts the other: the forklift, the door, the pulled drum. A second core in the same cable is
no standby.

**How it is judged.** The standby \`shares\` the sheath of its main link, also through others.

**What mends it.** A cable of its own, best by another way.`,
  examples: [
    {
      wrong: smallPlan('link trunk_b box_s.net2 <-> box_d.net2 over cat6a standby for trunk shares trunk'),
      right: smallPlan(
        'place gallery',
        'run stage <-> gallery 30 m',
        'run gallery <-> desk 30 m',
        'link trunk_b box_s.net2 <-> box_d.net2 over cat6a by gallery standby for trunk',
      ),
    },
  ],

  find({ remarkable }, report) {
    for (const link of remarkable.links) {
      const { standbyFor, statement } = link;
      if (!standbyFor || standbyFor.sheath !== link.sheath) continue;
      report({
        statement,
        part: statement.fact.shares === undefined ? 'standbyFor/0' : 'shares/0',
        subject: linkSubject(link),
        message: `${linkStart(link)} stands by for ${linkText(standbyFor)} but lies in the same sheath: both are lost together. Lay a cable of its own, best by another way.`,
      });
    }
  },
};
