/** The faces as they ship, from the packages that they come from. */
import { existsSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { Faces } from '../../src/documents/typeset/faces.ts';
import { unpackWoff } from '../../src/documents/typeset/unpack-woff.ts';

const packages = resolve(import.meta.dirname, '../../node_modules/@fontsource');
const families = ['noto-sans', 'noto-sans-arabic', 'noto-sans-hebrew', 'noto-sans-jp', 'unifontex'];

export function readFont(file: string): Uint8Array {
  const path = families.map((family) => join(packages, family, 'files', file)).find((one) => existsSync(one));
  if (!path) throw new Error(`No package has the font ${file}`);
  return unpackWoff(readFileSync(path));
}

export const faces = new Faces(readFont);
