/** Delay: frames and milliseconds exactly, and how long a signal takes along a cable. */
import { formatFrames, formatLength, formatNumber, formatTime } from './display.ts';
import { PhysicsError, requireLength, requireWithin } from './physics-error.ts';
import { type FrameRate, formatFrameRate, framesToSeconds } from './rate.ts';
import { type Explained, makeWorking, type Source } from './working.ts';

/** Speed of light in a vacuum, exact by the definition of the metre. */
export const LIGHT_M_PER_S = 299_792_458;

/** How long each metre takes, where the cable does not say. */
export interface Propagation extends Source {
  readonly delay_s_per_m: number;
}

/** Group index of single-mode fibre. */
export const FIBRE_GROUP_INDEX = 1.468;
export const FIBRE_PROPAGATION: Propagation = {
  delay_s_per_m: FIBRE_GROUP_INDEX / LIGHT_M_PER_S,
  source: 'group index 1.468 over the speed of light',
  label: 'derived',
};
/** Foamed coax, velocity factor 0.83. */
export const COAX_PROPAGATION: Propagation = {
  delay_s_per_m: 4e-9,
  source: 'foamed coax, velocity factor 0.83',
  label: 'common practice',
};
export const PAIR_PROPAGATION: Propagation = {
  delay_s_per_m: pairDelay_s_per_m(100e6),
  source:
    'TIA-568 horizontal cable, 534 + 36 / sqrt(f) ns per 100 m at 100 MHz: values second-hand, the formula from memory',
  label: 'second-hand',
};

/**
 * Longest delay of twisted pair: (534 + 36 / sqrt(f)) ns per 100 m, f in MHz. The values at 1, 10 and 100 MHz are
 * second-hand (TIA-568), the formula from memory; it gives all three.
 *
 * @throws PhysicsError for a frequency outside 1 MHz to 2 GHz
 */
export function pairDelay_s_per_m(frequency_hz: number): number {
  const f = requireWithin('frequency', frequency_hz, 1e6, 2e9, 'Hz') / 1e6;
  return ((534 + 36 / Math.sqrt(f)) * 1e-9) / 100;
}

/** Time along a cable. @throws PhysicsError for a length that cannot be */
export function propagation_s(length_m: number, delay_s_per_m: number): number {
  return requireLength(length_m) * requireWithin('delay per metre', delay_s_per_m, 0, 1e-6, 's');
}

/** Time to take in a whole packet before sending it on: octets (with preamble and gap) x 8 / rate (derived). */
export function storeAndForward_s(wire_octets: number, rate_bits_per_second: number): number {
  requireWithin('packet', wire_octets, 1, 1e6, 'octets');
  return (wire_octets * 8) / requireWithin('link rate', rate_bits_per_second, 1, 1e15, 'b/s');
}

/** A part of a delay: frames of the signal that enters there, or a time. */
export type DelayPart =
  | { readonly name: string; readonly frames: number; readonly rate: FrameRate }
  | { readonly name: string; readonly time_s: number };

/** One part in seconds. @throws PhysicsError for a negative delay or NaN */
export function delayPart_s(part: DelayPart): number {
  if ('frames' in part) {
    return framesToSeconds(requireWithin('delay', part.frames, 0, 1e6, 'frames'), part.rate);
  }
  return requireWithin('delay', part.time_s, 0, 1e6, 's');
}

/** The sum of all parts. @throws PhysicsError for a negative delay or NaN */
export function totalDelay_s(parts: readonly DelayPart[]): number {
  let sum_s = 0;
  for (const part of parts) sum_s += delayPart_s(part);
  return sum_s;
}

/** A limit is met unless it is exceeded by more than this: rounding in plans is not a fault. */
export const DELAY_TOLERANCE_S = 0.0001;

/** True when the delay breaks the limit. */
export function exceedsDelay(delay_s: number, limit_s: number): boolean {
  return delay_s > limit_s + DELAY_TOLERANCE_S;
}

export const DELAY_SOURCE: Source = {
  source: 'sum of all passages, frames by their exact rate',
  label: 'derived',
};

/** `totalDelay_s` with its working: every part by name. @throws PhysicsError without any part */
export function explainDelay(parts: readonly DelayPart[]): Explained {
  if (parts.length === 0) throw new PhysicsError('delay', 'a delay without any part cannot be explained');
  const value = totalDelay_s(parts);
  const working = makeWorking({
    figure: 'delay',
    rule: 'the sum of every passage, each in frames of the signal that enters it or in time, and the time along the cables',
    formula: parts.map((part) => part.name).join(' + '),
    inputs: parts.map((part) => [part.name, describePart(part)]),
    // Names come from a plan, and two passages may share one.
    substituted: parts.map(describePart).join(' + '),
    result: formatTime(value),
    ...DELAY_SOURCE,
  });
  return { value, working };
}

function describePart(part: DelayPart): string {
  const time = formatTime(delayPart_s(part));
  return 'frames' in part ? `${time} (${formatFrames(part.frames)} at ${formatFrameRate(part.rate)})` : time;
}

/** `propagation_s` with its working. `cable` says where its delay per metre comes from. */
export function explainPropagation(length_m: number, delay_s_per_m: number, cable: Source): Explained {
  const value = propagation_s(length_m, delay_s_per_m);
  const working = makeWorking({
    figure: `time along ${formatLength(length_m)} of cable`,
    rule: 'length times delay per metre',
    formula: 'length x delay',
    inputs: [
      ['length', formatLength(length_m)],
      ['delay', `${formatNumber(delay_s_per_m * 1e9, 2)} ns/m`],
    ],
    result: formatTime(value),
    ...cable,
  });
  return { value, working };
}
