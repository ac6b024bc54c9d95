// Writes the texts of the shipped library into texts.ts, so that they are part of every bundle and no
// file has to be found at run time.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';

const folder = new URL('.', import.meta.url);
const names = readdirSync(folder)
  .filter((name) => name.endsWith('.feedplot'))
  .sort();
const entries = names.map(
  (name) => `  [${JSON.stringify(name)}, ${JSON.stringify(readFileSync(new URL(name, folder), 'utf8'))}],`,
);
writeFileSync(
  new URL('../library/texts.ts', folder),
  `// Written by library/generate.mjs.\nexport const libraryTexts: readonly (readonly [name: string, text: string])[] = [\n${entries.join('\n')}\n];\n`,
);
