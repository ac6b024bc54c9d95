import type { Check } from './check.ts';
import { smallPlan } from './example-plans.ts';
import { nodeText } from './words.ts';

export const nodeUnused: Check = {
  name: 'node-unused',
  severity: 'warning',
  summary: 'Nothing is plugged into a node.',
  explanation: `The box is carried and powered for nothing, or its cables were forgotten.

**How it is judged.** No link, source or destination is plugged into any of its ports.

**What mends it.** The cables that were forgotten, or taking the node out. A spare is accepted with the reason, or left
out and brought in a case as a loose thing.`,
  examples: [{ wrong: smallPlan('node box_x : edge_box at desk'), right: smallPlan() }],

  find({ unusedNodes, names }, report) {
    // What is plugged into a port that the node does not have is meant for another of its ports.
    const misused = new Set(names.unknownPorts.map(({ node }) => node));
    for (const node of unusedNodes) {
      if (misused.has(node)) continue;
      report({
        statement: node.statement,
        part: 'name',
        subject: node.name,
        message: `Nothing is plugged into ${nodeText(node)}. Write its cables, take it out, or accept it as a spare.`,
      });
    }
  },
};
