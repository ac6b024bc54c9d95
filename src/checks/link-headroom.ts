import { formatShare } from '../physics/display.ts';
import type { Check } from './check.ts';
import { changedPlan } from './example-plans.ts';
import { detourFixes } from './fixes/detour.ts';
import { loadText, worstSegment } from './traffic-words.ts';
import { linkSubject } from './words.ts';

const two = [
  'source camera_2 at stage sends 1080p50 as sdi_3g into box_s.in2 over rg6 5 m',
  'destination screen_2 at desk takes 1080p50 as sdi_3g from box_d.out2 over rg6 5 m',
  'feed camera_2 -> screen_2',
];

export const linkHeadroom: Check = {
  name: 'link-headroom',
  severity: 'warning',
  summary: 'A network link is fuller than the plan allows itself.',
  explanation: `The link still carries everything, but nothing may be added, and what is not counted (control, timing, a
laptop that asks for updates) has little room.

**How it is judged.** The load of each direction, in the worst segment, against the line rate less the plan's \`headroom\`
(10 % where not stated: common practice, no source). The load is counted as in \`link-overload\`.

**What mends it.** Taking a picture off the link, a second link beside it or a faster one; or another \`headroom\`, if
you know your network.`,
  examples: [
    {
      wrong: changedPlan('rate 50', 'rate 50\n  headroom 60 %', ...two),
      right: changedPlan('rate 50', 'rate 50\n  headroom 50 %', ...two),
    },
  ],

  find(analysis, report) {
    const { headroomShare } = analysis.settings;
    for (const traffic of analysis.traffic) {
      if (traffic.judgement !== 'over headroom') continue;
      const { link } = traffic;
      report({
        statement: link.statement,
        part: link.named ? 'name' : undefined,
        subject: linkSubject(link),
        segment: worstSegment(traffic),
        message: `${loadText(traffic)}. That leaves less than the ${formatShare(headroomShare)} of headroom that the plan wants: take a picture off it, lay a second link beside it, or use a faster one.`,
        fixes: () => detourFixes(analysis, traffic),
      });
    }
  },
};
