/** Findings of error level, or of warning level where warnings fail too. */
export const EXIT_FINDINGS = 1;
/** The command could not run. */
export const EXIT_TROUBLE = 2;

/** Why a command could not run, in words for the person who typed it. */
export class Trouble extends Error {
  override readonly name = 'Trouble';
}

/** Told by its name: the bundle of a command has a class of its own. */
export function isTrouble(error: unknown): error is Trouble {
  return error instanceof Error && error.name === 'Trouble';
}
