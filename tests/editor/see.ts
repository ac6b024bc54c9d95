/** Looking at a page until it shows what is wanted, and telling well when it does not. */
import { mkdirSync, mkdtempSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';

/** A machine that builds and tests at once is slow to show things. */
const PATIENCE_ms = process.env.CI ? 60_000 : 20_000;

/** What `look` found: anything but these three. */
type Seen<T> = Exclude<T, undefined | null | false>;

interface Patience {
  /** How long to look. */
  limit_ms?: number;
  /** Says what stands there instead, for the message of the failure. */
  instead?: () => Promise<unknown>;
}

/**
 * Looks again and again until `look` finds something.
 * @param wanted what is looked for, as in "The workbench did not show …"
 * @returns what it found
 * @throws when it was not found in time: the message has what stands there instead and a screenshot's path
 */
export async function see<T>(
  page: Page,
  wanted: string,
  look: () => Promise<T>,
  { limit_ms = PATIENCE_ms, instead }: Patience = {},
): Promise<Seen<T>> {
  const end_ms = Date.now() + limit_ms;
  for (;;) {
    const found = await look();
    if (found !== undefined && found !== null && found !== false) return found as Seen<T>;
    if (Date.now() > end_ms) return fail(page, `${wanted} within ${limit_ms / 1000} s`, await instead?.());
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}

/** Fails with what was wanted, what stands there instead and a screenshot's path. */
export async function fail(page: Page, wanted: string, instead?: unknown): Promise<never> {
  const picture = await takeScreenshot(page, `failure-${Date.now()}`).catch((error) => `none (${error})`);
  const told = instead === undefined ? '' : `It showed: ${JSON.stringify(instead, null, 1)}\n`;
  const errors = await recentErrors(page);
  throw new Error(`The workbench did not show ${wanted}.\n${told}Screenshot: ${picture}\n${errors}`);
}

/** The last errors in the browser's console: where an extension host in the browser complains. */
async function recentErrors(page: Page): Promise<string> {
  const messages = (await page.consoleMessages()).filter((message) => message.type() === 'error');
  const lines = messages.slice(-5).map((message) => message.text().slice(0, 500));
  return lines.length > 0 ? `Last errors in the browser's console:\n${lines.join('\n')}` : '';
}

/**
 * Takes a picture of the whole window, with movements at their end.
 * @returns its path, in the folder that FEEDPLOT_SCREENSHOTS names or else in a temporary one
 */
export async function takeScreenshot(page: Page, name: string): Promise<string> {
  const file = path.join(screenshotFolder(), `${name}.png`);
  await page.screenshot({ path: file, animations: 'disabled' });
  return file;
}

let temporaryFolder: string | undefined;

function screenshotFolder(): string {
  const chosen = process.env.FEEDPLOT_SCREENSHOTS;
  if (chosen) {
    mkdirSync(chosen, { recursive: true });
    return chosen;
  }
  temporaryFolder ??= mkdtempSync(path.join(os.tmpdir(), 'feedplot-screenshots-'));
  return temporaryFolder;
}
