import { addressingFor } from './asked.ts';
import type { Check } from './check.ts';
import { changedPlan } from './example-plans.ts';
import { shown } from './words.ts';

const prefix = (text: string) => changedPlan('rate 50', `rate 50\n  ${text}`);

export const prefixWrong: Check = {
  name: 'prefix-wrong',
  severity: 'error',
  when: 'idle',
  summary: 'A prefix is not of the kind that it is used for.',
  explanation: `Groups outside of the multicast range cannot carry a flow at all; groups outside of the locally scoped range
may meet those of the house or of another network.

**How it is judged.** \`multicast\` lies in 224.0.0.0/4 (RFC 1112, published), and, as a warning, in 239.0.0.0/8, the
administratively scoped block (RFC 2365, published).

**What mends it.** A prefix such as 239.20.0.0/16.`,
  examples: [
    { wrong: prefix('multicast 10.20.0.0/16'), right: prefix('multicast 239.20.0.0/16') },
    { wrong: prefix('multicast 233.20.0.0/16'), right: prefix('multicast 239.20.0.0/16') },
  ],

  find(analysis, report) {
    const { statement } = analysis.settings;
    const { groupPrefixFault, subnetFault, multicastFault } = addressingFor(analysis);
    if (!statement) return;
    const { multicast = '', subnet = '' } = statement.fact;
    if (subnetFault) {
      report({
        statement,
        part: 'subnets/0',
        message: `${shown(subnet)} cannot be the subnet of the nodes. Write an address and how many bits of it are common, such as 10.20.0.0/24.`,
      });
    }
    if (multicastFault) {
      report({
        statement,
        part: 'multicasts/0',
        message: `${shown(multicast)} cannot be a prefix of groups. Write one such as 239.20.0.0/16.`,
      });
    }
    if (groupPrefixFault === undefined) return;
    const scoped = groupPrefixFault === 'not administratively scoped';
    report({
      statement,
      part: 'multicasts/0',
      severity: scoped ? 'warning' : 'error',
      message: scoped
        ? `${shown(multicast)} is not in 239.0.0.0/8, the block for local use, so its groups may meet those of others. Write one such as 239.20.0.0/16.`
        : `${shown(multicast)} is no multicast prefix: groups lie in 224.0.0.0/4. Write one such as 239.20.0.0/16.`,
    });
  },
};
