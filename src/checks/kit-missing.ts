import type { Check } from './check.ts';
import { changedPlan, smallPlan } from './example-plans.ts';
import { nodeText } from './words.ts';

export const kitMissing: Check = {
  name: 'kit-missing',
  severity: 'error',
  summary: 'A node does not say what kit it is.',
  explanation: `Without a kit nothing is known of the node: not its sockets, not whether it passes a picture on, not
what it draws or weighs. Nothing that is plugged into it can be worked out.

**How it is judged.** Every node names its kit behind a colon.

**What mends it.** \`node … : kit at place\`, with a kit of this plan or of a file that it imports.`,
  examples: [
    { wrong: changedPlan('node box_d : edge_box at desk', 'node box_d at desk'), right: smallPlan() },
  ],

  find({ nodes, kits }, report) {
    for (const node of nodes.values()) {
      const { statement } = node;
      if (statement.fact.kit !== undefined) continue;
      // Its name as the reader of the plan would write it, when only one kit has all the sockets that are used.
      const fitting = [...kits.values()].filter((kit) =>
        node.loosePorts.every(({ name }) => kit.portsByName.has(name)),
      );
      const [only] = fitting.length === 1 ? fitting : [];
      report({
        statement,
        part: 'name',
        message: `${nodeText(node)} has no kit, so its ports are not known and nothing passes through it. Say what it is: \`: ${only?.name ?? 'KIT'}\` behind its name.`,
        fixes: only
          ? [
              {
                title: `It is ${only.name}`,
                edits: [{ kind: 'append', statement, text: `: ${only.name}` }],
              },
            ]
          : [],
      });
    }
  },
};
