import type { Check } from './check.ts';
import { feedTroubles } from './deliveries.ts';
import { changedPlan } from './example-plans.ts';
import { inSegments, shown } from './words.ts';

export const viaMissed: Check = {
  name: 'via-missed',
  severity: 'error',
  summary: 'A feed is pinned to a port that its way cannot meet.',
  explanation: `The picture is to pass through this port, but no way from the source to the destination does, at least not
in the order that is written. The feed has no route.

**How it is judged.** The ports behind \`via\` are met in this order; others may lie between. The first that cannot be met
is told.

**What mends it.** Another port or order, or no \`via\`: then the shortest way is taken.`,
  examples: [
    {
      wrong: changedPlan('feed camera -> screen', 'feed camera -> screen via box_d.net2'),
      right: changedPlan('feed camera -> screen', 'feed camera -> screen via box_d.net1'),
    },
  ],

  find(analysis, report) {
    const troubles = feedTroubles(analysis, ({ noRoute }) =>
      noRoute?.kind === 'via cannot be met' ? noRoute : undefined,
    );
    for (const { feed, trouble, segments } of troubles) {
      const index = trouble.via ? feed.via.indexOf(trouble.via) : -1;
      const port = trouble.via ? shown(trouble.via.text) : 'the ports behind `via`';
      const after = index > 0 ? ` after ${shown(feed.via[index - 1]!.text)}` : '';
      report({
        statement: feed.statement,
        part: `via/${Math.max(0, index)}`,
        subject: feed.name,
        segment: segments[0]?.name ?? null,
        message: `No way from ${shown(feed.sourceName)} to ${shown(feed.targetName)}${inSegments(segments)} passes ${port}${after}. Pin it to a port on its way, change the order, or leave \`via\` out.`,
      });
    }
  },
};
