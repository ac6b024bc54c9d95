/** The papers beside the text, in a real VS Code with the packaged extension. */
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Theme } from './browser.ts';
import { findInstallation } from './installation.ts';
import { openNodeHost } from './node-host.ts';
import { packageExtension } from './package-extension.ts';
import { see } from './see.ts';
import type { Workbench } from './workbench.ts';

const finals = path.join(import.meta.dirname, '../../examples/finals');
const lines = readFileSync(path.join(finals, 'finals.feedplot'), 'utf8').split('\n');
const { installation, missing } = findInstallation();
if (!installation) {
  const reason = `no editor for the tests of the papers: ${missing.join('; ')}`;
  if (process.env.CI || process.env.FEEDPLOT_REQUIRE_EDITOR)
    it('finds the editor', () => expect.fail(reason));
  else console.warn(`SKIPPED, ${reason}.`);
}

/** Line and column, from 1, of the first occurrence of a text in the example. */
function positionOf(text: string): { line: number; column: number } {
  const index = lines.findIndex((line) => line.includes(text));
  if (index < 0) throw new Error(`The example has no "${text}".`);
  return { line: index + 1, column: lines[index]!.indexOf(text) + 1 };
}

describe.runIf(installation).each<Theme>(['light', 'dark'])('the papers in a workbench, %s', (theme) => {
  const packages = mkdtempSync(path.join(os.tmpdir(), 'feedplot-package-'));
  let workbench: Workbench;

  beforeAll(async () => {
    const vsix = await packageExtension(packages);
    workbench = await openNodeHost(installation!, { vsix, folder: finals, theme });
    await workbench.openFile('finals.feedplot');
    await workbench.runCommand('View: Toggle Primary Side Bar Visibility');
    await workbench.runCommand('Feedplot: Show the papers beside the text');
  }, 240_000);

  afterAll(async () => {
    await workbench?.close();
    rmSync(packages, { recursive: true, force: true });
  });

  const view = () => workbench.webview();
  const state = async () => (await view().locator('#state').textContent()) ?? '';
  const seesNow = () =>
    see(
      workbench.page,
      'the papers as the text is now',
      async () => /As the text is now/.test(await state()),
      {
        limit_ms: 90_000,
        instead: state,
      },
    );

  it('shows the whole book with its drawings', async () => {
    await seesNow();
    expect(await view().locator('h1').textContent()).toBe('Harbour Hall science final');
    expect(await view().locator('figure.drawing svg').count()).toBeGreaterThan(5);
    expect(await view().locator('.cover .state').textContent()).toBe('No finding is open.');
    await workbench.screenshot(`papers, cover, ${theme}`);
    await view().locator('#patch').scrollIntoViewIfNeeded();
    await workbench.screenshot(`papers, patch cards, ${theme}`);
  }, 120_000);

  it('follows the typing, which goes on meanwhile', async () => {
    const { line, column } = positionOf('"Judges\' monitor"');
    await workbench.typeAt(line, column + 1, 'Front ');
    // The editor answers while the papers are made: the cursor moves and the text is there.
    expect(await workbench.lineText(line)).toContain('Front Judges');
    await see(workbench.page, 'the new name in the papers', async () =>
      /Front Judges' monitor/.test((await view().locator('#line-check').textContent()) ?? ''),
    );
    await seesNow();
    await workbench.undoAll();
    await see(
      workbench.page,
      'the old name in the papers',
      async () => !/Front Judges/.test((await view().locator('#line-check').textContent()) ?? 'Front Judges'),
    );
  }, 120_000);

  it('says on the cover what is open', async () => {
    const { line } = positionOf('node mixer');
    await workbench.typeAt(line, 1, 'feed nobody -> mixer.in1\n');
    await see(workbench.page, 'an open error on the cover', async () =>
      /^NOT READY: \d+ error/.test((await view().locator('.cover .state').textContent()) ?? ''),
    );
    await workbench.screenshot(`papers, open findings, ${theme}`);
    await workbench.undoAll();
    await see(workbench.page, 'a cover without findings', async () =>
      /No finding is open/.test((await view().locator('.cover .state').textContent()) ?? ''),
    );
  }, 120_000);

  it('leads from a row to its text', async () => {
    await view().locator('#cables tr[data-of="trunk"] td').nth(1).click();
    const crumbs = workbench.page.locator('.breadcrumbs-control').first();
    await see(
      workbench.page,
      'the cursor in the statement of the trunk',
      async () => /trunk/.test((await crumbs.textContent()) ?? ''),
      { instead: () => crumbs.textContent() },
    );
    await workbench.screenshot(`papers, row and its text, ${theme}`);
  }, 60_000);

  it('saves one file, which a browser prints', async () => {
    await view().locator('#save').click();
    const input = workbench.page.locator('.quick-input-widget input[type=text]');
    await see(
      workbench.page,
      'where to save it',
      async () =>
        (await input.isVisible()) && (await input.inputValue()).endsWith('/finals/finals-papers.html'),
    );
    await workbench.page.keyboard.press('Enter');
    const file = path.join(workbench.folder, 'finals-papers.html');
    await see(
      workbench.page,
      'the saved papers',
      async () => existsSync(file) && readFileSync(file).length > 0,
    );
    const html = readFileSync(file, 'utf8');
    expect(html).toMatch(/^<!DOCTYPE html>[\s\S]*default-src 'none'[\s\S]*<\/html>\n$/);
    expect(html).toContain('<h2 id="faults-title">Fault cards</h2>');
    const toast = workbench.page.locator('.notification-toast').first();
    await see(workbench.page, 'what to do with the file', async () =>
      /A browser prints them/.test((await toast.textContent()) ?? ''),
    );
  }, 60_000);

  it('asks nothing of the network', () => {
    // What a webview reads of the extension has such an address, which the editor itself answers in the browser.
    const own = /^https:\/\/[\w+.-]+\.vscode-resource\.vscode-cdn\.net\/.*\/dist\/[\w-]+\.js$/;
    expect(workbench.externalRequests().filter((address) => !own.test(address))).toEqual([]);
  });
});
