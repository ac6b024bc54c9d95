import { aboutChains } from './about-chains.ts';
import type { Check } from './check.ts';
import { changedPlan, smallPlan } from './example-plans.ts';
import { cableFixes } from './fixes/cables.ts';
import { allowedText, chainLengthText, memoryText } from './reach-words.ts';
import { lengthPart, linkSubject } from './words.ts';

export const linkReach: Check = {
  name: 'link-reach',
  severity: 'error',
  summary: 'A cable is longer than what runs on it can reach.',
  explanation: `Beyond its limit a signal does not get worse, it goes away: SDI shows nothing at all, a network socket
falls back to a slower rate or drops out in the second half.

**How it is judged.** By what the cable is made of:

- Coax: the loss of the cable, k1·√f + k2·f fitted to its stated points (engineering default), at half the clock of the
  fastest picture that it carries, against what the standard mentions for a receiver: 20 dB for HD and 3G, 40 dB for 6G
  and 12G (second-hand). A faster interface is never given more reach than a slower one.
- Twisted pair: the table of the interface (second-hand), divided by the rise of loss where a run is warm
  (TIA-568-C.2) or the cable is stranded.
- Fibre: the reach of the interface, and its loss budget against length, connections (0.75 dB each, two where not
  stated) and splices (0.3 dB each; TIA-568.3-D, second-hand). The worse decides.
- HDMI and its like: lengths that are common practice; no standard gives any.

Cables joined without regeneration count as one.

**What mends it.** A better cable, fibre, a slower format, a shorter way, or something that regenerates in between.`,
  examples: [
    { wrong: changedPlan('into box_s.in1 over rg6 5 m', 'into box_s.in1 over rg6 90 m'), right: smallPlan() },
    { wrong: changedPlan('stage <-> desk 40 m', 'stage <-> desk 120 m'), right: smallPlan() },
  ],

  find: aboutChains((analysis, chain, reach, link) => {
    if (reach.verdict !== 'beyond') return undefined;
    return {
      statement: link.statement,
      part: lengthPart(link),
      subject: linkSubject(link),
      message: `${chainLengthText(analysis, chain, reach)}: ${allowedText(analysis, reach)}. Use a cable that reaches, go a shorter way, or regenerate in between.${memoryText(reach)}`,
      fixes: (now) => cableFixes(now, link),
    };
  }),
};
