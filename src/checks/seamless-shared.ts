import type { Check } from './check.ts';
import { feedTroubles, targetPart } from './deliveries.ts';
import { smallPlan } from './example-plans.ts';
import { inSegments, linkText, listedWords, shown } from './words.ts';

export const seamlessShared: Check = {
  name: 'seamless-shared',
  severity: 'error',
  summary: 'The two copies of a seamless feed go over the same link.',
  explanation: `Two copies of a picture (SMPTE ST 2022-7) protect it only where they go different ways: when a link is lost
that both take, both are lost, and the receiver has nothing to choose from.

**How it is judged.** The two routes of a \`seamless\` feed may share no network link. Where no second way exists at all,
the links that both take are named.

**What mends it.** A second network link on its own way, or a second network port at the box that is the bottleneck;
without it leave \`seamless\` out, and save the load of the second copy.`,
  examples: [
    {
      wrong: smallPlan().replace('feed camera -> screen', 'feed camera -> screen seamless'),
      right: smallPlan('link trunk_b box_s.net2 <-> box_d.net2 over cat6a').replace(
        'feed camera -> screen',
        'feed camera -> screen seamless',
      ),
    },
  ],

  find(analysis, report) {
    const troubles = feedTroubles(analysis, ({ sharedLinks }) =>
      sharedLinks.length > 0 ? sharedLinks : undefined,
    );
    for (const { feed, trouble, segments } of troubles) {
      report({
        statement: feed.statement,
        part: feed.statement.fact.targets.length > 1 ? targetPart(feed) : 'seamless/0',
        subject: feed.name,
        segment: segments[0]?.name ?? null,
        message: `Both copies from ${shown(feed.sourceName)} to ${shown(feed.targetName)} go over ${listedWords(trouble.map(linkText))}${inSegments(segments)}: losing it loses both. Lay a second way that shares no network link, or leave \`seamless\` out.`,
        related: trouble.map((link) => ({
          place: { statement: link.statement },
          message: 'Both copies go here.',
        })),
      });
    }
  },
};
