import type { Delivery, Feed } from '../analysis/model.ts';
import type { Statement } from '../plan/plan.ts';
import type { Check } from './check.ts';
import { feedTroubles, targetPart } from './deliveries.ts';
import { smallPlan } from './example-plans.ts';
import type { Fix } from './finding.ts';
import { inSegments, shown } from './words.ts';

export const twoPictures: Check = {
  name: 'two-pictures',
  severity: 'error',
  summary: 'Two pictures are wanted at the same place at the same time.',
  explanation: `An output, an input or a screen shows one picture. Which of two it would be is decided by chance, or by
whoever pulled a cable last.

**How it is judged.** In the plan without segments and in every segment: one picture at an output, at an input that is
no network port, and at a destination. Only \`instead of\` takes the place of another feed. It is told on both feeds.

**What mends it.** An output of its own, \`instead of OTHER in SEGMENT\`, \`via\` another output, or deleting one of the
feeds.`,
  examples: [
    {
      wrong: smallPlan(
        'source slides at stage sends 1080p50 as sdi_3g into box_s.in2 over rg6 5 m',
        'feed slides -> screen',
      ),
      right: smallPlan(
        'segment talk',
        'source slides at stage sends 1080p50 as sdi_3g into box_s.in2 over rg6 5 m',
        'feed slides -> screen instead of camera in talk',
      ),
      times: 2,
    },
  ],

  find(analysis, report) {
    const first = new Set<Feed>();
    // A feed that was to take the place of another, and does not find it, is told as that.
    const missed = new Set<Statement>(analysis.unmatched.map(({ statement }) => statement));
    const troubles = feedTroubles(analysis, ({ feed, twoPictures: trouble }) =>
      missed.has(feed.statement) ? undefined : trouble,
    );
    for (const { feed, trouble, segments } of troubles) {
      const { port, other } = trouble;
      const where = `${shown(port.text)}${inSegments(segments)}`;
      const mend =
        'Give one of them an output of its own, or write `instead of` where one takes the place of the other.';
      const say = (one: Feed, against: Feed, fixes: () => readonly Fix[]) =>
        report({
          statement: one.statement,
          part: targetPart(one),
          subject: one.name,
          segment: segments[0]?.name ?? null,
          message: `${where} would show two pictures: ${shown(one.sourceName)} and ${shown(against.sourceName)}. ${mend}`,
          related: [
            {
              place: { statement: against.statement, part: targetPart(against) },
              message: `${shown(against.sourceName)} goes there too.`,
            },
          ],
          fixes,
        });
      // Three feeds to one screen are three findings: the first is told once.
      if (!first.has(other.feed)) say(other.feed, feed, () => []);
      first.add(other.feed);
      say(feed, other.feed, () => insteadFix(feed, other));
    }
  },
};

/** In a segment of its own, this feed can take the place of one that is always there. */
function insteadFix(feed: Feed, { feed: other }: Delivery): readonly Fix[] {
  if (feed.always || feed.insteadOf || !other.always || feed.targetName !== other.targetName) return [];
  if (feed.statement.fact.targets.length > 1) return [];
  return [
    {
      title: `Let it take the place of ${shown(other.sourceName)}`,
      edits: [{ kind: 'append', statement: feed.statement, text: `instead of ${other.sourceName}` }],
    },
  ];
}
