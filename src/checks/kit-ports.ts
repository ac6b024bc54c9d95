import type { KitFault } from '../analysis/model.ts';
import type { Check } from './check.ts';
import { changedPlan, smallPlan } from './example-plans.ts';
import { isOfLibrary, quoted, shown } from './words.ts';

/** What is told here; the other faults of ports are seen in the statement alone and told with its numbers. */
const messages: Partial<Record<KitFault['kind'], (port: string) => string>> = {
  'port declared twice': (port) => `The port ${port} is declared twice; delete one or give it another name.`,
  'follows nothing': (port) =>
    `${port} is no port of this kit, so nothing can follow it. Follow one of its inputs.`,
  'follows an output': (port) =>
    `${port} is no input: an output can only follow an input. Follow the input that it copies.`,
  'follow counts differ': (port) =>
    `The outputs cannot follow ${port} one by one: there are not as many of one as of the other. Give both the same count, or follow a single input.`,
};

export const kitPorts: Check = {
  name: 'kit-ports',
  severity: 'error',
  summary: 'The ports that a kit declares do not fit together.',
  explanation: `A kit says which sockets a box has and how a picture gets from one to another. What contradicts itself
is left out, so routes through this kit may be missing or others than you think.

**How it is judged.** Every port has its own name; \`follow\` names inputs of the same kit, one for each output or one
for all.

**What mends it.** The ports as they are on the box.`,
  examples: [
    {
      wrong: changedPlan('network net', 'outputs loop[1..2] as sdi_3g follow out[1..2]\n  network net'),
      right: changedPlan('network net', 'outputs loop[1..2] as sdi_3g follow in[1..2]\n  network net'),
    },
    { wrong: changedPlan('network net', 'inputs in1 as hdmi_1_4\n  network net'), right: smallPlan() },
  ],

  find(analysis, report) {
    for (const { name, statement, faults } of analysis.kits.values()) {
      if (isOfLibrary(analysis, statement)) continue;
      // One slip in a range is one finding, however many ports the range stands for.
      const told = new Set<string>();
      for (const fault of faults) {
        const message = messages[fault.kind]?.(quoted(fault.name));
        if (message === undefined || told.has(`${fault.kind} ${fault.part}`)) continue;
        told.add(`${fault.kind} ${fault.part}`);
        report({ statement, part: fault.part, message: `${shown(name)}: ${message}` });
      }
    }
  },
};
