/** The limits that the README names are those that hold. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';

const [, section = ''] = /### Limits\n([\s\S]*?)\n## /.exec(readFileSync('README.md', 'utf8')) ?? [];

/** Each limit as the code has it: the file, the constant, and the value in the README. */
it.each([
  ['src/language/refusal.ts', 'MOST_CHARACTERS', '4,000,000 characters'],
  ['src/language/refusal.ts', 'MOST_STATEMENTS', '100,000 statements'],
  ['src/language/refusal.ts', 'MOST_IN_A_LINE', '20,000 characters in a line'],
  ['src/plan/read-bytes.ts', 'MOST_BYTES', '16 MB'],
  ['src/plan/assemble.ts', 'MOST_FILES', '500'],
  ['src/plan/plan.ts', 'LONGEST_NAME', '100 characters'],
  ['src/server/publish.ts', 'MOST_FINDINGS', '200, the most serious ones'],
  ['src/documents/findings/text.ts', 'MOST_FINDINGS', '1,000; `--output json` has all'],
])('%s %s: %s', (file, constant, told) => {
  const [, value = ''] = new RegExp(`const ${constant} = ([\\d_]+);`).exec(readFileSync(file, 'utf8')) ?? [];
  const number = Number(value.replaceAll('_', ''));
  expect(number).toBeGreaterThan(0);
  const [said = ''] = told.split(' ');
  const inReadme = Number(said.replace(';', '').replaceAll(',', '')) * (told.includes('MB') ? 1e6 : 1);
  expect(inReadme).toBe(number);
  expect(section).toContain(told);
});
