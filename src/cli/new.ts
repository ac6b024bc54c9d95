import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import type { Define } from './program.ts';
import { Trouble } from './trouble.ts';

/** The files of the starter plan: as they lie beside the program, and as they are written. */
const files = [
  ['starter.feedplot', 'show.feedplot'],
  ['kit.feedplot', 'kit.feedplot'],
] as const;

/** `feedplot new`: a small working plan and a file of kit, to change into one's own. */
export const define: Define = (command, { terminal, program }) => {
  command.argument('[folder]', 'where to write them', '.').action((named: string) => {
    const folder = resolve(terminal.folder, named);
    const texts = files.map(
      ([from, to]) => [join(folder, to), readFileSync(join(program, 'starter', from))] as const,
    );
    writeAll(folder, texts);
    const names = texts.map(([path]) => relative(terminal.folder, path));
    terminal.out(`Wrote ${names.join(' and ')}.`);
    terminal.out(`Next: feedplot check ${quoted(names[0]!)}`);
  });
};

/** Writes all files or none. @throws Trouble when one is there already, or the folder cannot be written to. */
function writeAll(folder: string, texts: readonly (readonly [path: string, text: Uint8Array])[]): void {
  const there = texts.find(([path]) => existsSync(path));
  if (there) throw new Trouble(`${there[0]} is there already; nothing was written. Name another folder.`);
  const written: string[] = [];
  try {
    mkdirSync(folder, { recursive: true });
    for (const [path, text] of texts) {
      writeFileSync(path, text, { flag: 'wx' });
      written.push(path);
    }
  } catch (error) {
    for (const path of written) rmSync(path);
    throw new Trouble(`Nothing was written to ${folder}: ${(error as Error).message}`);
  }
}

function quoted(name: string): string {
  return /^[\w./-]+$/.test(name) ? name : `"${name}"`;
}
