import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { unpackWoff } from '../documents/typeset/unpack-woff.ts';

/** Reads the fonts that lie beside the program. */
export function fontsBeside(program: string): (file: string) => Uint8Array {
  return (file) => unpackWoff(readFileSync(join(program, 'fonts', file)));
}
