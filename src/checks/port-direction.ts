import type { DirectionFault, Link } from '../analysis/model.ts';
import type { Check } from './check.ts';
import { smallPlan } from './example-plans.ts';
import type { Fix } from './finding.ts';
import { endPart, linkStart, linkSubject, shown } from './words.ts';

export const portDirection: Check = {
  name: 'port-direction',
  severity: 'error',
  summary: 'A cable is plugged in the wrong way round, or joins ports that do not go together.',
  explanation: `A picture comes out of outputs and goes into inputs. Two outputs on one cable show nothing, and a network
socket has nothing to do with a video socket even where the plug fits.

**How it is judged.** \`->\` runs from an output (or a network port) to an input (or a network port); \`<->\` joins
network ports, or ports that pass either way. Network ports go to network ports only.

**What mends it.** The ends the other way round, or the ports that were meant.`,
  examples: [
    {
      wrong: smallPlan('link box_d.in1 -> box_d.out2 over rg6 1 m', 'feed camera -> box_d.in1'),
      right: smallPlan('link box_d.out2 -> box_d.in1 over rg6 1 m', 'feed camera -> box_d.in1'),
    },
  ],

  find({ remarkable }, report) {
    for (const link of remarkable.links) {
      const { directionFault, statement } = link;
      if (directionFault === undefined || directionFault === 'onto itself') continue;
      const end = directionFault === 'to an output' ? 'to' : 'from';
      report({
        statement,
        part: endPart(link, end),
        subject: linkSubject(link),
        message: messageOf(link, directionFault),
        fixes: () => turnFix(link),
      });
    }
  },
};

function messageOf(link: Link, fault: Exclude<DirectionFault, 'onto itself'>): string {
  const from = shown(link.from.text);
  const to = shown(link.to.text);
  switch (fault) {
    case 'from an input':
      return `${linkStart(link)} begins at ${from}, which is an input: nothing comes out of it. Turn the link round, or begin at an output.`;
    case 'to an output':
      return `${linkStart(link)} ends at ${to}, which is an output: nothing goes into it. End at an input.`;
    case 'both ways on a one-way port':
      return `${linkStart(link)} runs both ways between ${from} and ${to}, but pictures pass there one way only. Write \`->\` from the output to the input.`;
    case 'a network port with another kind of port':
      return `${linkStart(link)} joins ${from} and ${to}: one of them is a network port and the other is not. Plug network ports into network ports.`;
  }
}

/** Turning the link round mends it where it lies from an input to an output. */
function turnFix({ statement, from, to, bothWays }: Link): Fix[] {
  const turned = from.port?.role === 'input' && to.port?.role === 'output';
  if (!turned || bothWays || statement.fact.kind !== 'link') return [];
  return [
    {
      title: 'Turn the link round',
      edits: [
        { kind: 'replace', statement, part: 'from', text: to.text },
        { kind: 'replace', statement, part: 'to', text: from.text },
      ],
    },
  ];
}
