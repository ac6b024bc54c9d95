import type { Node } from '../analysis/model.ts';
import { addressingFor } from './asked.ts';
import type { Check } from './check.ts';
import { smallPlan } from './example-plans.ts';
import { listed, nodeText, shown } from './words.ts';

const addresses = (one: string, other: string) =>
  smallPlan()
    .replace('box_s : edge_box at stage', `box_s : edge_box at stage {\n  address ${one}\n}`)
    .replace('box_d : edge_box at desk', `box_d : edge_box at desk {\n  address ${other}\n}`);

export const addressTaken: Check = {
  name: 'address-taken',
  severity: 'error',
  when: 'idle',
  summary: 'Two nodes have the same address.',
  explanation: `Two boxes with one address throw each other off the network, now the one and now the other: the hardest fault
to find when everybody waits.

**How it is judged.** Addresses that are written on nodes. Those that the plan assigns by itself never collide.

**What mends it.** Another address for one of them, or none: then the plan assigns one.`,
  examples: [{ wrong: addresses('10.20.0.9', '10.20.0.9'), right: addresses('10.20.0.9', '10.20.0.10') }],

  find(analysis, report) {
    const told = new Set<Node>();
    for (const { node, address, sharedWith } of addressingFor(analysis).nodes) {
      if (sharedWith.length === 0 || address === undefined || told.has(node)) continue;
      for (const other of sharedWith) told.add(other);
      const [first] = sharedWith;
      report({
        statement: first!.statement,
        part: 'addresses/0',
        subject: first!.name,
        message: `${shown(address)} is the address of ${nodeText(node)} already, and of ${listed(sharedWith.map(({ name }) => name))} too. Give each its own, or leave one out: then the plan assigns it.`,
        related: [{ place: { statement: node.statement, part: 'addresses/0' }, message: 'The first one.' }],
      });
    }
  },
};
