/** A value that the arithmetic refuses. The message says what is wrong and which values are allowed. */
export class PhysicsError extends Error {
  /** What the refused value is, for example `width` or `cable length`. */
  readonly quantity: string;

  constructor(quantity: string, message: string) {
    super(message);
    this.name = 'PhysicsError';
    this.quantity = quantity;
  }
}

/**
 * Returns the value when it is a number from `least` to `most`, both included.
 *
 * @throws PhysicsError for anything else: NaN, infinity, too small, too large.
 */
export function requireWithin(
  quantity: string,
  value: number,
  least: number,
  most: number,
  unit = '',
): number {
  if (value >= least && value <= most) return value;
  throw refusal(quantity, value, `${range(least, most)}${spaced(unit)}`);
}

/**
 * Like `requireWithin`, for a count.
 *
 * @throws PhysicsError also when the value is not a whole number.
 */
export function requireWhole(
  quantity: string,
  value: number,
  least: number,
  most: number,
  unit = '',
): number {
  if (Number.isInteger(value) && value >= least && value <= most) return value;
  throw refusal(quantity, value, `a whole number, ${range(least, most)}${spaced(unit)}`);
}

/** The error for a value that is not one of those allowed; `allowed` says in words which are. */
export function refusal(quantity: string, value: number | string, allowed: string): PhysicsError {
  return new PhysicsError(quantity, `${quantity} ${value} is refused; allowed: ${allowed}`);
}

function range(least: number, most: number): string {
  return `${least} to ${most}`;
}

function spaced(unit: string): string {
  return unit === '' ? '' : ` ${unit}`;
}

/** No cable is longer than once round the Earth (40,075 km at the equator). */
export const LONGEST_CABLE_M = 40_075_000;

/**
 * A cable length that can exist.
 *
 * @throws PhysicsError for a negative length, one longer than the Earth's girth, and NaN.
 */
export function requireLength(length_m: number): number {
  return requireWithin('cable length', length_m, 0, LONGEST_CABLE_M, 'm');
}
