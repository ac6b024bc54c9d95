import { formatRate } from '../physics/display.ts';
import type { Check } from './check.ts';
import { smallPlan } from './example-plans.ts';
import { detourFixes } from './fixes/detour.ts';
import { loadText, worstLoad, worstSegment } from './traffic-words.ts';
import { linkSubject } from './words.ts';

const pictures = (count: number) =>
  Array.from({ length: count }, (_, i) => i + 2).flatMap((i) => [
    `source camera_${i} at stage sends 1080p50 as sdi_3g into box_s.in${i} over rg6 5 m`,
    `destination screen_${i} at desk takes 1080p50 as sdi_3g from box_d.out${i} over rg6 5 m`,
    `feed camera_${i} -> screen_${i}`,
  ]);

const fast = (plan: string) => plan.replaceAll('1080p50', '1080p59.94').replace('rate 50', 'rate 59.94');

export const linkOverload: Check = {
  name: 'link-overload',
  severity: 'error',
  summary: 'More goes over a network link than it can carry.',
  explanation: `A network does not share out what it lacks: packets are dropped at random, and every picture on the link
breaks up, not only the one that was too much.

**How it is judged.** The load of each direction, in the worst segment, against the line rate of the interface.
Uncompressed pictures: general packing in equal packets of whole pixel groups per row (RFC 4175, published; ST 2110-20),
each with 86 octets of headers, preamble and gap; sound 48 kHz 24 bit in 1 ms packets (ST 2110-30); 0.1 Mb/s of ancillary
data. One picture counts once on a link however many watch it beyond (multicast); the two copies of a seamless feed count as two.
Nothing is rounded before the comparison.

**What mends it.** Taking a picture off the link, a second link beside it, a faster interface, boxes that compress, or a
smaller format.`,
  examples: [{ wrong: fast(smallPlan(...pictures(3))), right: fast(smallPlan(...pictures(2))) }],

  find(analysis, report) {
    for (const traffic of analysis.traffic) {
      if (traffic.judgement !== 'over capacity') continue;
      const { link } = traffic;
      const capacity = link.chain.capacity_bits_per_second ?? 0;
      const excess = worstLoad(traffic).load_bits_per_second - capacity;
      report({
        statement: link.statement,
        part: link.named ? 'name' : undefined,
        subject: linkSubject(link),
        segment: worstSegment(traffic),
        message: `${loadText(traffic)}. It has to lose ${formatRate(excess)}: take a picture off it, lay a second link beside it, or use a faster one.`,
        fixes: () => detourFixes(analysis, traffic),
      });
    }
  },
};
