import type { Check } from './check.ts';
import { targetPart } from './deliveries.ts';
import { smallPlan } from './example-plans.ts';
import { shown } from './words.ts';

export const feedRepeated: Check = {
  name: 'feed-repeated',
  severity: 'warning',
  summary: 'A feed says what another feed says already.',
  explanation: `The same source goes to the same place twice at the same time. The picture counts once; but a limit, a pin
or \`redundant\` on the second feed does not count at all.

**How it is judged.** Another feed, written before, sends the same source to the same destination whenever this one does.

**What mends it.** Deleting one of the two, with its limits put on the other.`,
  examples: [{ wrong: smallPlan('feed camera -> screen'), right: smallPlan() }],

  find({ feeds }, report) {
    for (const feed of feeds) {
      const { repeats, statement } = feed;
      if (!repeats) continue;
      report({
        statement,
        part: targetPart(feed),
        subject: feed.name,
        message: `${shown(feed.sourceName)} goes to ${shown(feed.targetName)} already. This feed does not count: delete it, and put its limits on the other.`,
        related: [
          {
            place: { statement: repeats.statement, part: targetPart(repeats) },
            message: 'The first one, which counts.',
          },
        ],
        fixes:
          statement.fact.targets.length === 1
            ? [{ title: 'Delete this feed', edits: [{ kind: 'delete', statement }] }]
            : [],
      });
    }
  },
};
