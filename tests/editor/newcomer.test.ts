/**
 * A newcomer writes the starter plan from an empty file: every word that is not a new name, a number or a text is chosen
 * from the completion list, and a slip is mended by a quick fix.
 */
import { copyFileSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Word, wordsToWrite } from '../support/words-to-write.ts';
import { findInstallation } from './installation.ts';
import { openNodeHost } from './node-host.ts';
import { packageExtension } from './package-extension.ts';
import { see } from './see.ts';
import type { Workbench } from './workbench.ts';

const { installation } = findInstallation();
const starter = path.join(import.meta.dirname, '../../examples/starter');
const text = readFileSync(path.join(starter, 'starter.feedplot'), 'utf8');

/** The statements of the starter plan without comments, one a line as they are written. */
const statements = wordsToWrite(text);

const textsOf = (words: readonly Word[][]) =>
  words.map((statement) => statement.map(({ text: word }) => word));

describe.runIf(installation)('a newcomer', () => {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'feedplot-newcomer-'));
  let workbench: Workbench;

  beforeAll(async () => {
    const work = path.join(folder, 'work');
    mkdirSync(work);
    copyFileSync(path.join(starter, 'kit.feedplot'), path.join(work, 'kit.feedplot'));
    writeFileSync(path.join(work, 'show.feedplot'), '');
    // What the editor closes or indents by itself would have to be typed over; the list is all that is looked at.
    const settings = {
      'editor.autoClosingBrackets': 'never',
      'editor.autoClosingQuotes': 'never',
      'editor.autoIndent': 'none',
      'editor.formatOnType': false,
    };
    workbench = await openNodeHost(installation!, {
      vsix: await packageExtension(folder),
      folder: work,
      settings,
    });
    await workbench.openFile('show.feedplot');
    await workbench.goTo(1, 1);
  }, 180_000);

  afterAll(async () => {
    await workbench?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  const saved = () => readFileSync(path.join(workbench.folder, 'show.feedplot'), 'utf8');

  /** Types the first letters of a word and takes it from the list. */
  async function choose(word: string): Promise<void> {
    const { page } = workbench;
    await page.keyboard.type(word.slice(0, 2));
    const rows = page.locator('.suggest-widget.visible .monaco-list-row');
    const row = rows.filter({ has: page.locator('.label-name').getByText(word, { exact: true }) }).first();
    await see(page, `"${word}" in the list`, async () => {
      if (await row.isVisible()) return true;
      if (!(await rows.first().isVisible())) await page.keyboard.press('Control+Space');
      await page.waitForTimeout(150);
      return undefined;
    });
    await see(page, `"${word}" chosen in the list`, async () => {
      if (/\bfocused\b/.test((await row.getAttribute('class')) ?? '')) return true;
      await page.keyboard.press('ArrowDown');
      return undefined;
    });
    await page.keyboard.press('Tab');
    await see(page, 'that the list is gone', async () => !(await rows.first().isVisible()));
  }

  /**
   * What is as short as the letters that find it is typed. A statement is offered as a whole pattern; who knows what
   * comes types its first word.
   */
  async function write({ text: word, offered, opens }: Word): Promise<void> {
    if (offered && !opens && word.length > 2) await choose(word);
    else await workbench.page.keyboard.type(word);
  }

  it('writes the starter plan with what the list offers', async () => {
    for (const words of statements) {
      for (const word of words) {
        await workbench.page.keyboard.type(word.before);
        await write(word);
      }
      await workbench.page.keyboard.press('Escape');
      await workbench.page.keyboard.press('Enter');
    }
    await workbench.page.keyboard.press('Control+s');
    await see(workbench.page, 'the plan on the disk', async () => saved() !== '');
    expect(textsOf(wordsToWrite(saved()))).toEqual(textsOf(statements));
    await workbench.waitForNoProblem();
    await workbench.screenshot('newcomer');
  }, 600_000);

  it('mends a slip with a quick fix', async () => {
    const line = saved()
      .split('\n')
      .findIndex((one) => one.startsWith('feed program ->'));
    await workbench.goTo(line + 1, 'feed program'.length + 1);
    await workbench.page.keyboard.press('Backspace');
    await workbench.waitForProblem('progra');
    const [fix] = await workbench.quickFixesAt(line + 1, 'progra');
    expect(fix).toMatch(/program/);
    await workbench.page.keyboard.press('Enter');
    await workbench.waitForNoProblem();
  }, 120_000);
});
