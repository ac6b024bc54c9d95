import { firmwareFor } from './asked.ts';
import type { Check } from './check.ts';
import { smallPlan } from './example-plans.ts';
import { listedWords, shown } from './words.ts';

const boxes = (one: string, other: string) =>
  smallPlan()
    .replace('box_s : edge_box at stage', `box_s : edge_box at stage {\n  firmware "${one}"\n}`)
    .replace('box_d : edge_box at desk', `box_d : edge_box at desk {\n  firmware "${other}"\n}`);

export const firmwareMixed: Check = {
  name: 'firmware-mixed',
  severity: 'warning',
  when: 'idle',
  summary: 'Boxes of one kind have different versions of their firmware.',
  explanation: `Two boxes with different versions often do not find each other, or do and lose pictures. Updating takes longer
than anybody has on the day.

**How it is judged.** The versions that were found in the nodes of one kit: \`firmware\` on a node. The version that the
crew wants stands on the kit; the preparation sheet lists what to update.

**What mends it.** The same version in all, before the show is packed.`,
  examples: [{ wrong: boxes('4.0', '4.1'), right: boxes('4.1', '4.1') }],

  find(analysis, report) {
    for (const { kit, nodes } of firmwareFor(analysis).mixed) {
      const known = nodes.filter(({ found }) => found !== undefined);
      const [first, ...others] = known;
      if (!first) continue;
      const versions = known.map(({ node, found }) => `${shown(node.name)} ${shown(found ?? '')}`);
      report({
        statement: first.node.statement,
        part: 'firmwares/0',
        subject: kit.name,
        message: `Nodes of the kit ${shown(kit.name)} have different firmware: ${listedWords(versions)}. Bring all to the same version before the show.`,
        related: others.slice(0, 20).map(({ node }) => ({
          place: { statement: node.statement, part: 'firmwares/0' },
          message: 'This one too.',
        })),
      });
    }
  },
};
