/**
 * Figures as people read them, rounded the same everywhere. Rates and powers have four significant digits, everything
 * else a fixed number of decimals, and trailing zeros are dropped: `2.664 Gb/s`, `106.6 %`, `91.8 ms`, `3.45 dB`.
 *
 * Two figures that are compared must not look equal when they are not: each formatter takes the figure that its
 * own stands `beside` (a limit, a former value), and then shows as many digits as tell the two apart.
 */
import { exceeds, movePoint, withoutNoise } from './decimal.ts';

/** Which unit lengths are shown in. Everything else is metric. */
export type LengthUnits = 'metric' | 'feet';

const METRES_PER_FOOT = 0.3048;
const MOST_DIGITS = 12;

type Rounding = (value: number, extraDigits: number) => string;

function tellingApart(value: number, beside: number | undefined, round: Rounding): string {
  let text = round(value, 0);
  const differ = beside !== undefined && (exceeds(value, beside) || exceeds(beside, value));
  for (let extra = 1; differ && extra <= MOST_DIGITS; extra++) {
    if (text !== round(beside, extra - 1)) break;
    text = round(value, extra);
  }
  return text;
}

/** Rounded as on paper, a half away from zero: 12.95 is 13.0, though its binary fraction lies a little below. */
function rounded(value: number, places: number): string {
  const decimals = Math.min(20, places);
  const steps = Math.round(movePoint(withoutNoise(Math.abs(value)), decimals));
  const text = movePoint(steps, -decimals).toFixed(decimals);
  return value < 0 ? `-${text}` : text;
}

function trimmed(text: string): string {
  const short = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return short === '-0' ? '0' : short;
}

/** So many decimals, but never fewer than two significant digits for a small figure. */
function decimals(value: number, places: number): string {
  const size = Math.abs(value);
  const needed = size > 0 && size < 1 ? 1 - Math.floor(Math.log10(size)) : 0;
  return trimmed(rounded(value, Math.max(places, needed)));
}

function significant(value: number, digits: number): string {
  const size = Math.abs(value);
  const before = size >= 1 ? Math.floor(Math.log10(size)) + 1 : 1;
  return trimmed(rounded(value, Math.max(0, digits - before)));
}

interface Scale {
  readonly from: number;
  readonly divisor: number;
  readonly unit: string;
}

function scaleFor(value: number, scales: readonly Scale[]): Scale {
  const size = Math.abs(value);
  return scales.find((scale) => size >= scale.from) ?? scales[scales.length - 1]!;
}

function scaled(
  value: number,
  beside: number | undefined,
  scales: readonly Scale[],
  round: Rounding,
): string {
  const { divisor, unit } = scaleFor(value, scales);
  return `${tellingApart(value / divisor, beside === undefined ? undefined : beside / divisor, round)} ${unit}`;
}

const RATE_SCALES: readonly Scale[] = [
  { from: 999_950_000, divisor: 1e9, unit: 'Gb/s' },
  { from: 999_950, divisor: 1e6, unit: 'Mb/s' },
  { from: 999.95, divisor: 1e3, unit: 'kb/s' },
  { from: 0, divisor: 1, unit: 'b/s' },
];

/** `2.664 Gb/s`, `19.68 Mb/s`, `100 kb/s`: four significant digits. */
export function formatRate(rate_bits_per_second: number, beside?: number): string {
  return scaled(rate_bits_per_second, beside, RATE_SCALES, (value, extra) => significant(value, 4 + extra));
}

const FREQUENCY_SCALES: readonly Scale[] = [
  { from: 1e9, divisor: 1e9, unit: 'GHz' },
  { from: 1e6, divisor: 1e6, unit: 'MHz' },
  { from: 1e3, divisor: 1e3, unit: 'kHz' },
  { from: 0, divisor: 1, unit: 'Hz' },
];

/** `742.5 MHz`, `1.485 GHz`, `312.787 MHz`: up to three decimals. */
export function formatFrequency(frequency_hz: number, beside?: number): string {
  return scaled(frequency_hz, beside, FREQUENCY_SCALES, (value, extra) => decimals(value, 3 + extra));
}

