import type { Delay, Feed } from '../analysis/model.ts';
import { formatFrames, formatTime } from '../physics/display.ts';
import { framesPerSecond } from '../physics/rate.ts';

/** Less than this is no delay to speak of in frames. */
const LEAST_FRAMES = 0.01;

/** `91.8 ms, 5.5 frames`, frames of the source; undefined where the delay is not known. */
export function delayText({ delay_s, limit_s }: Delay, { source }: Feed): string | undefined {
  if (delay_s === undefined) return undefined;
  const time = formatTime(delay_s, limit_s);
  const format = source?.format;
  if (!format || !('rate' in format)) return time;
  const frames = delay_s * framesPerSecond(format.rate);
  return frames < LEAST_FRAMES ? time : `${time}, ${formatFrames(frames)}`;
}
