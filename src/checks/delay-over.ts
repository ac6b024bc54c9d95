import { FormatTable } from '../analysis/formats.ts';
import type { Delay, DelayPart, Delivery, Feed } from '../analysis/model.ts';
import { type Clock, delayPartsOf } from '../analysis/path-delay.ts';
import { formatFrames, formatTime } from '../physics/display.ts';
import type { Check } from './check.ts';
import { feedTroubles, targetPart } from './deliveries.ts';
import { changedPlan, smallPlan } from './example-plans.ts';
import type { Finding } from './finding.ts';
import { inSegments, listedWords, shown } from './words.ts';

export const delayOver: Check = {
  name: 'delay-over',
  severity: 'error',
  summary: 'A picture arrives later than it may.',
  explanation: `A speaker who sees himself too late stumbles, a player who looks at the monitor misses, and lips no longer
match the sound in the hall.

**How it is judged.** The delays of everything on the way are added: from where the picture begins (through the slowest
that it is made \`of\`), every box and screen in frames of the picture that enters it, and the cables (sum of all
passages; derived). A measured delay replaces the sum. A limit is met unless exceeded by more than 0.1 ms. \`within\`
in frames counts frames of the source.

**What mends it.** A way through fewer boxes, a quicker box, a source nearer to the destination, or a limit that you
can live with.`,
  examples: [
    {
      wrong: changedPlan('box_d.out1 over rg6 5 m', 'box_d.out1 over rg6 5 m within 1 frame'),
      right: changedPlan('box_d.out1 over rg6 5 m', 'box_d.out1 over rg6 5 m within 3 frames'),
    },
    { wrong: changedPlan('-> screen', '-> screen within 30 ms'), right: smallPlan() },
  ],

  find(analysis, report) {
    const { settings } = analysis;
    const formats = new FormatTable(settings.tagged, settings.blanking);
    const clock: Clock = { formats, houseRate: settings.rate };
    const troubles = feedTroubles(analysis, ({ delay }) => (delay.over ? delay : undefined));
    for (const { feed, delivery, trouble, segments } of troubles) {
      const { limitOn } = trouble;
      report({
        statement: feed.statement,
        part: limitOn === 'feed' ? 'limits/0' : targetPart(feed),
        subject: feed.name,
        segment: segments[0]?.name ?? null,
        message: `${shown(feed.sourceName)} gets to ${shown(feed.targetName)}${inSegments(segments)} after ${takenText(trouble)}; ${allowedText(trouble)} are allowed. ${wayText(delivery, clock)} Go through fewer boxes, use quicker ones, or allow more.`,
        related: relatedLimit(feed, limitOn),
      });
    }
  },
};

/** `40 ms`, and in frames where the limit is stated so. */
function takenText({ delay_s = 0, limit_s = 0, limit }: Delay): string {
  const time = formatTime(delay_s, limit_s);
  if (!limit || !('frames' in limit) || limit.frames === 0 || limit_s === 0) return time;
  return `${time}, ${formatFrames((delay_s / limit_s) * limit.frames, limit.frames)}`;
}

function allowedText({ delay_s = 0, limit_s = 0, limit }: Delay): string {
  const time = formatTime(limit_s, delay_s);
  return limit && 'frames' in limit ? `${time}, ${formatFrames(limit.frames)},` : time;
}

/** What takes the time, the slowest first; cables take none worth telling. */
function wayText(delivery: Delivery, clock: Clock): string {
  if (delivery.delay.from === 'measured') return 'That was measured.';
  const slow = delayPartsOf(delivery, clock)
    .filter(({ what, time_s }) => what !== 'cable' && time_s > 0)
    .sort((a, b) => b.time_s - a.time_s);
  const parts = slow.slice(0, 4).map(partText);
  return parts.length === 0 ? '' : `Most of it: ${listedWords(parts)}.`;
}

function partText({ what, name, time_s }: DelayPart): string {
  return `${what === 'made of' ? 'waiting for ' : ''}${shown(name)} ${formatTime(time_s)}`;
}

function relatedLimit({ target }: Feed, limitOn: 'feed' | 'destination' | undefined): Finding['related'] {
  if (limitOn !== 'destination' || !target || !('takes' in target)) return [];
  return [{ place: { statement: target.statement, part: 'limits/0' }, message: 'The limit stands here.' }];
}
