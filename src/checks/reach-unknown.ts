import type { Check } from './check.ts';
import { smallPlan } from './example-plans.ts';
import { cableFixes } from './fixes/cables.ts';
import { cablePart, interfaceText, linkStart, linkSubject, shown } from './words.ts';

export const reachUnknown: Check = {
  name: 'reach-unknown',
  severity: 'warning',
  summary: 'Nothing says how far a signal goes over this cable.',
  explanation: `The cable and its length are known, but neither the interface nor the cable says how far it goes, so the
length is not judged.

**How it is judged.** An interface states \`reach CABLE LENGTH\`, or a cable states its \`loss\` and the interface its
\`budget\`. A cable with \`like\` has what the other cable has.

**What mends it.** The figures of the data sheet in the cable or the interface, or \`like\` the cable of the library
that it resembles.`,
  examples: [
    {
      wrong: smallPlan(
        'interface stage_link "Our own optical box" {',
        '  signal sdi',
        '  rate 2.97 Gb/s',
        '  budget 7 dB',
        '  accepts sdi_3g',
        '}',
        'cable thin_coax "Thin coax" {',
        '  medium coax',
        '}',
        'source second at stage sends 1080p50 as stage_link into box_s.in2 over thin_coax 3 m',
        'destination monitor at desk takes 1080p50 as sdi_3g from box_d.out2 over rg6 5 m',
        'feed second -> monitor',
      ),
      right: smallPlan(
        'source second at stage sends 1080p50 as sdi_3g into box_s.in2 over rg6 3 m',
        'destination monitor at desk takes 1080p50 as sdi_3g from box_d.out2 over rg6 5 m',
        'feed second -> monitor',
      ),
    },
  ],

  find(analysis, report) {
    for (const { index, links, length_m, interface: face, interfaceFault } of analysis.remarkable.chains) {
      const [link] = links;
      if (analysis.reaches[index]?.verdict !== 'not known' || !link) continue;
      // Told already where a length, a cable or an interface is missing or wrong.
      if (length_m === undefined || !face || interfaceFault || links.some(({ cable }) => !cable)) continue;
      report({
        statement: link.statement,
        part: cablePart(link),
        subject: linkSubject(link),
        message: `${linkStart(link)}: nothing says how far ${interfaceText(face)} goes over ${shown(link.cable?.name ?? '')}, so its length is not judged. State the \`reach\` or the \`loss\` of its data sheet, or \`like\` a cable of the library.`,
        fixes: () => cableFixes(analysis, link),
      });
    }
  },
};
