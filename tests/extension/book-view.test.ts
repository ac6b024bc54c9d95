/** The view of the papers, in a browser that stands in for the editor. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { bookParts } from '../../src/documents/book/book.ts';
import { isFromBookView } from '../../src/extension/webview/book-messages.ts';
import { bookPreviewPage } from '../../src/extension/webview/book-page.ts';
import { root } from '../cli/command-line.ts';
import { brokenRules } from '../support/accessibility.ts';
import { describeInBrowser, type Viewer } from '../support/browser.ts';
import { checkedExample, checkedPlan } from '../support/example-plans.ts';
import { hostileShow } from '../support/hostile-show.ts';

// A view of the editor has a secure origin, too.
const origin = 'https://view.test';

async function openView(viewer: Viewer) {
  const watched = await viewer.open();
  const { page } = watched;
  await page.addInitScript(() => {
    const told: unknown[] = [];
    Object.assign(window, {
      told,
      acquireVsCodeApi: () => ({ postMessage: (message: unknown) => told.push(message) }),
    });
  });
  await page.route(`${origin}/page`, (route) =>
    route.fulfill({
      contentType: 'text/html',
      body: bookPreviewPage({
        script: `${origin}/book.js`,
        layout: `${origin}/layout-worker.js`,
        nonce: 'a-nonce',
        cspSource: origin,
      }),
    }),
  );
  await page.route(`${origin}/book.js`, (route) =>
    route.fulfill({ contentType: 'text/javascript', body: readFileSync(join(root, 'dist/book.js'), 'utf8') }),
  );
  await page.route(`${origin}/layout-worker.js`, (route) =>
    route.fulfill({
      contentType: 'text/javascript',
      body: readFileSync(join(root, 'dist/layout-worker.js'), 'utf8'),
    }),
  );
  await page.goto(`${origin}/page`);
  const told = () => page.evaluate(() => (window as unknown as { told: unknown[] }).told);
  const tell = (message: unknown) => page.evaluate((one) => window.postMessage(one, '*'), message);
  return { ...watched, told, tell };
}

test('a message from the view is believed only when it is one that the view sends', () => {
  expect(isFromBookView({ kind: 'ready' })).toBe(true);
  expect(isFromBookView({ kind: 'save', name: 'a', html: '<p>' })).toBe(true);
  expect(isFromBookView({ kind: 'open', id: 'mixer', what: 'row' })).toBe(true);
  for (const other of [null, 'save', {}, { kind: 'save', name: 'a' }, { kind: 'open', name: 'a', html: '' }])
    expect(isFromBookView(other)).toBe(false);
});

describeInBrowser('the view of the papers', (viewer) => {
  test('shows the book with its drawings, keeps its place when the text changes, and hands over one file', async () => {
    const { page, complaints, requests, told, tell } = await openView(viewer);
    expect(await told()).toEqual([{ kind: 'ready' }]);
    const parts = bookParts(checkedExample('finals'));
    await tell({ kind: 'book', name: 'finals', parts });
    await page.getByText('As the text is now.').waitFor({ timeout: 30_000 });
    expect(await page.locator('h1').textContent()).toBe('Harbour Hall science final');
    expect(await page.locator('figure svg').count()).toBeGreaterThan(5);

    await page.evaluate(() => window.scrollTo(0, 4000));
    await tell({
      kind: 'book',
      name: 'finals',
      parts: { ...parts, cover: parts.cover.replace('science', 'SCIENCE') },
    });
    await page.waitForFunction(() => document.querySelector('h1')?.textContent?.includes('SCIENCE'));
    expect(await page.evaluate(() => window.scrollY)).toBe(4000);

    await page.locator('#save').click();
    await page.waitForFunction(() => (window as unknown as { told: unknown[] }).told.length > 1);
    const [, saved] = (await told()) as [unknown, { kind: string; name: string; html: string }];
    expect([saved.kind, saved.name]).toEqual(['save', 'finals']);
    expect(saved.html).toMatch(/^<!DOCTYPE html>[\s\S]*default-src 'none'[\s\S]*SCIENCE[\s\S]*<\/html>\n$/);
    expect(complaints).toEqual([]);
    // Its own script and its own worker, from the extension; the worker starts from a copy.
    expect(requests.filter((address) => !address.startsWith('blob:'))).toEqual([
      `${origin}/book.js`,
      `${origin}/layout-worker.js`,
    ]);
    await page.close();
  }, 60_000);

  test('a click on a row, a patched socket or a drawn thing asks for its text, marking words does not', async () => {
    const { page, told, tell } = await openView(viewer);
    await tell({ kind: 'book', name: 'finals', parts: bookParts(checkedExample('finals')) });
    await page.getByText('As the text is now.').waitFor({ timeout: 30_000 });
    const asked = async () => (await told()).slice(1);
    await page.locator('#cables tr[data-of="trunk"] td').nth(1).click();
    await page.locator('#patch tr[data-of="box_d.in1"] td').nth(1).click();
    await page.locator('#drawing-whole-0 g[data-id="mixer"] text').first().click();
    await page.locator('#cables h2').click();
    expect(await asked()).toEqual([
      { kind: 'open', id: 'trunk', what: 'row' },
      { kind: 'open', id: 'box_d', what: 'row' },
      { kind: 'open', id: 'mixer', what: expect.any(String) },
    ]);
    await page.locator('#cables tr[data-of="trunk"] data').first().dblclick();
    // The first click of the two asks; the second marks a word.
    expect(await asked()).toHaveLength(4);
    await page.close();
  }, 60_000);

  test('no rule of axe is broken', async () => {
    const { page, tell } = await openView(viewer);
    await tell({ kind: 'book', name: 'starter', parts: bookParts(checkedExample('starter')) });
    await page.getByText('As the text is now.').waitFor({ timeout: 30_000 });
    expect(await brokenRules(page)).toEqual([]);
    await page.close();
  }, 90_000);

  test('hostile names act on nothing in it', async () => {
    const { page, complaints, tell } = await openView(viewer);
    await tell({ kind: 'book', name: 'x', parts: bookParts(checkedPlan(hostileShow)) });
    await page.getByText('As the text is now.').waitFor({ timeout: 30_000 });
    expect(await page.locator('#book img, #book script, #book b').count()).toBe(0);
    expect(complaints).toEqual([]);
    await page.close();
  }, 60_000);

  test('says why there is nothing', async () => {
    const { page, tell } = await openView(viewer);
    await tell({ kind: 'nothing', reason: 'No plan imports this file, so it has no papers.' });
    await page.getByText('No plan imports this file').waitFor();
    await page.close();
  });
});
