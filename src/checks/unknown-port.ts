import type { Kit, UnknownPort } from '../analysis/model.ts';
import type { PortNamesFact } from '../plan/facts.ts';
import { nearest } from '../plan/spelling.ts';
import type { Check } from './check.ts';
import { changedPlan, smallPlan } from './example-plans.ts';
import { listed, nodeText, quoted, shown } from './words.ts';

export const unknownPort: Check = {
  name: 'unknown-port',
  severity: 'error',
  summary: 'A port is used that the node does not have.',
  explanation: `There is no such socket on the box. On the day somebody stands in front of it with the plug in their
hand; in the plan the cable ends in the air and carries nothing.

**How it is judged.** By the ports that the node's kit declares; \`in[1..4]\` declares \`in1\` to \`in4\`.

**What mends it.** A port that the kit has, or the missing port in the kit.`,
  examples: [{ wrong: changedPlan('box_d.out1', 'box_d.out9'), right: smallPlan() }],

  find({ names }, report) {
    for (const unknown of names.unknownPorts) {
      const { node, name, uses } = unknown;
      const [first, ...others] = uses;
      if (!first || !node.kit) continue;
      const near = nearest(name, node.kit.portsByName.keys());
      report({
        ...first,
        message: messageOf(unknown, node.kit, near),
        related: others.map((place) => ({ place, message: 'Used here too.' })),
        fixes:
          near === undefined
            ? []
            : [
                {
                  title: `Write ${quoted(near)}`,
                  edits: uses.map(({ statement, part }) => ({
                    kind: 'replace',
                    statement,
                    part,
                    text: near,
                  })),
                },
              ],
      });
    }
  },
};

function messageOf({ node, name }: UnknownPort, kit: Kit, near: string | undefined): string {
  const { groups, joins } = kit.statement.fact;
  const ports = [
    ...groups.flatMap((group) => group.ports),
    ...joins.flatMap(({ front, rear }) => [front, rear]),
  ].map(rangeText);
  const has = ports.length === 0 ? 'has no ports' : `has ${listed(ports, 8)}`;
  const guess = near === undefined ? '' : ` Did you mean ${quoted(near)}?`;
  return `${nodeText(node)} has no port ${quoted(name)}: its kit ${shown(kit.name)} ${has}.${guess} Use one of these, or add the port to the kit.`;
}

function rangeText({ name, low, high }: PortNamesFact): string {
  return low === undefined ? name : `${name}[${low}..${high}]`;
}
