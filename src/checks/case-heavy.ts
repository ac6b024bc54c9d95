import { CREW_KG, ONE_PERSON_KG } from '../analysis/case-weights.ts';
import { formatWeight } from '../physics/display.ts';
import { packingFor } from './asked.ts';
import type { Check } from './check.ts';
import { smallPlan } from './example-plans.ts';
import { shown } from './words.ts';

const packed = (text: string) =>
  smallPlan(`case blue holds box_s, box_d, "cable ramps" ${text}`).replace(
    'delay 1 frame',
    'delay 1 frame\n  weighs 10 kg',
  );

export const caseHeavy: Check = {
  name: 'case-heavy',
  severity: 'warning',
  when: 'idle',
  summary: 'A case is heavier than one person should lift and has no limit, or than any crew moves by hand.',
  explanation: `Nobody has said how heavy the case may be, and it has become heavier than one person should lift.

**How it is judged.** More than ${ONE_PERSON_KG} kg and no \`up to\` (common practice, no source; where a law or a house
rule sets another limit, that one holds). With a limit, more than ${CREW_KG} kg: no crew moves that without a machine.

**What mends it.** \`up to\` with the limit that holds for this case, such as that of a trolley for two; or something in
another case.`,
  examples: [{ wrong: packed('weighs 6 kg'), right: packed('weighs 6 kg up to 60 kg') }],

  find(analysis, report) {
    for (const { case: one, weight_kg, limit_kg } of packingFor(analysis).cases) {
      if (weight_kg <= (limit_kg === undefined ? ONE_PERSON_KG : CREW_KG)) continue;
      const weighs = `${shown(one.name)} weighs ${formatWeight(weight_kg, ONE_PERSON_KG)}`;
      report({
        statement: one.statement,
        part: 'name',
        subject: one.name,
        message:
          limit_kg === undefined
            ? `${weighs} and has no limit; one person should lift ${formatWeight(ONE_PERSON_KG)} at most. Write \`up to\` with its limit, or take something out.`
            : `${weighs}, more than the ${formatWeight(CREW_KG)} that a crew moves without a machine. Mend the weights, or take something out; lifting it is work for a forklift and who may drive it.`,
      });
    }
  },
};
