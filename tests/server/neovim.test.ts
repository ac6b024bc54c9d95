/** A real editor that is not ours, with the configuration that the README shows. */
import { execFile, execFileSync } from 'node:child_process';
import { chmodSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { promisify } from 'node:util';
import { expect, test } from 'vitest';
import { program } from './client.ts';
import { files, show } from './small-show.ts';

const root = path.join(import.meta.dirname, '../..');
const neovim = isThere('nvim');

function isThere(command: string): boolean {
  try {
    execFileSync(command, ['--version']);
    return true;
  } catch {
    return false;
  }
}

interface Seen {
  readonly findings: readonly { readonly line: number; readonly check: string; readonly message: string }[];
  readonly hover: string;
  readonly text: string;
}

if (!neovim) console.warn('SKIPPED, no Neovim for the test of another editor: install the package neovim.');

test.runIf(neovim || process.env.CI)(
  'Neovim shows findings, answers a hover and renames',
  async () => {
    const folder = mkdtempSync(path.join(tmpdir(), 'feedplot-neovim-'));
    try {
      const mistake = `${show}source lone at stage sends 1080p59.94\n`;
      for (const [name, text] of Object.entries({ ...files, 'show.feedplot': mistake }))
        writeFileSync(path.join(folder, name), text);
      const command = path.join(folder, 'feedplot');
      writeFileSync(command, `#!/bin/sh\nexec "${process.execPath}" "${program}" "$@"\n`);
      chmodSync(command, 0o755);
      const written = path.join(folder, 'seen.json');
      const settings = path.join(root, 'examples/editors/neovim.lua');
      const drive = path.join(import.meta.dirname, 'neovim.lua');
      await promisify(execFile)(
        'nvim',
        [
          '--headless',
          '--clean',
          '-u',
          settings,
          path.join(folder, 'show.feedplot'),
          '-c',
          `luafile ${drive}`,
        ],
        {
          env: {
            ...process.env,
            PATH: `${folder}${path.delimiter}${process.env.PATH}`,
            SEEN: written,
            XDG_STATE_HOME: folder,
          },
          timeout: 90_000,
        },
      );
      const seen = JSON.parse(readFileSync(written, 'utf8')) as Seen;
      expect(seen.findings).toEqual([expect.objectContaining({ check: 'source-unused' })]);
      expect(seen.hover).toMatch(/53\.7 %/);
      expect(seen.text).toBe(mistake.replaceAll('trunk', 'main_line').trimEnd());
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  },
  120_000,
);
