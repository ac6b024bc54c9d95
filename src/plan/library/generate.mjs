// Writes what the files of the shipped library say into facts.ts, so that nobody has to parse them to work with a plan.
import { writeFileSync } from 'node:fs';
import { libraryTexts } from '../../language/library/texts.ts';
import { readText } from '../read-text.ts';

const files = libraryTexts.map(([name, text]) => {
  const { statements, unreadables } = readText(name, text);
  const faults = statements.flatMap((statement) => statement.faults);
  for (const { message } of [...unreadables, ...faults]) throw new Error(`${name}: ${message}`);
  return statements.map(({ fact, label, description }) => ({ fact, label, description }));
});
// As text within text: reading that is much quicker than compiling it.
writeFileSync(
  new URL('facts.ts', import.meta.url),
  `// Written by library/generate.mjs.
export const libraryFacts: unknown = JSON.parse(
  ${JSON.stringify(JSON.stringify(files))},
);
`,
);
