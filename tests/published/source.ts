/**
 * The frame of every check against something outside the project. Each file of this folder names one source and hands
 * its values over as rows; the rows become tests, and are counted for the table of sources.
 */
import { execFileSync } from 'node:child_process';
import { describe, expect, test } from 'vitest';

/** How well the expected values are founded; the same words as in a working. */
export type Label = 'published' | 'second-hand' | 'derived' | 'common practice' | 'from memory';

export interface Source {
  /** Document, edition and clause; or what the values are computed from. */
  readonly source: string;
  readonly label: Label;
}

export interface Check {
  /** Number of a worked example of the reference values. */
  readonly id?: string;
  readonly what: string;
  readonly got: () => number | string | boolean;
  readonly expected: number | string | boolean;
  /** Greatest difference from the expected number; none: equal to 12 digits. */
  readonly within?: number;
  /** Greatest difference in per cent of the expected number. */
  readonly percent?: number;
}

export interface Row extends Source {
  readonly checks: number;
  readonly ids: readonly string[];
}

const rows: Row[] = [];
let collecting = false;

/** Declares checks against a source: each becomes a test. */
export function published(source: Source, checks: readonly Check[]): void {
  record(source, checks);
  if (collecting) return;
  describe(`${source.source} (${source.label})`, () => {
    for (const check of checks) test(nameOf(check), () => run(check));
  });
}

/**
 * Declares checks against the output of a general-purpose tool. They run where the tool is installed, and must run
 * where the environment says CI.
 */
export function publishedByTool(
  source: Source,
  command: string,
  checks: readonly (Omit<Check, 'expected'> & {
    readonly arguments: readonly string[];
    readonly read: (output: string) => number;
  })[],
): void {
  record(source, checks);
  if (collecting) return;
  const present = isInstalled(command);
  describe.skipIf(!present && process.env.CI === undefined)(`${source.source} (${source.label})`, () => {
    for (const { arguments: words, read, ...check } of checks) {
      test(nameOf(check), () => {
        expect(present, `${command} is needed where CI is set`).toBe(true);
        run({ ...check, expected: read(execFileSync(command, words, { encoding: 'utf8' })) });
      });
    }
  });
}

function record(source: Source, checks: readonly { readonly id?: string }[]): void {
  if (checks.length === 0) throw new Error(`${source.source}: a source without a check proves nothing`);
  rows.push({ ...source, checks: checks.length, ids: checks.flatMap(({ id }) => id ?? []) });
}

function isInstalled(command: string): boolean {
  try {
    execFileSync('which', [command], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
}

function nameOf({ id, what }: { readonly id?: string; readonly what: string }): string {
  return id === undefined ? what : `${id} ${what}`;
}

function run({ got, expected, within, percent }: Check): void {
  const value = got();
  if (typeof expected !== 'number') {
    expect(value).toBe(expected);
    return;
  }
  expect(typeof value).toBe('number');
  const tolerance = within ?? Math.abs(expected) * (percent === undefined ? 1e-12 : percent / 100);
  expect(value).toBeGreaterThanOrEqual(expected - tolerance);
  expect(value).toBeLessThanOrEqual(expected + tolerance);
}

/** Runs a loader of test files without making tests, and returns what they declared. */
export async function collect(load: () => Promise<void>): Promise<readonly Row[]> {
  collecting = true;
  try {
    await load();
  } finally {
    collecting = false;
  }
  return rows.splice(0);
}
