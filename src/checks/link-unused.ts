import { reliedOnBy } from '../analysis/failures.ts';
import type { Analysis } from '../analysis/model.ts';
import type { Check } from './check.ts';
import { smallPlan } from './example-plans.ts';
import { linkStart, linkSubject } from './words.ts';

export const linkUnused: Check = {
  name: 'link-unused',
  severity: 'warning',
  when: 'idle',
  summary: 'Nothing ever goes over a link.',
  explanation: `The cable is carried, laid and taped for nothing; or a feed was forgotten, and that is found out when the
picture is missing.

**How it is judged.** No feed takes the link in any segment. Standbys and what belongs to the house (\`installed\`) are
left out, and so are a link that a \`redundant\` feed would take after a loss, and the cable of a source or destination that
is itself unused. While a feed has no route nothing is said: it may be the one that needs the link.

**What mends it.** The feed that was forgotten, \`standby for\` where it waits for another to fail, or taking the link out.
A link for the unforeseen is accepted with the reason.`,
  examples: [
    {
      wrong: smallPlan('link box_d.loop1 -> box_d.in2 over rg6 1 m').replace(
        'network net',
        'outputs loop1 as sdi_3g follow in1\n  network net',
      ),
      right: smallPlan(),
    },
  ],

  find(analysis, report) {
    if (someFeedIsLost(analysis)) return;
    for (const { link, unused } of analysis.traffic) {
      const { statement, standbyFor, installed, directionFault, from, to } = link;
      if (!unused || standbyFor || installed || statement.fact.kind !== 'link') continue;
      if (directionFault !== undefined || link.chain.interfaceFault || !from.port || !to.port) continue;
      if (link.network && reliedOnBy(analysis).has(link)) continue;
      report({
        statement,
        part: link.named ? 'name' : undefined,
        subject: linkSubject(link),
        message: `Nothing goes over ${link.named ? linkStart(link) : 'this cable'} in any segment. Write the feed that needs it, or take it out.`,
      });
    }
  },
};

/** Whether a picture does not get where it is wanted: then what it would have used is not seen. */
export function someFeedIsLost({ deliveries, names }: Analysis): boolean {
  return names.unknown.length > 0 || deliveries.some(({ noRoute }) => noRoute !== undefined);
}