/** `58.5 m`, `12.25 km`; `192 ft`: a decimal of a metre, a whole foot from 10 ft on. */
export function formatLength(length_m: number, units: LengthUnits = 'metric', beside?: number): string {
  if (units === 'feet') {
    const round: Rounding = (value, extra) => decimals(value, (Math.abs(value) < 10 ? 1 : 0) + extra);
    const other = beside === undefined ? undefined : beside / METRES_PER_FOOT;
    return `${tellingApart(length_m / METRES_PER_FOOT, other, round)} ft`;
  }
  const kilometres = Math.abs(length_m) >= 9999.95;
  return scaled(
    length_m,
    beside,
    [kilometres ? { from: 0, divisor: 1000, unit: 'km' } : { from: 0, divisor: 1, unit: 'm' }],
    (value, extra) => decimals(value, (kilometres ? 3 : 1) + extra),
  );
}

const TIME_SCALES: readonly Scale[] = [
  { from: 9.99995, divisor: 1, unit: 's' },
  { from: 0.00099995, divisor: 1e-3, unit: 'ms' },
  { from: 0.00000099995, divisor: 1e-6, unit: 'us' },
  { from: 0, divisor: 1e-9, unit: 'ns' },
];

/** `91.8 ms`, `1.2 us`, `489.7 ns`: one decimal. */
export function formatTime(time_s: number, beside?: number): string {
  if (time_s === 0) return '0 ms';
  return scaled(time_s, beside, TIME_SCALES, (value, extra) => decimals(value, 1 + extra));
}

/** `1 frame`, `5.5 frames`: two decimals. */
export function formatFrames(frames: number, beside?: number): string {
  const text = tellingApart(frames, beside, (value, extra) => decimals(value, 2 + extra));
  return `${text} ${text === '1' ? 'frame' : 'frames'}`;
}

/** `53.7 %`: one decimal; what is above or below the whole never reads `100 %`. */
export function formatShare(share: number): string {
  return `${tellingApart(share * 100, 100, (value, extra) => decimals(value, 1 + extra))} %`;
}

/** `27.37 W`, `12.95 W`, `12.4 kW`: four significant digits and at most two decimals, as IEEE 802.3 gives its classes. */
export function formatPower(power_w: number, beside?: number): string {
  const scales = [
    { from: 9999.95, divisor: 1000, unit: 'kW' },
    { from: 0, divisor: 1, unit: 'W' },
  ];
  return scaled(power_w, beside, scales, (value, extra) => {
    const whole = Math.abs(value) >= 1 ? Math.floor(Math.log10(Math.abs(value))) + 1 : 1;
    return decimals(value, Math.min(2, Math.max(0, 4 - whole)) + extra);
  });
}

/** `14.2 kg`: one decimal. */
export function formatWeight(weight_kg: number, beside?: number): string {
  return withUnit(weight_kg, 'kg', 1, beside);
}

/** `12.8 A`: two decimals. */
export function formatCurrent(current_a: number, beside?: number): string {
  return withUnit(current_a, 'A', 2, beside);
}

/** `46.6 V`: one decimal. */
export function formatVoltage(voltage_v: number, beside?: number): string {
  return withUnit(voltage_v, 'V', 1, beside);
}

/** `6.25 ohm`: two decimals. */
export function formatResistance(resistance_ohm: number, beside?: number): string {
  return withUnit(resistance_ohm, 'ohm', 2, beside);
}

/** `3.45 dB`: two decimals. */
export function formatLoss(loss_db: number, beside?: number): string {
  return withUnit(loss_db, 'dB', 2, beside);
}

/** `40 °C`: one decimal. */
export function formatTemperature(temperature_c: number): string {
  return withUnit(temperature_c, '°C', 1);
}

/** `180 GB`, `4.5 TB` in powers of ten: four significant digits. */
export function formatBytes(bytes: number): string {
  const scales = [
    { from: 999_950_000_000, divisor: 1e12, unit: 'TB' },
    { from: 999_950_000, divisor: 1e9, unit: 'GB' },
    { from: 999_950, divisor: 1e6, unit: 'MB' },
    { from: 0, divisor: 1e3, unit: 'kB' },
  ];
  return scaled(bytes, undefined, scales, (value, extra) => significant(value, 4 + extra));
}

/** A bare number with at most so many decimals, for workings. */
export function formatNumber(value: number, places = 4): string {
  return decimals(value, places);
}

function withUnit(value: number, unit: string, places: number, beside?: number): string {
  return `${tellingApart(value, beside, (one, extra) => decimals(one, places + extra))} ${unit}`;
}
