/** Real editors that are not ours, with the configurations that the README shows. */
import { execFile, execFileSync } from 'node:child_process';
import { chmodSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { promisify } from 'node:util';
import { expect, test } from 'vitest';
import { program } from './client.ts';
import { files, show } from './small-show.ts';

const root = path.join(import.meta.dirname, '../..');
const neovim = succeeds('nvim', '--version');
const emacs = succeeds('emacs', '--batch', '--eval', "(progn (package-initialize) (require 'eglot))");

function succeeds(command: string, ...parameters: string[]): boolean {
  try {
    execFileSync(command, parameters, { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
}

const mistake = `${show}source lone at stage sends 1080p59.94\n`;

/**
 * Runs an editor in a folder with a plan, with `feedplot` in the search path.
 *
 * @param parameters What the editor is started with.
 * @param settings The file of `examples/editors`.
 * @returns what it wrote into the file that `SEEN` names
 */
async function run(
  editor: string,
  settings: string,
  parameters: (plan: string, settings: string) => string[],
): Promise<Record<string, unknown>> {
  const folder = mkdtempSync(path.join(tmpdir(), 'feedplot-other-editor-'));
  try {
    for (const [name, text] of Object.entries({ ...files, 'show.feedplot': mistake }))
      writeFileSync(path.join(folder, name), text);
    const command = path.join(folder, 'feedplot');
    writeFileSync(command, `#!/bin/sh\nexec "${process.execPath}" "${program}" "$@"\n`);
    chmodSync(command, 0o755);
    const written = path.join(folder, 'seen.json');
    const plan = path.join(folder, 'show.feedplot');
    const configuration = path.join(root, 'examples/editors', settings);
    await promisify(execFile)(editor, parameters(plan, configuration), {
      env: {
        ...process.env,
        PATH: `${folder}${path.delimiter}${process.env.PATH}`,
        SEEN: written,
        PLAN: plan,
        SETTINGS: configuration,
        XDG_STATE_HOME: folder,
      },
      timeout: 90_000,
    });
    return JSON.parse(readFileSync(written, 'utf8'));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const renamed = mistake.replaceAll('trunk', 'main_line');
const drive = (file: string) => path.join(import.meta.dirname, file);

if (!neovim) console.warn('SKIPPED, no Neovim for the test of another editor: install the package neovim.');

test.runIf(neovim || process.env.CI)(
  'Neovim shows findings, answers a hover and renames',
  async () => {
    const seen = await run('nvim', 'neovim.lua', (plan, settings) => [
      ...['--headless', '--clean', '-u', settings, plan, '-c', `luafile ${drive('neovim.lua')}`],
    ]);
    expect(seen.findings).toEqual([expect.objectContaining({ check: 'source-unused' })]);
    expect(seen.hover).toMatch(/53\.7 %/);
    expect(seen.text).toBe(renamed.trimEnd());
  },
  120_000,
);

if (!emacs)
  console.warn(
    'SKIPPED, no Emacs with eglot for the test of another editor: install the packages emacs-nox and elpa-eglot.',
  );

test.runIf(emacs || process.env.CI)(
  'Emacs shows findings, answers a hover and renames',
  async () => {
    const seen = await run('emacs', 'emacs.el', () => ['--batch', '--load', drive('emacs.el')]);
    expect(seen.findings).toEqual([expect.stringContaining('source-unused')]);
    expect(seen.findings).toEqual([expect.stringContaining('lone goes nowhere')]);
    expect(seen.hover).toMatch(/53\.7 %/);
    expect(seen.text).toBe(renamed);
  },
  120_000,
);
