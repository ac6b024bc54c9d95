import { addressingFor } from './asked.ts';
import type { Check } from './check.ts';
import { changedPlan } from './example-plans.ts';
import { counted, shown } from './words.ts';

export const prefixTooSmall: Check = {
  name: 'prefix-too-small',
  severity: 'error',
  when: 'idle',
  summary: 'A prefix has fewer addresses than the plan needs.',
  explanation: `Some nodes get no address, or some pictures no group: they are not on the sheets, and on the day somebody
types in one that is taken.

**How it is judged.** Nodes with a network port against the addresses of \`subnet\` (its first and last are not for
nodes; RFC 791 practice), sources that ride on the network against the groups of \`multicast\` that switches do not
flood and that share no hardware address (RFC 1112, published).

**What mends it.** A larger prefix: a smaller number behind the slash.`,
  examples: [
    {
      wrong: changedPlan('rate 50', 'rate 50\n  subnet 10.20.0.0/31'),
      right: changedPlan('rate 50', 'rate 50\n  subnet 10.20.0.0/24'),
    },
  ],

  find(analysis, report) {
    const { statement } = analysis.settings;
    if (!statement) return;
    const { nodes, groups, nodePlaces, groupPlaces } = addressingFor(analysis);
    const { subnet, multicast } = statement.fact;
    const nodesWithout = nodes.filter(({ address }) => address === undefined).length;
    const groupsWithout = groups.filter(({ group }) => group === undefined).length;
    if (nodesWithout > 0 && subnet !== undefined) {
      report({
        statement,
        part: 'subnets/0',
        message: `${shown(subnet)} has room for ${counted(nodePlaces ?? 0, 'node')}, and ${counted(nodesWithout, 'node gets', 'nodes get')} no address. Use a larger prefix: a smaller number behind the slash.`,
      });
    }
    if (groupsWithout > 0 && multicast !== undefined) {
      report({
        statement,
        part: 'multicasts/0',
        message: `${shown(multicast)} has ${counted(groupPlaces ?? 0, 'group')} that can be used, and ${counted(groupsWithout, 'source gets', 'sources get')} none. Use a larger prefix: a smaller number behind the slash.`,
      });
    }
  },
};
