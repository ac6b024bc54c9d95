import { formatWeight } from '../physics/display.ts';
import { packingFor } from './asked.ts';
import type { Check } from './check.ts';
import { smallPlan } from './example-plans.ts';
import { listed, shown } from './words.ts';

const packed = (limit: number) =>
  smallPlan(`case blue holds box_s, box_d, trunk weighs 6 kg up to ${limit} kg`).replace(
    'delay 1 frame',
    'delay 1 frame\n  weighs 4 kg',
  );

export const caseOver: Check = {
  name: 'case-over',
  severity: 'error',
  when: 'idle',
  summary: 'A case is heavier than it may be.',
  explanation: `An airline or a carrier refuses it at the counter, or a back pays for it. Repacking in the lobby costs the hour
that was meant for the line check.

**How it is judged.** The empty case, the kit in it, and its cables by the weight of a metre of the piece that is taken,
against \`up to\`. Things without a known weight are not in the sum; the message lists them.

**What mends it.** Something in another case, or another limit if the carrier allows it. Lift heavy cases with two.`,
  examples: [{ wrong: packed(14), right: packed(23) }],

  find(analysis, report) {
    for (const { case: one, weight_kg, limit_kg, unknown } of packingFor(analysis).cases) {
      if (limit_kg === undefined || weight_kg <= limit_kg) continue;
      const more = unknown.length === 0 ? '' : `, without ${listed(unknown)}, whose weight is not known`;
      report({
        statement: one.statement,
        part: 'limits/0',
        subject: one.name,
        message: `${shown(one.name)} weighs ${formatWeight(weight_kg, limit_kg)}${more}; ${formatWeight(limit_kg)} are allowed. Take ${formatWeight(weight_kg - limit_kg)} out of it, or allow more.`,
      });
    }
  },
};
