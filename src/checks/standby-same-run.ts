import type { Check } from './check.ts';
import { smallPlan } from './example-plans.ts';
import { linkStart, linkSubject, linkText, listed } from './words.ts';

export const standbySameRun: Check = {
  name: 'standby-same-run',
  severity: 'warning',
  summary: 'A standby lies in the same run as the link that it stands by for.',
  explanation: `A standby helps against a broken plug or cable. Against what happens to the whole way (a door, water, a
cleaner's trolley) it helps only when it lies elsewhere.

**How it is judged.** The cable and its main have a run in common. A cable lies in the shortest chain of runs between its
places, or where \`by\` says.

**What mends it.** \`by PLACE\` through another way, or accepting it with the reason.`,
  examples: [
    {
      wrong: smallPlan('link trunk_b box_s.net2 <-> box_d.net2 over cat6a standby for trunk'),
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
      if (!standbyFor || standbyFor.sheath === link.sheath) continue;
      const runs = new Set(standbyFor.length.runs);
      const common = link.length.runs.filter((run) => runs.has(run)).map(({ name }) => name);
      if (common.length === 0) continue;
      report({
        statement,
        part: 'standbyFor/0',
        subject: linkSubject(link),
        message: `${linkStart(link)} stands by for ${linkText(standbyFor)} and lies in the same run, ${listed(common)}: what happens to the run takes both. Lay it another way with \`by PLACE\`.`,
      });
    }
  },
};
