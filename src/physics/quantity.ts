/** Quantities: a number with a unit, and its value in SI base units. */
import { movePoint, withoutNoise } from './decimal.ts';
import { LONGEST_CABLE_M, PhysicsError, refusal } from './physics-error.ts';

export type Dimension =
  | 'length'
  | 'time'
  | 'frames'
  | 'data rate'
  | 'frequency'
  | 'resistance'
  | 'power'
  | 'current'
  | 'voltage'
  | 'weight'
  | 'share'
  | 'loss'
  | 'temperature';

/** A unit as it is written. One of it is `times * 10^places` SI units; both are whole, so exact. */
export interface Unit {
  readonly symbol: string;
  readonly dimension: Dimension;
  readonly times: number;
  readonly places: number;
}

export interface Quantity {
  readonly value: number;
  readonly unit: Unit;
}

function unit(symbol: string, dimension: Dimension, places = 0, times = 1): Unit {
  return { symbol, dimension, times, places };
}

/**
 * Every unit that can be written. SI prefixes: the SI brochure; foot 0.3048 m and pound 0.45359237 kg: the
 * international yard and pound of 1959 (exact; second-hand, as in the GNU `units` table).
 *
 * A frame is no time until a rate is known, so it has a dimension of its own. Weight is in kg, temperature in °C.
 */
export const UNITS: readonly Unit[] = [
  unit('m', 'length'),
  unit('cm', 'length', -2),
  unit('mm', 'length', -3),
  unit('nm', 'length', -9),
  unit('km', 'length', 3),
  unit('ft', 'length', -4, 3048),
  unit('ns', 'time', -9),
  unit('us', 'time', -6),
  unit('ms', 'time', -3),
  unit('s', 'time'),
  unit('min', 'time', 0, 60),
  unit('h', 'time', 0, 3600),
  unit('frame', 'frames'),
  unit('frames', 'frames'),
  unit('b/s', 'data rate'),
  unit('kb/s', 'data rate', 3),
  unit('Mb/s', 'data rate', 6),
  unit('Gb/s', 'data rate', 9),
  unit('Hz', 'frequency'),
  unit('kHz', 'frequency', 3),
  unit('MHz', 'frequency', 6),
  unit('GHz', 'frequency', 9),
  unit('ohm', 'resistance'),
  unit('W', 'power'),
  unit('kW', 'power', 3),
  unit('A', 'current'),
  unit('V', 'voltage'),
  unit('g', 'weight', -3),
  unit('kg', 'weight'),
  unit('lb', 'weight', -8, 45_359_237),
  unit('%', 'share', -2),
  unit('dB', 'loss'),
  unit('C', 'temperature'),
  unit('°C', 'temperature'),
];

const BY_SYMBOL = new Map(UNITS.map((one) => [one.symbol, one]));
const BY_LOWER_CASE = new Map(UNITS.map((one) => [one.symbol.toLowerCase(), one]));

/** The unit with this symbol, upper and lower case as written; undefined when there is none. */
export function unitOf(symbol: string): Unit | undefined {
  return BY_SYMBOL.get(symbol);
}

/** The unit that was probably meant by a wrong symbol: `mb/s`, `Mbps`, `mhz`, `meters`, `°C`. */
export function unitLike(symbol: string): Unit | undefined {
  const plain = symbol
    .toLowerCase()
    .replace('°', '')
    .replace(/bps$/, 'b/s')
    .replace(/bit\/s$/, 'b/s');
  return BY_LOWER_CASE.get(plain) ?? BY_LOWER_CASE.get(WORDS.get(plain) ?? '');
}

const WORDS = new Map([
  ['meter', 'm'],
  ['meters', 'm'],
  ['metre', 'm'],
  ['metres', 'm'],
  ['foot', 'ft'],
  ['feet', 'ft'],
  ["'", 'ft'],
  ['sec', 's'],
  ['hour', 'h'],
  ['hours', 'h'],
  ['watt', 'w'],
  ['watts', 'w'],
  ['amp', 'a'],
  ['amps', 'a'],
  ['volt', 'v'],
  ['volts', 'v'],
  ['lbs', 'lb'],
  ['percent', '%'],
  ['ohms', 'ohm'],
  ['ω', 'ohm'],
]);

/** The value in SI units (m, s, b/s, Hz, ohm, W, A, V, kg, 1 for a share, dB, °C, frames). */
export function toSi(value: number, { times, places }: Unit): number {
  const shifted = movePoint(value, places);
  return times === 1 ? shifted : withoutNoise(shifted * times);
}

/** An SI value in this unit; the inverse of `toSi`, to 15 digits. */
export function fromSi(value: number, { times, places }: Unit): number {
  const shifted = movePoint(value, -places);
  return times === 1 ? shifted : withoutNoise(shifted / times);
}

