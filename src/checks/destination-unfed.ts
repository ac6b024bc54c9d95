import type { Check } from './check.ts';
import { smallPlan } from './example-plans.ts';
import { missingNames } from './unknown-name.ts';
import { shown } from './words.ts';

export const destinationUnfed: Check = {
  name: 'destination-unfed',
  severity: 'warning',
  summary: 'A destination never gets a picture.',
  explanation: `A screen stands there and stays black all day; somebody will ask for its picture five minutes before doors.

**How it is judged.** No feed names it, in any segment.

**What mends it.** A \`feed\` to it, or taking it out.`,
  examples: [
    {
      wrong: smallPlan('destination side at desk takes 1080p50 as sdi_3g from box_d.out2 over rg6 5 m'),
      right: smallPlan(
        'destination side at desk takes 1080p50 as sdi_3g from box_d.out2 over rg6 5 m',
        'feed camera -> side',
      ),
    },
  ],

  find(analysis, report) {
    // A feed to a misspelt name is told as that; what it probably means is not unfed.
    const meant = new Set(missingNames(analysis).map(({ near }) => near));
    for (const { name, statement } of analysis.unfedDestinations) {
      if (meant.has(name)) continue;
      report({
        statement,
        part: 'name',
        subject: name,
        message: `${shown(name)} never gets a picture: no feed names it. Write \`feed … -> ${shown(name)}\`, or take it out.`,
        fixes: () => {
          const [only, ...more] = analysis.unusedSources;
          if (!only || more.length > 0) return [];
          const text = `feed ${only.name} -> ${name}`;
          return [
            { title: `Send it ${shown(only.name)}`, edits: [{ kind: 'insertAfter', statement, text }] },
          ];
        },
      });
    }
  },
};
