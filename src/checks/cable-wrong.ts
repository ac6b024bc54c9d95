import type { Check } from './check.ts';
import { changedPlan, smallPlan } from './example-plans.ts';
import { cableFixes } from './fixes/cables.ts';
import { cablePart, either, interfaceText, linkStart, linkSubject, shown } from './words.ts';

export const cableWrong: Check = {
  name: 'cable-wrong',
  severity: 'error',
  summary: 'The cable cannot carry what its two ends would speak.',
  explanation: `Twisted pair carries no SDI, coax carries no Ethernet, single-mode fibre does nothing for a multimode
module. The plug may fit, and then nobody understands why there is no picture.

**How it is judged.** An interface runs over a cable for which it states a \`reach\` (or for one that this cable is
\`like\`), and SDI over coax for which a loss is stated.

**What mends it.** A cable that carries it, or modules and ports for the cable that lies there. A cable of your own is
declared with \`cable … { like … }\`.`,
  examples: [{ wrong: changedPlan('over cat6a', 'over om3'), right: smallPlan() }],

  find(analysis, report) {
    for (const { interfaceFault, links } of analysis.remarkable.chains) {
      if (interfaceFault?.kind !== 'not on this cable') continue;
      const link = links.find((one) => one.cable === interfaceFault.cable) ?? links[0];
      if (!link) continue;
      const faces = interfaceFault.common.map(interfaceText);
      const cable = shown(interfaceFault.cable.name);
      report({
        statement: link.statement,
        part: cablePart(link),
        subject: linkSubject(links[0] ?? link),
        message: `${linkStart(link)} lies in ${cable}, which does not carry ${either(faces.slice(0, 4))} between ${shown(link.from.text)} and ${shown(link.to.text)}. Use a cable that does, or ports for this cable.`,
        fixes: () => cableFixes(analysis, link),
      });
    }
  },
};