/** The same quantity in another unit of the same dimension. @throws PhysicsError when dimensions differ. */
export function convert({ value, unit: from }: Quantity, to: Unit): Quantity {
  if (from.dimension !== to.dimension) {
    throw new PhysicsError(
      from.dimension,
      `${value} ${from.symbol} is a ${from.dimension}, not a ${to.dimension}`,
    );
  }
  return { value: fromSi(toSi(value, from), to), unit: to };
}

/**
 * Reads `58 m`, `2.97 Gb/s`, `-3.5 dB`, `10%`.
 *
 * @throws PhysicsError with the likely cure when it cannot be read.
 */
export function parseQuantity(text: string): Quantity {
  const match = /^([-+]?(?:\d+(?:\.\d*)?|\.\d+))\s*([^\s\d.,]\S*)$/.exec(text.trim());
  if (match === null) {
    const comma = /^\d+,\d+/.test(text.trim());
    const cure = comma ? 'write a decimal point, not a comma' : 'write a number and a unit, for example 12 m';
    throw new PhysicsError('quantity', `"${text}" is no quantity; ${cure}`);
  }
  const [, number, symbol] = match as unknown as [string, string, string];
  const found = unitOf(symbol);
  if (found === undefined) {
    const meant = unitLike(symbol);
    const cure =
      meant === undefined
        ? `units are ${UNITS.map((one) => one.symbol).join(', ')}`
        : `write ${meant.symbol}`;
    throw new PhysicsError('unit', `"${symbol}" is no unit; ${cure}`);
  }
  return { value: Number(number), unit: found };
}

/** A quantity as it is written: `58 m`, `1 frame`, `2 frames`. Reading it back gives the same. */
export function formatQuantity({ value, unit: { symbol, dimension } }: Quantity): string {
  const written = dimension === 'frames' ? (value === 1 ? 'frame' : 'frames') : symbol;
  return `${plainNumber(value)} ${written}`;
}

/** A number without an exponent and without losing a digit. */
function plainNumber(value: number): string {
  const text = String(value);
  const match = /^(-?)(\d)(?:\.(\d+))?e([+-]\d+)$/.exec(text);
  if (match === null) return text;
  const [, sign = '', first = '', rest = '', exponent = '0'] = match;
  const places = Number(exponent);
  const digits = first + rest;
  return places < 0
    ? `${sign}0.${'0'.repeat(-places - 1)}${digits}`
    : `${sign}${digits.padEnd(places + 1, '0')}`;
}

/** What a dimension is called in a message, with an example. */
export const EXPECTED: Readonly<Record<Dimension, string>> = {
  length: 'a length, for example 12 m',
  time: 'a time, for example 40 ms',
  frames: 'a number of frames, for example 2 frames',
  'data rate': 'a data rate, for example 10 Gb/s',
  frequency: 'a frequency, for example 742.5 MHz',
  resistance: 'a resistance, for example 12.5 ohm',
  power: 'a power, for example 60 W',
  current: 'a current, for example 16 A',
  voltage: 'a voltage, for example 230 V',
  weight: 'a weight, for example 23 kg',
  share: 'a share, for example 10 %',
  loss: 'a loss, for example 2.6 dB',
  temperature: 'a temperature, for example 40 C',
};

/** Least and most of what can be meant, in SI units; beyond lies a slip of the pen (common practice). */
const PLAUSIBLE: Readonly<Record<Dimension, readonly [least: number, most: number]>> = {
  length: [0, LONGEST_CABLE_M],
  time: [0, 366 * 86_400],
  frames: [0, 10_000],
  'data rate': [0, 1e15],
  frequency: [0, 1e12],
  resistance: [0, 1e6],
  power: [0, 1e7],
  current: [0, 10_000],
  voltage: [0, 1000],
  weight: [0, 10_000],
  share: [0, 100],
  loss: [0, 1000],
  temperature: [-90, 100],
};

/**
 * The SI value of a quantity, when it has the wanted dimension and can be meant.
 *
 * @throws PhysicsError for another dimension, NaN, a negative value, or one beyond all reason (a length beyond
 *   the Earth's girth).
 */
export function requireQuantity(quantity: Quantity, dimension: Dimension): number {
  if (quantity.unit.dimension !== dimension) {
    throw new PhysicsError(dimension, `${EXPECTED[dimension]}, is expected, not ${formatQuantity(quantity)}`);
  }
  const [least, most] = PLAUSIBLE[dimension];
  const value = toSi(quantity.value, quantity.unit);
  if (value >= least && value <= most) return value;
  const bound = (si: number) => formatQuantity({ value: fromSi(si, quantity.unit), unit: quantity.unit });
  throw refusal(dimension, formatQuantity(quantity), `${bound(least)} to ${bound(most)}`);
}
