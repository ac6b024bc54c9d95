/** Commands, actions and what stands at the edge of the window, in a real VS Code with the packaged extension. */
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { files, show } from '../server/small-show.ts';
import { findInstallation } from './installation.ts';
import { openNodeHost } from './node-host.ts';
import { packageExtension } from './package-extension.ts';
import { see } from './see.ts';
import type { Workbench } from './workbench.ts';

const { installation } = findInstallation();

/** A show with one thing that can be accepted: a camera that goes nowhere. */
const lone = `${show}source lone at stage sends 1080p59.94\n`;
const lineOf = (text: string) => lone.split('\n').findIndex((line) => line.startsWith(text)) + 1;

describe.runIf(installation)('the packaged extension, command by command', () => {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'feedplot-commands-'));
  let workbench: Workbench;

  beforeAll(async () => {
    const work = path.join(folder, 'work');
    mkdirSync(path.join(work, 'empty'), { recursive: true });
    for (const [name, text] of Object.entries({ ...files, 'show.feedplot': lone }))
      writeFileSync(path.join(work, name), text);
    workbench = await openNodeHost(installation!, { vsix: await packageExtension(folder), folder: work });
    await workbench.openFile('show.feedplot');
  }, 180_000);

  afterAll(async () => {
    await workbench?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  const shows = (what: string, text: string | RegExp, where = 'body') =>
    see(workbench.page, what, () => workbench.page.locator(where).getByText(text).first().isVisible());

  it('tells at the edge how the plan stands and which link has the most on it', async () => {
    await shows('the state of the plan', /trunk 53\.7 %/, '.statusbar');
  }, 60_000);

  it('shows the figures in the text', async () => {
    const text = () =>
      workbench.page.locator('.editor-group-container.active .view-lines').first().textContent();
    await workbench.goTo(lineOf('link trunk'), 1);
    await see(workbench.page, 'the load of the trunk behind it', async () =>
      ((await text()) ?? '').replaceAll('\u00a0', ' ').includes('53.7 % →'),
    );
  }, 60_000);

  it('accepts a finding with a reason that it asks for', async () => {
    await workbench.goTo(lineOf('source lone'), 9);
    await workbench.waitForSquiggle(lineOf('source lone'), 'warning');
    const titles = await workbench.quickFixesAt(lineOf('source lone'), 'lone');
    expect(titles).toContain('Accept this with a reason: source-unused');
    const entry = workbench.page
      .locator('.action-widget .monaco-list-row.action')
      .filter({ hasText: 'Accept' });
    await workbench.screenshot('accept');
    await entry.first().click();
    const question = workbench.page.locator('.quick-input-widget').filter({ hasText: 'Accept this finding' });
    await see(workbench.page, 'the question for a reason', () => question.isVisible());
    await workbench.page.keyboard.type('kept for the rehearsal');
    await workbench.page.keyboard.press('Enter');
    await see(workbench.page, 'that the question is gone', async () => !(await question.isVisible()));
    const line = lone.split('\n').length;
    await see(workbench.page, 'the line that accepts', async () =>
      (await workbench.lineText(line)).includes('accept source-unused on lone "kept for the rehearsal"'),
    );
    await workbench.undoAll();
  }, 90_000);

  it('leads from a finding to what its check means', async () => {
    const line = lineOf('source lone');
    await workbench.hoverAt(line, 'lone', 'source-unused');
    const link = workbench.page.locator('.monaco-hover a').filter({ hasText: 'source-unused' }).first();
    await link.click();
    const page = workbench.webview().locator('body');
    await see(workbench.page, 'the explanation, set as a page', async () =>
      /How it is judged\..*What mends it\./s.test((await page.textContent()) ?? ''),
    );
    await workbench.screenshot('explanation');
    await workbench.runCommand('View: Close Editor');
  }, 90_000);

  it('leads from the line above a node to the feeds that go through it', async () => {
    await workbench.goTo(lineOf('node box_s'), 1);
    const lens = workbench.page
      .locator('.codelens-decoration a')
      .filter({ hasText: 'carries 4 pictures' })
      .first();
    await see(workbench.page, 'the line above the node', () => lens.isVisible());
    await lens.click();
    await shows('the feeds in a list', 'feed close -> mixer.in2', '.zone-widget');
    await workbench.page.keyboard.press('Escape');
  }, 60_000);

  it('follows the pictures from a source, and back from a screen', async () => {
    const list = '.part.sidebar';
    await workbench.goTo(lineOf('source wide'), 9);
    await workbench.runCommand('Feedplot: Follow the pictures from here');
    await shows('the box that the camera goes into', 'box_s', list);
    await workbench.screenshot('follow');
    await workbench.goTo(lineOf('destination screen'), 15);
    await workbench.runCommand('Feedplot: Show what feeds this');
    await shows('the picture that comes to the screen', /program, clean/, list);
  }, 90_000);

  it('starts the server anew, which then answers again', async () => {
    await workbench.runCommand('View: Show Explorer');
    await workbench.runCommand('Feedplot: Restart the language server');
    expect(await workbench.hoverAt(lineOf('link trunk'), 'trunk', /53\.7 %/)).toMatch(/5\.368 Gb\/s/);
  }, 90_000);

  it('draws the plan beside its text', async () => {
    await workbench.goTo(1, 1);
    await workbench.runCommand('Feedplot: Show the drawing beside the text');
    const drawing = workbench.webview().locator('svg').first();
    await see(workbench.page, 'the drawing', () => drawing.isVisible());
    await see(workbench.page, 'the trunk in it', async () => /T1/.test((await drawing.textContent()) ?? ''));
    await workbench.screenshot('drawing');
    await workbench.runCommand('View: Close All Editors');
    await workbench.openFile('show.feedplot');
  }, 90_000);

  it('shows the papers of the plan beside its text', async () => {
    await workbench.goTo(1, 1);
    await workbench.runCommand('Feedplot: Show the papers beside the text');
    const papers = workbench.webview().locator('body');
    await see(workbench.page, 'the papers', async () =>
      /Small show/.test((await papers.textContent()) ?? ''),
    );
    await workbench.screenshot('papers');
    await workbench.runCommand('View: Close All Editors');
    await workbench.openFile('show.feedplot');
  }, 90_000);

  it('has first steps, which lead to a new plan', async () => {
    await workbench.runCommand('Welcome: Open Walkthrough...');
    await workbench.page.keyboard.type('First steps with Feedplot');
    await workbench.page.keyboard.press('Enter');
    await shows('the first step', 'Write a plan that works', '.gettingStartedContainer');
    await workbench.screenshot('first steps');
  }, 60_000);

  it('writes a new plan that works', async () => {
    await workbench.page.locator('.gettingStartedContainer').getByText('New plan').first().click();
    const dialog = workbench.page.locator('.quick-input-widget');
    const folderRow = dialog.locator('.monaco-list-row').filter({ hasText: 'empty' });
    await see(workbench.page, 'the folders to choose from', () => folderRow.isVisible());
    await folderRow.click();
    const chosen = () => dialog.locator('input[type=text]').inputValue();
    await see(workbench.page, 'the folder chosen', async () => (await chosen()).endsWith('/empty/'));
    await dialog.getByText('Write the plan here').click();
    const written = path.join(workbench.folder, 'empty/show.feedplot');
    // A file is there before its text is.
    await see(
      workbench.page,
      'the new plan on the disk',
      async () => existsSync(written) && /^plan "Evening lecture"/m.test(readFileSync(written, 'utf8')),
    );
    await see(workbench.page, 'the new plan in front', () =>
      workbench.page.locator('.tab.active[data-resource-name="show.feedplot"]').isVisible(),
    );
    await shows('the state of the new plan', /trunk 80\.5 %/, '.statusbar');
  }, 90_000);

  it('shows its log', async () => {
    await workbench.runCommand('Feedplot: Show the log');
    const chosen = workbench.page.locator(
      '.part.panel .actions-container select, .part.panel .monaco-select-box',
    );
    await see(workbench.page, 'the log of the extension', async () =>
      (await chosen.allInnerTexts()).join(' ').includes('Feedplot'),
    );
  }, 60_000);

  it('has asked nothing of the network in all that', () => {
    // Files that the editor's own views and ours read from this machine have such an address, which never leaves it.
    const own = /^https:\/\/[\w+.-]+\.vscode-resource\.vscode-cdn\.net\//;
    expect(workbench.externalRequests().filter((address) => !own.test(address))).toEqual([]);
  });
});
