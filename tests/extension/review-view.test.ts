/** The view of a comparison, in a browser that stands in for the editor. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { headlineOf } from '../../src/documents/review/headline.ts';
import { reviewScenes } from '../../src/documents/review/scenes.ts';
import { sectionsOf } from '../../src/documents/review/sections.ts';
import { comparedText } from '../../src/documents/review/text.ts';
import { isFromReviewView, isToReviewView } from '../../src/extension/webview/review-messages.ts';
import { reviewPage } from '../../src/extension/webview/review-page.ts';
import type { ShownReview } from '../../src/server/protocol/review.ts';
import { root } from '../cli/command-line.ts';
import { reviewed, sideOf } from '../review/reviews.ts';
import { changed, kit, plan, withCamera } from '../review/shows.ts';
import { brokenRules } from '../support/accessibility.ts';
import { describeInBrowser, type Viewer } from '../support/browser.ts';
import { editorThemes, useTheme } from '../support/editor-colours.ts';

// A view of the editor has a secure origin, too.
const origin = 'https://view.test';
const show = changed(plan, 'import "kit.feedplot"', kit);

/** A review as the server sends it. */
function shown(old: string, fresh: string): ShownReview {
  const review = reviewed(old, fresh);
  return JSON.parse(
    JSON.stringify({
      plan: 'file:///show/show.feedplot',
      title: review.title,
      headline: headlineOf(review).join(', '),
      compared: comparedText(review),
      sections: sectionsOf(review).map((section) => ({
        ...section,
        entries: section.entries.map(({ place, ...entry }) => ({
          ...entry,
          place: place && { side: place.side, uri: place.file, range: {} },
        })),
      })),
      scenes: reviewScenes(sideOf(old, 'a').analysis, sideOf(fresh, 'b').analysis),
      loads: [],
    }),
  );
}

/** Unfolds every part of the list. */
async function openAll(page: Page): Promise<void> {
  await page.evaluate(() => {
    for (const details of document.querySelectorAll('details')) details.open = true;
  });
}

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
    route.fulfill({ contentType: 'text/html', body: reviewPage(`${origin}/review.js`, 'a-nonce') }),
  );
  await page.route(`${origin}/review.js`, (route) =>
    route.fulfill({
      contentType: 'text/javascript',
      body: readFileSync(join(root, 'dist/review.js'), 'utf8'),
    }),
  );
  await page.goto(`${origin}/page`);
  const told = () => page.evaluate(() => (window as unknown as { told: unknown[] }).told);
  const tell = (message: unknown) => page.evaluate((one) => window.postMessage(one, '*'), message);
  return { ...watched, told, tell };
}

test('a message is believed only when it is one that the other side sends', () => {
  expect(isFromReviewView({ kind: 'ready' })).toBe(true);
  expect(isFromReviewView({ kind: 'open', section: 0, entry: 3 })).toBe(true);
  for (const other of [
    null,
    'open',
    {},
    { kind: 'open' },
    { kind: 'open', section: -1, entry: 0 },
    { kind: 'open', section: 0.5, entry: 0 },
    { kind: 'open', section: 'file:///etc/passwd', entry: 0 },
  ])
    expect(isFromReviewView(other)).toBe(false);
  expect(isToReviewView({ kind: 'nothing', reason: 'x' })).toBe(true);
  for (const other of [null, {}, { kind: 'review' }, { kind: 'review', review: { sections: 1 } }])
    expect(isToReviewView(other)).toBe(false);
});

