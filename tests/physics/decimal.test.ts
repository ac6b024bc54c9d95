import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { greatestCommonDivisor, movePoint, withoutNoise } from '../../src/physics/decimal.ts';

describe('moving the decimal point', () => {
  test.each([
    [2.97, 9, 2_970_000_000],
    [59.94, 6, 59_940_000],
    [1.005, 3, 1005],
    [4, -9, 4e-9],
    [1.5e-7, 9, 150],
    [1e21, -21, 1],
    [0, 9, 0],
    [-2.5, 1, -25],
    [7, 0, 7],
    [0.1, 0, 0.1],
    [Number.POSITIVE_INFINITY, 3, Number.POSITIVE_INFINITY],
    [Number.POSITIVE_INFINITY, -3, Number.POSITIVE_INFINITY],
    [Number.NaN, -3, Number.NaN],
  ])('%d by %d places is %d', (value, places, expected) => {
    expect(movePoint(value, places)).toBe(expected);
  });

  test('there and back is where it was', () => {
    fc.assert(
      fc.property(
        fc.double({ noDefaultInfinity: true, noNaN: true, min: -1e15, max: 1e15 }),
        fc.integer({ min: -9, max: 9 }),
        (value, places) => {
          const back = movePoint(movePoint(value, places), -places);
          // The smallest fractions a machine knows lose digits when they get smaller still.
          const least = 1e-300;
          expect(Math.abs(back - value)).toBeLessThanOrEqual(Math.abs(value) * 2 * Number.EPSILON + least);
        },
      ),
    );
  });
});

test('noise of binary fractions goes, what was written stays', () => {
  expect(withoutNoise(0.1 + 0.2)).toBe(0.3);
  expect(withoutNoise(12.3456789012345)).toBe(12.3456789012345);
});

test('greatest common divisors', () => {
  expect(greatestCommonDivisor(60_000, 1001)).toBe(1);
  expect(greatestCommonDivisor(120_000, 2002)).toBe(2);
  expect(greatestCommonDivisor(0, 5)).toBe(5);
  expect(greatestCommonDivisor(-12, 18)).toBe(6);
});
