/**
 * Moves the decimal point of a number, exactly: 2.97 moved by 9 is 2970000000, where 2.97 * 1e9 may miss by a
 * binary rounding.
 */
export function movePoint(value: number, places: number): number {
  if (places === 0 || value === 0 || !Number.isFinite(value)) return value;
  if (places > 0 && Number.isInteger(value)) return value * 10 ** places;
  const [digits, exponent = '0'] = String(value).split('e');
  return Number(`${digits}e${Number(exponent) + places}`);
}

/** Rounds to 15 significant digits, which drops the noise of binary fractions but nothing that was written. */
export function withoutNoise(value: number): number {
  return Number(value.toPrecision(15));
}

/** Whether a figure is above a limit by more than the noise of binary fractions: what just reaches it does not exceed it. */
export function exceeds(value: number, limit: number): boolean {
  return value - limit > Math.max(Math.abs(value), Math.abs(limit)) * 1e-12;
}

/** The greatest common divisor of two whole numbers. */
export function greatestCommonDivisor(a: number, b: number): number {
  let [larger, smaller] = [Math.abs(a), Math.abs(b)];
  while (smaller !== 0) [larger, smaller] = [smaller, larger % smaller];
  return larger;
}
