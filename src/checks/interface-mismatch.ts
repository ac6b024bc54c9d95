import type { Chain, Interface, InterfaceFault } from '../analysis/model.ts';
import type { Check } from './check.ts';
import { changedPlan, smallPlan } from './example-plans.ts';
import { either, interfaceText, linkStart, linkSubject, listedWords, shown } from './words.ts';

type Mismatch = Exclude<InterfaceFault, { kind: 'not on this cable' }>;

export const interfaceMismatch: Check = {
  name: 'interface-mismatch',
  severity: 'error',
  summary: 'The two ends of a cable have no interface in common.',
  explanation: `The plug may even fit, but the two sides do not speak the same signal: HDMI into SDI needs a converter, a
module for multimode does not see one for single-mode.

**How it is judged.** Each end takes its own interface and all that this one \`accepts\`, also through others. On a
chain of cables that nothing regenerates, the joins between count too. \`as\` on a link must name one that both ends
take.

**What mends it.** A converter or scaler between, a kit or module with the right interface, or another port.`,
  examples: [
    {
      wrong: changedPlan(
        'takes 1080p50 as sdi_3g from box_d.out1 over rg6',
        'takes 1080p50 as hdmi_1_4 from box_d.out1 over hdmi_copper',
      ),
      right: smallPlan(),
    },
    {
      wrong: changedPlan('over cat6a', 'over cat6a as ethernet_25g_t'),
      right: changedPlan('over cat6a', 'over cat6a as ethernet_10g_t'),
    },
  ],

  find({ remarkable }, report) {
    for (const chain of remarkable.chains) {
      const { interfaceFault, links } = chain;
      const [link] = links;
      if (!link || interfaceFault === undefined || interfaceFault.kind === 'not on this cable') continue;
      // Ports of another direction are other ports: what is meant may well fit.
      if (links.some(({ directionFault }) => directionFault !== undefined)) continue;
      const pins = links.find(({ statement }) => statement.fact.interface !== undefined) ?? link;
      const at = interfaceFault.kind === 'pinned one not possible' ? pins : link;
      report({
        statement: at.statement,
        part: at.statement.fact.interface === undefined ? undefined : 'interfaces/0',
        subject: linkSubject(link),
        message: messageOf(chain, interfaceFault),
        fixes:
          interfaceFault.kind === 'pinned one not possible'
            ? fastest(interfaceFault.common).map(({ name }) => ({
                title: `Run it as ${name}`,
                edits: [{ kind: 'replace', statement: at.statement, part: 'interfaces/0', text: name }],
              }))
            : [],
      });
    }
  },
};

/** Those of the highest rate: with a slower one the pictures may not fit. */
function fastest(faces: readonly Interface[]): readonly Interface[] {
  const most = Math.max(...faces.map((face) => face.rate_bits_per_second));
  return faces.filter((face) => face.rate_bits_per_second === most).slice(0, 3);
}

function messageOf({ links, ends }: Chain, fault: Mismatch): string {
  const start = linkStart(links[0]!);
  if (fault.kind === 'pinned one not possible') {
    return `${start} cannot run as ${interfaceText(fault.pinned)}: ${shown(ends[0].text)} and ${shown(ends[1].text)} have only ${listedWords(fault.common.map(interfaceText))} in common. Name one of these, or none.`;
  }
  const [from, to] = ends.map(({ text, port }) =>
    port?.interface ? `${shown(text)} is ${interfaceText(port.interface)}` : shown(text),
  );
  const kinds = [...new Set(fault.between.map(({ signal }) => signal))];
  const mend =
    kinds.length > 1
      ? 'Put a converter between, or use ports of the same kind.'
      : `Use modules or ports that both are ${either(fault.between.map(interfaceText))}.`;
  const joins =
    links.length > 1 ? `, through ${links.length - 1} ${links.length === 2 ? 'join' : 'joins'}` : '';
  return `${start} has nothing in common at its ends: ${from}, ${to}${joins}. ${mend}`;
}