describeInBrowser('the view of a comparison', (viewer) => {
  test('shows both drawings with their marks and the list; a line opens its text by number', async () => {
    const { page, complaints, requests, told, tell } = await openView(viewer);
    expect(await told()).toEqual([{ kind: 'ready' }]);
    const review = shown(show, withCamera(show, 'close', 3));
    await tell({ kind: 'review', review });
    await page.locator('#after svg').waitFor({ timeout: 30_000 });
    expect(await page.locator('#headline').textContent()).toBe('1 screen or input changes, 5 steps on site');
    expect(await page.locator('#before g[data-id="close"]').count()).toBe(0);
    expect(await page.locator('#after g.added g[data-id="close"]').count()).toBe(1);
    expect(await page.locator('#after g.mark').count()).toBeGreaterThan(0);
    await page.locator('summary', { hasText: 'What changed in the plan' }).click();
    await page.getByRole('button', { name: /source close/ }).click();
    const section = review.sections.findIndex(({ name }) => name === 'things');
    const entry = review.sections[section]!.entries.findIndex(({ lead }) => lead.startsWith('source close'));
    expect((await told()).at(-1)).toEqual({ kind: 'open', section, entry });
    expect(complaints).toEqual([]);
    expect(requests).toEqual([`${origin}/review.js`]);
  });

  test.each(editorThemes)(
    'no rule of axe is broken, %s',
    async (theme) => {
      const { page, tell } = await openView(viewer);
      await useTheme(page, theme);
      await tell({ kind: 'review', review: shown(show, withCamera(show, 'close', 3)) });
      await page.locator('#after svg').waitFor({ timeout: 30_000 });
      await openAll(page);
      expect(await brokenRules(page)).toEqual([]);
      await page.close();
    },
    60_000,
  );

  test('by keys alone: every control has a name, and Tab comes to the drawings and to every line', async () => {
    const { page, told, tell } = await openView(viewer);
    await tell({ kind: 'review', review: shown(show, withCamera(show, 'close', 3)) });
    await page.locator('#after svg').waitFor({ timeout: 30_000 });
    await openAll(page);
    const wanted = await page.locator('#bar button, .frame, summary, li button').count();
    const reached = new Set<number>();
    await page.locator('#further').focus();
    for (let i = 0; i < wanted + 3; i++) {
      const at = await page.evaluate(() =>
        [...document.querySelectorAll('#bar button, .frame, summary, li button')].indexOf(
          document.activeElement!,
        ),
      );
      if (at >= 0) reached.add(at);
      await page.keyboard.press('Tab');
    }
    expect(reached.size).toBe(wanted);
    await page.getByRole('button', { name: /source close/ }).focus();
    await page.keyboard.press('Enter');
    expect((await told()).at(-1)).toMatchObject({ kind: 'open' });
    await page.close();
  }, 60_000);

  test('both drawings have one scale and move together', async () => {
    const { page, tell } = await openView(viewer);
    await tell({ kind: 'review', review: shown(show, withCamera(show, 'close', 3)) });
    await page.locator('#after svg').waitFor({ timeout: 30_000 });
    const boxIn = (side: string) => page.locator(`#${side} g[data-id="mixer"] rect`).first();
    const spot = async (side: string) => {
      const [box, frame] = [await boxIn(side).boundingBox(), await page.locator(`#${side}`).boundingBox()];
      return [box!.x - frame!.x, box!.y - frame!.y, box!.width].map((value) => Math.round(value));
    };
    expect(await spot('before')).toEqual(await spot('after'));
    for (let i = 0; i < 6; i++) await page.getByRole('button', { name: 'Larger' }).click();
    await page.locator('#before').evaluate((frame) => frame.scrollTo(90, 40));
    await expect.poll(() => page.locator('#after').evaluate((frame) => frame.scrollLeft)).toBe(90);
    expect(await spot('before')).toEqual(await spot('after'));
  });

  test('begins at what has changed, as large as the halves allow; later reviews leave the view alone', async () => {
    const { page, tell } = await openView(viewer);
    await page.setViewportSize({ width: 760, height: 700 });
    const many = Array.from({ length: 12 }, (_, i) => withCamera('', `far_${i}`, 3).split('\n')[1]).join(
      '\n',
    );
    const wide = `${show}${many}\n`.replace(/into box_p\.in3 over rg6 8 m (?=powered)/g, '');
    await tell({ kind: 'review', review: shown(wide, withCamera(wide, 'close', 3)) });
    await page.locator('#after svg').waitFor({ timeout: 30_000 });
    const width = () => page.locator('#after svg').evaluate((svg) => svg.getBoundingClientRect().width);
    const frame = (await page.locator('#after').boundingBox())!;
    const seen = (await page.locator('#after g[data-id="close"]').boundingBox())!;
    const begun = await width();
    await page.getByRole('button', { name: 'Fit' }).click();
    expect(await width()).toBeLessThan(begun);
    expect(seen.x).toBeGreaterThanOrEqual(frame.x);
    expect(seen.x + seen.width).toBeLessThanOrEqual(frame.x + frame.width);
    expect(seen.y).toBeGreaterThanOrEqual(frame.y);
    expect(seen.y + seen.height).toBeLessThanOrEqual(frame.y + frame.height);
    const fitted = await width();
    await tell({ kind: 'review', review: shown(wide, withCamera(wide, 'close', 4)) });
    await page.getByText('Box P · in4').first().waitFor({ state: 'attached' });
    expect(await width()).toBeCloseTo(fitted, 0);
    await page.getByRole('button', { name: 'Changes' }).click();
    expect(await width()).toBeGreaterThan(fitted);
  });

  test('text of a plan stays text, in the list and in the drawings', async () => {
    const { page, complaints, tell } = await openView(viewer);
    const evil = "<img src=x onerror='document.title=1'><script>document.title=2</script>";
    const fresh = changed(withCamera(show, 'close', 3), '"close camera"', `"${evil}"`);
    await tell({ kind: 'review', review: shown(show, fresh) });
    await page.locator('#after svg').waitFor({ timeout: 30_000 });
    expect(await page.locator('img, #list script, svg script').count()).toBe(0);
    expect(await page.title()).toBe('Comparison');
    expect(await page.locator('#list').textContent()).toContain('<img src=x');
    expect(complaints).toEqual([]);
  });

  test('why there is nothing to compare is said; a later review takes its place', async () => {
    const { page, tell } = await openView(viewer);
    await tell({ kind: 'nothing', reason: 'There is no commit "nowhere".' });
    await page.getByText('There is no commit "nowhere".').waitFor();
    await tell({ kind: 'review', review: shown(show, show) });
    await page.locator('#after svg').waitFor({ timeout: 30_000 });
    expect(await page.locator('#notice').isVisible()).toBe(false);
    expect(await page.locator('#headline').textContent()).toBe('nothing changes');
  });
});
