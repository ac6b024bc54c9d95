import { formatShare } from '../physics/display.ts';
import type { Check } from './check.ts';
import { changedPlan, smallPlan } from './example-plans.ts';
import { allowedText, chainLengthText } from './reach-words.ts';
import { lengthPart, linkSubject, shown } from './words.ts';

export const fromMemory: Check = {
  name: 'from-memory',
  severity: 'warning',
  summary: 'A cable is judged good by a value that was written down from memory.',
  explanation: `Some values of the library, and perhaps of your own cables, were not read in any document. They are
marked \`from memory\`. Where such a value is all that says that a cable is short enough, look it up before the day.

**How it is judged.** A value that is marked \`from memory\` has a part in it, and were it a quarter worse than it is
remembered, the cable would be too long (common practice, no source).

**What mends it.** The data sheet: declare your own \`cable\` or \`interface\` with the figure that it states and its
source in quotes, or accept the finding with where you looked it up.`,
  examples: [
    {
      wrong: changedPlan('into box_s.in1 over rg6 5 m', 'into box_s.in1 over rg59 50 m'),
      right: smallPlan(),
    },
  ],

  find(analysis, report) {
    for (const chain of analysis.remarkable.chains) {
      const reach = analysis.reaches[chain.index];
      const [link] = chain.links;
      if (reach?.verdict !== 'good' || !reach.memoryDecides || !link) continue;
      const source = reach.source === undefined ? '' : ` (${shown(reach.source)})`;
      report({
        statement: link.statement,
        part: lengthPart(link),
        subject: linkSubject(link),
        message: `${chainLengthText(analysis, chain, reach)}, ${formatShare(reach.share ?? 0)} of a limit that is from memory${source}: ${allowedText(analysis, reach)}. Look it up, and declare the cable with what its data sheet says.`,
      });
    }
  },
};
