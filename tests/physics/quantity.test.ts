import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { PhysicsError } from '../../src/physics/physics-error.ts';
import {
  convert,
  EXPECTED,
  formatQuantity,
  fromSi,
  parseQuantity,
  requireQuantity,
  toSi,
  UNITS,
  unitLike,
  unitOf,
} from '../../src/physics/quantity.ts';

const quantity = (text: string) => parseQuantity(text);
const si = (text: string) => toSi(quantity(text).value, quantity(text).unit);

/** Written quantity and its SI value; factors as in GNU `units`. */
const VALUES: readonly (readonly [string, number])[] = [
  ['58 m', 58],
  ['1 ft', 0.3048],
  ['10 ft', 3.048],
  ['1.5 km', 1500],
  ['40 cm', 0.4],
  ['4 mm', 0.004],
  ['850 nm', 850e-9],
  ['538 ns', 538e-9],
  ['12 us', 12e-6],
  ['80 ms', 0.08],
  ['90 s', 90],
  ['5 min', 300],
  ['8 h', 28_800],
  ['2 frames', 2],
  ['1 frame', 1],
  ['100 b/s', 100],
  ['100 kb/s', 100_000],
  ['50 Mb/s', 50e6],
  ['2.97 Gb/s', 2_970_000_000],
  ['11.88 Gb/s', 11_880_000_000],
  ['50 Hz', 50],
  ['48 kHz', 48_000],
  ['742.5 MHz', 742_500_000],
  ['1.485 GHz', 1_485_000_000],
  ['12.5 ohm', 12.5],
  ['370 W', 370],
  ['1.2 kW', 1200],
  ['16 A', 16],
  ['230 V', 230],
  ['65 g', 0.065],
  ['23 kg', 23],
  ['1 lb', 0.45359237],
  ['10 %', 0.1],
  ['10%', 0.1],
  ['3.45 dB', 3.45],
  ['-3.5 dB', -3.5],
  ['40 C', 40],
  ['40 °C', 40],
];

test.each(VALUES)('%s is %d in SI units', (text, expected) => {
  expect(si(text)).toBe(expected);
});

test('every unit is in the table of values', () => {
  const covered = new Set(VALUES.map(([text]) => quantity(text).unit.symbol));
  expect(UNITS.map((unit) => unit.symbol).filter((symbol) => !covered.has(symbol))).toEqual([]);
});

test('units survive the way to SI and back', () => {
  const anyUnit = fc.constantFrom(...UNITS);
  fc.assert(
    fc.property(
      anyUnit,
      fc.integer({ min: -1_000_000, max: 1_000_000 }),
      fc.integer({ min: 0, max: 5 }),
      (unit, digits, places) => {
        const value = Number(`${digits}e-${places}`);
        expect(fromSi(toSi(value, unit), unit)).toBe(value);
      },
    ),
  );
});

test('what is written is read back', () => {
  fc.assert(
    fc.property(fc.constantFrom(...UNITS), fc.double({ min: 0, max: 1e12, noNaN: true }), (unit, value) => {
      const written = { value, unit };
      const read = parseQuantity(formatQuantity(written));
      expect(read.value).toBe(value);
      expect(read.unit.dimension).toBe(unit.dimension);
      expect(toSi(read.value, read.unit)).toBe(toSi(value, unit));
    }),
  );
});

test('very small and very large values are written without an exponent', () => {
  expect(formatQuantity({ value: 4e-9, unit: unitOf('m')! })).toBe('0.000000004 m');
  expect(formatQuantity({ value: 1.25e-7, unit: unitOf('m')! })).toBe('0.000000125 m');
  expect(formatQuantity({ value: 1.5e21, unit: unitOf('b/s')! })).toBe('1500000000000000000000 b/s');
  expect(formatQuantity({ value: 1, unit: unitOf('frames')! })).toBe('1 frame');
  expect(formatQuantity({ value: 2, unit: unitOf('frame')! })).toBe('2 frames');
});

test('quantities convert within a dimension only', () => {
  expect(convert(quantity('10 ft'), unitOf('m')!)).toEqual({ value: 3.048, unit: unitOf('m') });
  expect(convert(quantity('1 km'), unitOf('ft')!).value).toBeCloseTo(3280.8399, 4);
  expect(() => convert(quantity('60 W'), unitOf('m')!)).toThrow('60 W is a power, not a length');
});

describe('unreadable quantities', () => {
  test.each([
    ['58,5 m', 'write a decimal point, not a comma'],
    ['58', 'write a number and a unit'],
    ['m', 'write a number and a unit'],
    ['NaN m', 'write a number and a unit'],
    ['1e9 b/s', 'write a number and a unit'],
    ['5 mb/s', 'write Mb/s'],
    ['5 Mbps', 'write Mb/s'],
    ['5 Gbit/s', 'write Gb/s'],
    ['5 mhz', 'write MHz'],
    ['5 metres', 'write m'],
    ['5 feet', 'write ft'],
    ['5 lbs', 'write lb'],
    ['5 furlongs', 'units are m, '],
    ['5 __proto__', 'units are m, '],
    ['5 constructor', 'units are m, '],
  ])('%s: %s', (text, cure) => {
    expect(() => parseQuantity(text)).toThrow(PhysicsError);
    expect(() => parseQuantity(text)).toThrow(cure);
  });
});

test('a unit that was meant is found, and nothing where none was', () => {
  expect(unitLike('°c')?.symbol).toBe('C');
  expect(unitLike('hours')?.symbol).toBe('h');
  expect(unitLike('Ω')?.symbol).toBe('ohm');
  expect(unitLike('toString')).toBeUndefined();
});

describe('a quantity for a purpose', () => {
  test('has the right dimension and a value that can be meant', () => {
    expect(requireQuantity(quantity('58 ft'), 'length')).toBeCloseTo(17.6784, 9);
    expect(() => requireQuantity(quantity('60 W'), 'length')).toThrow(
      'a length, for example 12 m, is expected, not 60 W',
    );
    expect(() => requireQuantity(quantity('41000 km'), 'length')).toThrow(
      'length 41000 km is refused; allowed: 0 km to 40075 km',
    );
    expect(() => requireQuantity(quantity('-1 m'), 'length')).toThrow('refused');
    expect(() => requireQuantity({ value: Number.NaN, unit: unitOf('m')! }, 'length')).toThrow('refused');
    expect(requireQuantity(quantity('-20 C'), 'temperature')).toBe(-20);
  });

  test('every dimension says what it expects with a quantity that is one', () => {
    for (const [dimension, text] of Object.entries(EXPECTED)) {
      const example = text.slice(text.indexOf('for example ') + 'for example '.length);
      expect(parseQuantity(example).unit.dimension).toBe(dimension);
    }
  });
});
