/** Runs the built command line as a person or a script does: a process of its own. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, dirname, join, resolve } from 'node:path';
import { onTestFinished } from 'vitest';

export const root = resolve(import.meta.dirname, '../..');
const program = join(root, 'dist/feedplot.cjs');

export interface Ran {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

export interface Surroundings {
  /** The folder in which it is called; the project's own where not said. */
  readonly folder?: string;
  readonly env?: Readonly<Record<string, string>>;
  /** The Node that runs it; that of the tests where not said. */
  readonly node?: string;
}

/** `feedplot` with these arguments. */
export function feedplot(args: readonly string[], { folder = root, env = {}, node }: Surroundings = {}): Ran {
  if (!existsSync(program)) throw new Error('dist/feedplot.cjs is missing: run `npm run build` first.');
  const inherited = { ...process.env };
  for (const name of ['NO_COLOR', 'FORCE_COLOR', 'TERM']) delete inherited[name];
  const { status, stdout, stderr, error } = spawnSync(node ?? process.execPath, [program, ...args], {
    cwd: folder,
    env: { ...inherited, ...env },
    encoding: 'utf8',
    maxBuffer: 100_000_000,
    timeout: 60_000,
  });
  if (error) throw error;
  return { code: status, stdout, stderr };
}

/** A folder with these files, which is deleted when the test is over. Nothing above it has `.git`. */
export function folderWith(files: Readonly<Record<string, string | Uint8Array>>): string {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'feedplot-')));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  for (const [name, content] of Object.entries(files)) {
    const path = join(folder, name);
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, content);
  }
  return folder;
}

/** The Node that the machine has, when it is another than the project's own: what ships must run there too. */
export function machinesNode(): string | undefined {
  const folders = (process.env.PATH ?? '')
    .split(delimiter)
    .filter((folder) => !folder.includes('node_modules'));
  return folders.map((folder) => join(folder, 'node')).find((path) => existsSync(path));
}
