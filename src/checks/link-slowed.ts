import { formatRate } from '../physics/display.ts';
import type { Check } from './check.ts';
import { changedPlan, smallPlan } from './example-plans.ts';
import { cableFixes } from './fixes/cables.ts';
import { cablePart, interfaceText, linkStart, linkSubject, shown } from './words.ts';

export const linkSlowed: Check = {
  name: 'link-slowed',
  severity: 'warning',
  summary: 'The cable makes a link slower than the sockets at its ends.',
  explanation: `Both sockets could do more, but the cable is not listed for it, so they settle on a slower rate; or they
try the faster one and drop out. Half a trunk less is noticed when the last picture is added.

**How it is judged.** The link runs at the fastest interface that both ends accept and the cable lists. 10 Gb/s over
Cat 5e, for example, is outside the standard, though some links run to about 45 m (common practice).

**What mends it.** A cable that carries the faster one, or \`as\` with the slower interface where it is meant.`,
  examples: [{ wrong: compressed(changedPlan('over cat6a', 'over cat5e')), right: compressed(smallPlan()) }],

  find(analysis, report) {
    for (const { links, interface: face, slowedFrom } of analysis.remarkable.chains) {
      const [link] = links;
      if (!slowedFrom || !face || !link) continue;
      const { statement } = link;
      if (statement.fact.interface !== undefined) continue;
      report({
        statement,
        part: cablePart(link),
        subject: linkSubject(link),
        message: `${linkStart(link)} runs at ${formatRate(face.rate_bits_per_second)}: ${shown(link.cable?.name ?? 'its cable')} does not carry ${interfaceText(slowedFrom)}, which both ends could. Use a cable that does, or write \`as ${face.name}\` if this is meant.`,
        fixes: () => [
          ...cableFixes(analysis, link),
          {
            title: `Run it as ${face.name}`,
            edits: [{ kind: 'append', statement, text: `as ${face.name}` }],
          },
        ],
      });
    }
  },
};

/** So that the picture fits the slower link. */
function compressed(plan: string): string {
  return plan.replace('carries uncompressed', 'carries compressed 8:1');
}
