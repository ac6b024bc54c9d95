import type { DelayPart, Delivery } from '../../analysis/model.ts';
import { DELAY_SOURCE } from '../../physics/delay.ts';
import { formatFrames, formatTime } from '../../physics/display.ts';
import { makeWorking, type Working } from '../../physics/working.ts';

/** How the delay of a picture to where it is watched was got; none where it is not known. */
export function delayWorkings({ feed, segment, delay }: Delivery): Working[] {
  const { delay_s, computed_s, from, parts, limit_s } = delay;
  if (delay_s === undefined) return [];
  const where = segment === undefined ? '' : ` in ${segment.name}`;
  const figure = `delay of ${feed.name}${where}`;
  const limit = limit_s === undefined ? '' : `; at most ${formatTime(limit_s, delay_s)}`;
  const computed =
    computed_s === undefined
      ? []
      : [
          makeWorking({
            figure,
            rule: `the sum of every passage, from where the picture begins to the screen${limit}`,
            formula: parts.map(nameOf).join(' + '),
            inputs: parts.map((part) => [nameOf(part), timeOf(part)]),
            // Names come from a plan, and two passages may share one.
            substituted: parts.map(timeOf).join(' + '),
            result: formatTime(computed_s, limit_s),
            ...DELAY_SOURCE,
          }),
        ];
  if (from === 'computed') return computed;
  return [
    makeWorking({
      figure,
      rule: `as measured on site, in place of what is computed${limit}`,
      formula: '',
      inputs: [],
      result: formatTime(delay_s, limit_s),
      source: 'the plan: measured',
      label: 'derived',
      steps: computed,
    }),
  ];
}

function nameOf({ what, name }: DelayPart): string {
  return what === 'made of' ? `${name} as it arrives` : name;
}

function timeOf({ time_s, frames }: DelayPart): string {
  return frames === undefined ? formatTime(time_s) : `${formatFrames(frames)} (${formatTime(time_s)})`;
}
