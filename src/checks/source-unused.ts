import type { Check } from './check.ts';
import { smallPlan } from './example-plans.ts';
import { missingNames } from './unknown-name.ts';
import { shown } from './words.ts';

export const sourceUnused: Check = {
  name: 'source-unused',
  severity: 'warning',
  summary: 'A source goes nowhere.',
  explanation: `A camera that nobody sees: it is carried, powered and operated for nothing, or its feed was forgotten.

**How it is judged.** No feed sends it anywhere, and no other source is made \`of\` it.

**What mends it.** A \`feed\` from it, naming it behind \`of\` where a mixer shows it, or taking it out.`,
  examples: [
    {
      wrong: smallPlan('source spare at stage sends 1080p50 as sdi_3g into box_s.in2 over rg6 5 m'),
      right: smallPlan(
        'source spare at stage sends 1080p50 as sdi_3g into box_s.in2 over rg6 5 m',
        'feed spare -> screen instead of camera in later',
        'segment later',
      ),
    },
  ],

  find(analysis, report) {
    // A feed from a misspelt name is told as that; what it probably means is not unused.
    const meant = new Set(missingNames(analysis).map(({ near }) => near));
    for (const { name, statement } of analysis.unusedSources) {
      if (meant.has(name)) continue;
      report({
        statement,
        part: 'name',
        subject: name,
        message: `${shown(name)} goes nowhere: no feed sends it. Write \`feed ${shown(name)} -> …\`, or take it out.`,
      });
    }
  },
};
