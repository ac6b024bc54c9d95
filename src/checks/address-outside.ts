import { addressingFor } from './asked.ts';
import type { Check } from './check.ts';
import { changedPlan } from './example-plans.ts';
import { nodeText, shown } from './words.ts';

const addressed = (address: string) =>
  changedPlan('rate 50', 'rate 50\n  subnet 10.20.0.0/24').replace(
    'box_s : edge_box at stage',
    `box_s : edge_box at stage {\n  address ${address}\n}`,
  );

export const addressOutside: Check = {
  name: 'address-outside',
  severity: 'warning',
  when: 'idle',
  summary: 'The address of a node is not in the prefix of the plan.',
  explanation: `A box in another subnet is not seen by the others, although its light is green.

**How it is judged.** An \`address\` on a node against the plan's \`subnet\`.

**What mends it.** An address in the prefix, or another prefix. A box that is reached through a router is accepted with
that reason.`,
  examples: [{ wrong: addressed('10.21.0.9'), right: addressed('10.20.0.9') }],

  find(analysis, report) {
    for (const { node, address, outside } of addressingFor(analysis).nodes) {
      if (!outside || address === undefined) continue;
      const prefix = analysis.settings.statement?.fact.subnet ?? '';
      report({
        statement: node.statement,
        part: 'addresses/0',
        subject: node.name,
        message: `${nodeText(node)} has the address ${shown(address)}, which is not in ${shown(prefix)}, the subnet of the plan. Give it one that is, or leave it out: then the plan assigns one.`,
      });
    }
  },
};
