import { formatShare } from '../physics/display.ts';
import { aboutChains } from './about-chains.ts';
import type { Check } from './check.ts';
import { changedPlan, smallPlan } from './example-plans.ts';
import { cableFixes } from './fixes/cables.ts';
import { allowedText, chainLengthText, memoryText } from './reach-words.ts';
import { lengthPart, lengthText, linkSubject } from './words.ts';

export const linkNearLimit: Check = {
  name: 'link-near-limit',
  severity: 'warning',
  summary:
    'A cable is close to the limit of what runs on it, or beyond the length that is good without doubt.',
  explanation: `On coax the picture is perfect until it fails, within a few metres: an older cable, one more barrel or a
warm afternoon is enough. On plain Cat 6 at 10 Gb/s the cables beside it decide.

**How it is judged.** Coax: beyond 90 % of the limit of \`link-reach\` (practice keeps 10 to 20 % in hand: common
practice). Copper and others: beyond the length that the interface calls \`good\`, such as 37 m of Cat 6 at 10 Gb/s
(TIA TSB-155-A, second-hand). Fibre and copper without such a length hold to their limit.

**What mends it.** A better cable or a shorter way; or a test on site with everything running, written down as an
accepted finding.`,
  examples: [
    { wrong: changedPlan('into box_s.in1 over rg6 5 m', 'into box_s.in1 over rg6 75 m'), right: smallPlan() },
    { wrong: changedPlan('over cat6a', 'over cat6'), right: smallPlan() },
  ],

  find: aboutChains((analysis, chain, reach, link) => {
    const { verdict, share, good_m } = reach;
    if (verdict !== 'near the limit' && verdict !== 'doubtful') return undefined;
    const length = `${chainLengthText(analysis, chain, reach)}: ${allowedText(analysis, reach)}`;
    const doubt =
      verdict === 'near the limit'
        ? `that is ${share === undefined ? 'nearly all' : formatShare(share)} of the limit, and beyond it the picture fails suddenly. Keep 10 % in hand`
        : `it is good without doubt only to ${good_m === undefined ? 'a shorter length' : lengthText(analysis, good_m, chain.length_m)}. Use a better cable`;
    return {
      statement: link.statement,
      part: lengthPart(link),
      subject: linkSubject(link),
      message: `${length}; ${doubt}, or test it with everything running and accept it.${memoryText(reach)}`,
      fixes: (now) => cableFixes(now, link),
    };
  }),
};
