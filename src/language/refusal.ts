import type { Text } from './incremental/text.ts';

/** A plan of 20,000 statements has under two million characters. */
export const MOST_CHARACTERS = 4_000_000;

/** Why a text cannot be a plan at all and is not read, in words; undefined for one that is read. */
export function refuse(text: Text): string | undefined {
  if (text.length > MOST_CHARACTERS) {
    return `This file has ${(text.length / 1e6).toFixed(1)} million characters; at most ${MOST_CHARACTERS / 1e6} million are read. Is it a plan?`;
  }
  if (text.indexOf('\u0000', 0) >= 0)
    return 'This is no text: it holds bytes that no editor writes. Is it a plan?';
  return undefined;
}
