/**
 * Frame rates as exact ratios: 59.94 is short for 60000/1001, and a sum over an eight-hour show needs the ratio.
 */
import { greatestCommonDivisor, movePoint } from './decimal.ts';
import { refusal, requireWhole } from './physics-error.ts';

/** Frames (or fields) a second as a ratio in lowest terms. */
export interface FrameRate {
  readonly numerator: number;
  readonly denominator: number;
}

/** The slowest and fastest rate that is taken for a picture. */
export const SLOWEST_FRAMES_PER_SECOND = 1;
export const FASTEST_FRAMES_PER_SECOND = 1000;

/** As many decimals as a written rate may have. */
const MOST_DECIMALS = 9;

const ALLOWED = `${SLOWEST_FRAMES_PER_SECOND} to ${FASTEST_FRAMES_PER_SECOND} a second, for example 50, 59.94 or 60`;

/**
 * A rate from its ratio, reduced.
 *
 * @throws PhysicsError when a part is no whole number above 0, or the rate is below 1 or above 1000 a second.
 */
export function frameRate(numerator: number, denominator: number): FrameRate {
  requireWhole('frame rate numerator', numerator, 1, Number.MAX_SAFE_INTEGER);
  requireWhole('frame rate denominator', denominator, 1, Number.MAX_SAFE_INTEGER);
  const rate = numerator / denominator;
  if (rate < SLOWEST_FRAMES_PER_SECOND || rate > FASTEST_FRAMES_PER_SECOND) {
    throw refusal('frame rate', rate, ALLOWED);
  }
  const divisor = greatestCommonDivisor(numerator, denominator);
  return { numerator: numerator / divisor, denominator: denominator / divisor };
}

/**
 * A rate from the number that people write: 59.94, 29.97, 23.98, 23.976, 119.88 and 47.95 mean the whole number
 * above, times 1000/1001. That is recognised generally: a number of two or more decimals that is such a product,
 * rounded or cut off at its last digit. Any other decimal number means itself: 12.5 is 25/2.
 *
 * Source: SMPTE practice of the 1000/1001 rates, ratios as in ITU-R BT.709-6 and BT.2020 (second-hand); that the
 * short decimals mean these is common practice.
 *
 * @param written The number, as digits (`'59.94'`) or as a JavaScript number.
 * @throws PhysicsError when it is no plain decimal number, or is below 1 or above 1000.
 */
export function frameRateOf(written: string | number): FrameRate {
  const text = String(written);
  const value = Number(text);
  if (!/^\d{1,9}(\.\d{1,9})?$/.test(text)) throw refusal('frame rate', text, ALLOWED);
  if (value < SLOWEST_FRAMES_PER_SECOND || value > FASTEST_FRAMES_PER_SECOND) {
    throw refusal('frame rate', text, ALLOWED);
  }
  const decimals = text.includes('.') ? text.length - text.indexOf('.') - 1 : 0;
  const whole = Math.ceil(value);
  if (decimals >= 2 && value !== whole && standsForThousandOver1001(value, whole, decimals))
    return frameRate(whole * 1000, 1001);
  return frameRate(movePoint(value, decimals), 10 ** decimals);
}

function standsForThousandOver1001(value: number, whole: number, decimals: number): boolean {
  const slowed = movePoint((whole * 1000) / 1001, decimals);
  const digits = Math.round(movePoint(value, decimals));
  return digits === Math.round(slowed) || digits === Math.floor(slowed);
}

/** A rate as a plain number, for display and for comparison by size. */
export function framesPerSecond(rate: FrameRate): number {
  return rate.numerator / rate.denominator;
}

/** The time of one frame in seconds. */
export function frameTime_s(rate: FrameRate): number {
  return rate.denominator / rate.numerator;
}

/** A time given in frames, in seconds: 3 frames at 59.94 are 0.05005 s. */
export function framesToSeconds(frames: number, rate: FrameRate): number {
  return (frames * rate.denominator) / rate.numerator;
}

/** A time in seconds, in frames. */
export function secondsToFrames(time_s: number, rate: FrameRate): number {
  return (time_s * rate.numerator) / rate.denominator;
}

/** True when both are exactly the same rate; 59.94 and 60 are not. */
export function sameRate(a: FrameRate, b: FrameRate): boolean {
  return a.numerator === b.numerator && a.denominator === b.denominator;
}

/** A rate times a ratio: an interlaced picture's fields come at `scaleRate(rate, 2)`. */
export function scaleRate(rate: FrameRate, by: number, over = 1): FrameRate {
  return frameRate(rate.numerator * by, rate.denominator * over);
}

/** A rate as it is written: `59.94`, `23.98`, `60`, `12.5`. Reading it back gives the same ratio. */
export function formatFrameRate(rate: FrameRate): string {
  const value = framesPerSecond(rate);
  if (Number.isInteger(value)) return String(value);
  // Two decimals say nearly every 1000/1001 rate; one that they would round to a whole number needs more.
  for (let decimals = rate.denominator === 1001 ? 2 : 1; decimals < MOST_DECIMALS; decimals++) {
    const text = value.toFixed(decimals);
    if (sameRate(frameRateOf(text), rate)) return text;
  }
  return value.toFixed(MOST_DECIMALS);
}

/** A rate with its exact ratio for a working: `60000/1001` or `50`. */
export function formatRatio(rate: FrameRate): string {
  return rate.denominator === 1 ? String(rate.numerator) : `${rate.numerator}/${rate.denominator}`;
}
