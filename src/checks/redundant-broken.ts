import { redundanciesOf } from '../analysis/failures.ts';
import type { Break, Feed, Redundancy, Segment } from '../analysis/model.ts';
import type { Check } from './check.ts';
import { targetPart } from './deliveries.ts';
import { smallPlan } from './example-plans.ts';
import type { Severity } from './finding.ts';
import { inSegments, linkText, listedWords, nodeText, shown } from './words.ts';

export const redundantBroken: Check = {
  name: 'redundant-broken',
  severity: 'error',
  when: 'idle',
  summary: 'A redundant feed goes dark when one single thing is lost.',
  explanation: `\`redundant\` says that this picture must come back whatever one cable does. Here there is a cable, or a
run with everything in it, whose loss leaves it dark, or leads it over a link that cannot carry it as well.

**How it is judged.** Each network link on its way is taken out by itself, and all network links of each run together.
Then the picture must find another way, or one over a standby that stands by for what is lost, fits its ports and is
short enough ("after re-plugging"); and no link on that way may be filled beyond its rate. A box that only forwards is
taken out too; there no standby helps, and what breaks is a warning. The boxes at either end, where the picture goes onto
the network and comes off it, are not asked: no second cable mends them. \`feedplot show failures\` lists every loss.

**What mends it.** A second link by another way (\`by PLACE\`), with \`standby for\` where somebody re-plugs it or without
where it is plugged all the time; against a switch a second one; a faster link where the second way is too full. Or leave
\`redundant\` out and have the fault card at hand.`,
  examples: [
    {
      wrong: smallPlan().replace('feed camera -> screen', 'feed camera -> screen redundant'),
      right: smallPlan(
        'place gallery',
        'run stage <-> gallery 30 m',
        'run gallery <-> desk 30 m',
        'link trunk_b box_s.net2 <-> box_d.net2 over cat6a by gallery standby for trunk',
      ).replace('feed camera -> screen', 'feed camera -> screen redundant'),
    },
  ],

  find(analysis, report) {
    for (const { feed, breaks, severity, segments } of brokenFeeds(redundanciesOf(analysis))) {
      report({
        statement: feed.statement,
        part: feed.statement.fact.targets.length > 1 ? targetPart(feed) : 'redundant/0',
        severity,
        subject: feed.name,
        segment: segments[0]?.name ?? null,
        message: `${shown(feed.sourceName)} to ${shown(feed.targetName)} is to survive any single loss${inSegments(segments)}, but ${listedWords(breaks.map(breakText))}. ${mendingOf(breaks)}`,
        related: breaks.map(({ lost }) => ({
          place: { statement: lost.statement },
          message: 'Its loss breaks the feed.',
        })),
      });
    }
  },
};

interface BrokenFeed {
  readonly feed: Feed;
  readonly severity: Severity;
  readonly breaks: readonly Break[];
  /** Empty when it holds in the plan without segments. */
  readonly segments: Segment[];
}

/** What breaks a feed in several segments alike is told once. */
function brokenFeeds(redundancies: readonly Redundancy[]): readonly BrokenFeed[] {
  const broken = new Map<string, BrokenFeed>();
  const tell = (feed: Feed, severity: Severity, breaks: readonly Break[], segment: Segment | undefined) => {
    if (breaks.length === 0) return;
    const key = [feed.index, severity, ...breaks.map(breakText)].join(' ');
    const known = broken.get(key);
    if (!known) broken.set(key, { feed, severity, breaks, segments: segment ? [segment] : [] });
    else if (segment) known.segments.push(segment);
  };
  for (const { delivery, segment, brokenBy, weakenedBy } of redundancies) {
    tell(delivery.feed, 'error', brokenBy, segment);
    tell(delivery.feed, 'warning', weakenedBy, segment);
  }
  return [...broken.values()];
}

/** `losing trunk leaves it dark`, `losing the run a <-> b overfills spare`. */
function breakText({ lost, overloaded }: Break): string {
  const then =
    overloaded.length === 0 ? 'leaves it dark' : `overfills ${listedWords(overloaded.map(linkText))}`;
  return `losing ${lostText(lost)} ${then}`;
}

function lostText(lost: Break['lost']): string {
  if (lost.kind === 'run') return `the run ${shown(lost.name)}`;
  return lost.kind === 'node' ? nodeText(lost) : linkText(lost);
}

function mendingOf(breaks: readonly Break[]): string {
  if (breaks.every(({ overloaded }) => overloaded.length > 0)) {
    return 'Use a faster link there, or take a picture off it.';
  }
  if (breaks.every(({ kind }) => kind === 'node')) {
    return 'Lead a second way around it, through another box.';
  }
  return 'Lay a second link by another way, with `standby for` where somebody re-plugs it.';
}
