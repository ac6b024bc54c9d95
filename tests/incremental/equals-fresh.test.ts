/**
 * A workspace that has been worked in is what it would be if it were opened now: syntax trees, positions, what names
 * lead to, facts, findings and hovers. `npm run fuzz` goes on where this ends.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { Random } from './random.ts';
import { run } from './run.ts';
import { replay, type Script } from './script.ts';

const failures = join(import.meta.dirname, 'failures');
const kept = existsSync(failures) ? readdirSync(failures) : [];

describe('work in a workspace', () => {
  it.each([101, 202, 303, 404])(
    'leaves what a fresh reading gives: 500 edits from %i',
    async (start) => {
      const { edits, failure } = await run(new Random(start), 500);
      expect(failure?.difference).toBeUndefined();
      expect(edits).toBe(500);
    },
    300_000,
  );

  it.each(kept)('that once left something else does so no more: %s', async (name) => {
    const script = JSON.parse(readFileSync(join(failures, name), 'utf8')) as Script;
    expect(await replay(script, new Random(1))).toBeUndefined();
  });
});
