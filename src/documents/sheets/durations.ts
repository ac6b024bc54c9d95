import { formatFrames, formatTime } from '../../physics/display.ts';
import type { Duration } from '../../plan/facts.ts';

/** A length of time as it was written: in frames or in seconds. */
export function durationText(duration: Duration): string {
  return 'frames' in duration ? formatFrames(duration.frames) : formatTime(duration.seconds);
}

/** What cable alone takes. Nobody sees or hears less than this. */
const LEAST_SEEN_S = 0.00005;

/** A delay for people who stand before the screen: `33.4 ms`; what nobody can see is `0 ms`. */
export function delayTime(delay_s: number, beside_s?: number): string {
  return formatTime(delay_s < LEAST_SEEN_S ? 0 : delay_s, beside_s);
}
