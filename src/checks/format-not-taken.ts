import type { Delivery, FormatFault } from '../analysis/model.ts';
import { formatFormat } from '../physics/raster.ts';
import type { Check } from './check.ts';
import { feedTroubles, targetPart } from './deliveries.ts';
import { changedPlan, smallPlan } from './example-plans.ts';
import { either, inSegments, shown } from './words.ts';

type NotTaken = Extract<FormatFault, { kind: 'not taken' }>;

export const formatNotTaken: Check = {
  name: 'format-not-taken',
  severity: 'error',
  summary: 'A picture arrives in a format that the destination does not take.',
  explanation: `The screen shows nothing, or "no signal", although every cable is right.

**How it is judged.** The format as it arrives (after scalers and rate converters on the way) is compared with those that
the destination \`takes\`: raster, scan and rate, and sampling and depth where the destination states them.

**What mends it.** Another format at the source, a scaler on the way, or the format added to what the destination takes,
if its data sheet says so.`,
  examples: [
    {
      wrong: changedPlan('takes 1080p50', 'takes 720p50'),
      right: changedPlan('takes 1080p50', 'takes 720p50, 1080p50'),
    },
    { wrong: changedPlan('takes 1080p50', 'takes 1080p25'), right: smallPlan() },
  ],

  find(analysis, report) {
    const look = ({ formatFaults }: Delivery) =>
      formatFaults.find((fault): fault is NotTaken => fault.kind === 'not taken');
    for (const { feed, trouble, segments } of feedTroubles(analysis, look)) {
      const { destination, format } = trouble;
      const { statement } = destination;
      const taken = statement.fact.formats.map(({ text }) => text);
      const last = taken.length - 1;
      report({
        statement: feed.statement,
        part: targetPart(feed),
        subject: feed.name,
        segment: segments[0]?.name ?? null,
        message: `${shown(feed.sourceName)} arrives at ${shown(destination.name)} as ${formatFormat(format)}${inSegments(segments)}, which takes ${either(taken)}. Send one of these, put a scaler between, or add the format if its data sheet says so.`,
        related: [
          {
            place: { statement, part: `formats/${last}` },
            message: 'What the destination takes stands here.',
          },
        ],
        fixes: () => {
          const text = `${taken[last] ?? ''}, ${shortText(formatFormat(format))}`;
          const edit = { kind: 'replace', statement, part: `formats/${last}`, text } as const;
          return [{ title: `Let ${shown(destination.name)} take it too`, edits: [edit] }];
        },
      });
    }
  },
};

/** Raster and rate; the rest a destination takes as it comes. */
function shortText(format: string): string {
  return format.split(' ')[0] ?? format;
}
