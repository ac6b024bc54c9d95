import { expect, test } from 'vitest';
import { declarations, formatSources, sources } from '../published/sources.ts';

/** How many worked examples each chapter of the reference values has. */
const EXAMPLES = [13, 10, 6, 11, 11, 5, 7, 6, 7, 6];

test('every worked example of the reference values is checked once', async () => {
  const ids = (await declarations()).flatMap((row) => row.ids);
  const wanted = EXAMPLES.flatMap((count, chapter) =>
    Array.from({ length: count }, (_, number) => `W${chapter + 1}.${number + 1}`),
  );
  expect([...ids].sort()).toEqual([...wanted].sort());
});

test('the table of sources counts every check', async () => {
  const rows = await sources();
  expect(rows.length).toBeGreaterThan(40);
  expect(formatSources(rows)).toContain(`| all | | ${rows.reduce((sum, row) => sum + row.checks, 0)} |`);
});
