/** The guide has the table of published sources. It is made from the checks: `FEEDPLOT_WRITE=1` writes it. */
import { readFileSync, writeFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { formatSources, sources } from '../published/sources.ts';

const GUIDE = 'DEVELOPERS.md';
const BEGIN = '<!-- The table below is made by tests/docs/sources.test.ts -->';
const END = '<!-- end of the table -->';

it('the guide names every source that the figures are checked against, with the number of checks', async () => {
  const guide = readFileSync(GUIDE, 'utf8');
  const [before, rest] = guide.split(BEGIN);
  const [, after] = rest!.split(END);
  const made = `${before}${BEGIN}\n\n${formatSources(await sources())}\n${END}${after}`;
  if (process.env.FEEDPLOT_WRITE) writeFileSync(GUIDE, made);
  else expect(guide).toBe(made);
});
