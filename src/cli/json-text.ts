import { Trouble } from './trouble.ts';

/** @throws Trouble for what is longer than a text can be, as for chains of thousands of pieces that all name each other. */
export function jsonText(value: unknown): string {
  try {
    return JSON.stringify(value, undefined, 2);
  } catch (error) {
    if (error instanceof RangeError)
      throw new Trouble(
        'There is more in this plan than one JSON text can hold. Look at parts of it instead.',
      );
    throw error;
  }
}
