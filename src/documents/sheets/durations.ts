import { formatFrames, formatTime } from '../../physics/display.ts';
import type { Duration } from '../../plan/facts.ts';

/** A length of time as it was written: in frames or in seconds. */
export function durationText(duration: Duration): string {
  return 'frames' in duration ? formatFrames(duration.frames) : formatTime(duration.seconds);
}
