import { readFileSync, realpathSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { oneLine } from '../documents/printable.ts';
import { formatText } from '../language/formatter/format.ts';
import { filePath, fileUri, nameFrom } from './file-uri.ts';
import { findPlan } from './find-plan.ts';
import { PlanReader } from './open-plan.ts';
import type { Define } from './program.ts';
import { EXIT_FINDINGS, Trouble } from './trouble.ts';

/** `feedplot format`: files in canonical layout. Nothing but white space changes; what cannot be read is left alone. */
export const define: Define = (command, { terminal, program }) => {
  command
    .argument(
      '[file...]',
      'files to format; without any, the one plan in this folder and all that it imports',
    )
    .option('--verify', 'change nothing, tell which files would change')
    .action((named: string[], { verify }: { verify?: true }) => {
      const paths =
        named.length > 0
          ? named.map((name) => pathOf(terminal.folder, name))
          : filesOfPlan(program, terminal.folder);
      let changed = 0;
      for (const path of new Set(paths)) {
        const name = oneLine(nameFrom(terminal.folder, fileUri(path)));
        const text = read(path, name);
        const formatted = formatText(text);
        if ('refusal' in formatted) throw new Trouble(`${name}: ${formatted.refusal}`);
        if (formatted.text === text) continue;
        changed++;
        if (!verify) write(path, formatted.text);
        terminal.out(verify ? `${name} would change` : `${name} is formatted`);
      }
      if (changed === 0) terminal.out('Nothing to change.');
      else if (verify) process.exitCode = EXIT_FINDINGS;
    });
};

function pathOf(folder: string, name: string): string {
  const path = resolve(folder, name);
  const stats = statSync(path, { throwIfNoEntry: false });
  if (!stats) throw new Trouble(`No such file: ${oneLine(name)}.`);
  if (!stats.isFile()) throw new Trouble(`${oneLine(name)} is no file.`);
  return realpathSync(path);
}

function filesOfPlan(program: string, folder: string): string[] {
  const reader = new PlanReader(program);
  const { path } = findPlan(reader, folder, undefined);
  return reader.plan(path).files.flatMap((uri) => filePath(uri) ?? []);
}

function read(path: string, name: string): string {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(readFileSync(path));
  } catch {
    throw new Trouble(`${name} cannot be read as UTF-8 text, so nothing was changed.`);
  }
}

/** Beside the file first, then in its place: a machine that stops half-way leaves one of the two whole. */
function write(path: string, text: string): void {
  const beside = `${path}.${process.pid}.new`;
  try {
    writeFileSync(beside, text, { flag: 'wx', mode: statSync(path).mode });
    renameSync(beside, path);
  } catch (error) {
    rmSync(beside, { force: true });
    throw new Trouble(`${path} could not be written: ${(error as Error).message}`);
  }
}
