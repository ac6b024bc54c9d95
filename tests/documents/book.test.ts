/** The book as a person's browser shows it: its figures, its policy, its accessibility, its pages. */
import axe from 'axe-core';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, test } from 'vitest';
import { bookParts, bookSections } from '../../src/documents/book/book.ts';
import { bookPage } from '../../src/documents/book/page.ts';
import { cssString } from '../../src/documents/book/style.ts';
import { placeScene } from '../../src/documents/drawing/place-scene.ts';
import { describeInBrowser, type Viewer } from '../support/browser.ts';
import { type CheckedExample, checkedExample, checkedPlan } from '../support/example-plans.ts';
import { hostileLabels, hostileShow } from '../support/hostile-show.ts';

async function bookOf(checked: CheckedExample, wanted?: ReadonlySet<string>): Promise<string> {
  const parts = bookParts(checked, wanted);
  return bookPage(parts, await Promise.all(parts.drawings.map(({ scene }) => placeScene(scene))));
}

const finals = checkedExample('finals');
const arena = checkedExample('arena');
const hostile = checkedPlan(hostileShow);
const wholeBooks = new Map<CheckedExample, Promise<string>>();

/** The whole book, made once: its layout takes longest. */
function wholeBookOf(checked: CheckedExample): Promise<string> {
  const book = wholeBooks.get(checked) ?? bookOf(checked);
  wholeBooks.set(checked, book);
  return book;
}

describe('text', () => {
  test('a string of CSS holds nothing that could end it or the style around it', () => {
    expect(cssString('a"b\\c</style>\n')).toBe('"a\\22 b\\5c c\\3c \\2f style\\3e \\a "');
    expect(cssString('日本 – C')).toBe('"日本 – C"');
  });

  test('a section that is asked for stands alone, without a cover', async () => {
    const html = await bookOf(finals, new Set(['line-check']));
    expect(html.match(/<h2/g)).toHaveLength(1);
    expect(html).toContain('<h2 id="line-check-title">Line check</h2>');
    expect(html).not.toContain('class="cover"');
  });

  test('every section can be asked for, of a plan that has nothing for it too', async () => {
    const empty = checkedPlan('plan "Empty" { }');
    for (const section of bookSections) {
      expect(await bookOf(empty, new Set([section])), section).toContain('<main>');
      expect(await bookOf(finals, new Set([section])), section).toMatch(/<h2/);
    }
  });

  test('the cover says what is open: nothing, or the errors first', async () => {
    expect(await wholeBookOf(finals)).toContain('No finding is open.');
    const broken = checkedPlan('plan "Broken" { }\nplace a\nfeed x -> y\n');
    expect(broken.findings.some(({ severity }) => severity === 'error')).toBe(true);
    expect(await bookOf(broken)).toMatch(
      /NOT READY: \d+ errors? and \d+ warnings? open.*<strong>ERROR<\/strong>/s,
    );
  });
});

async function open(viewer: Viewer, html: string) {
  const watched = await viewer.open();
  await watched.page.route('http://book.test/**', (route) =>
    route.fulfill({ body: html, contentType: 'text/html' }),
  );
  await watched.page.goto('http://book.test/book.html');
  return watched;
}

describeInBrowser('the book in a browser', (viewer) => {
  test('loads nothing, runs nothing, and its policy finds nothing to complain of', async () => {
    for (const checked of [finals, arena, hostile]) {
      const { page, requests, complaints } = await open(viewer, await wholeBookOf(checked));
      expect(await page.evaluate(() => document.scripts.length)).toBe(0);
      expect(requests).toEqual([]);
      expect(complaints).toEqual([]);
      // Its own style is applied: the policy has the right hash.
      expect(
        await page
          .locator('table')
          .first()
          .evaluate((table) => getComputedStyle(table).borderCollapse),
      ).toBe('collapse');
      await page.close();
    }
  }, 60_000);

  test('what a name says in markup is only words', async () => {
    const { page } = await open(viewer, await wholeBookOf(hostile));
    expect(await page.title()).toBe('</title><script>alert(1)</script> ../../x');
    const text = await page.evaluate(() => document.body.textContent ?? '');
    for (const label of Object.values(hostileLabels)) expect(text).toContain(label);
    expect(await page.locator('img, b, iframe, script').count()).toBe(0);
    // No name, however long, makes the page wider than the paper.
    const tooWide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    expect(tooWide).toBeLessThanOrEqual(0);
    await page.close();
  }, 60_000);

  test.each(['finals', 'arena'])(
    '%s: axe finds nothing wrong',
    async (name) => {
      const { page } = await open(viewer, await bookOf(checkedExample(name)));
      // The page's policy forbids scripts; the tester's own comes in past it.
      await page
        .context()
        .newCDPSession(page)
        .then((session) => session.send('Page.setBypassCSP', { enabled: true }));
      await page.reload();
      await page.addScriptTag({ content: axe.source });
      const violations = await page.evaluate(async () => {
        const { violations: found } = await (window as unknown as { axe: typeof axe }).axe.run(document);
        return found.map(
          ({ id, impact, nodes }) =>
            `${impact} ${id}: ${nodes
              .slice(0, 3)
              .map(({ html }) => html.slice(0, 120))
              .join(' | ')}`,
        );
      });
      expect(violations).toEqual([]);
      await page.close();
    },
    120_000,
  );

  test.each([
    ['A4', 595, 842],
    ['Letter', 612, 792],
  ])(
    'prints on %s: each page headed with plan, revision, date and its number, drawings across',
    async (format, width, height) => {
      const { page } = await open(viewer, await wholeBookOf(finals));
      const pdf = await page.pdf({ format, printBackground: false });
      const loading = getDocument({ data: new Uint8Array(pdf), verbosity: 0 });
      const document = await loading.promise;
      let across = 0;
      for (let i = 1; i <= document.numPages; i++) {
        const sheet = await document.getPage(i);
        const [, , wide = 0, high = 0] = sheet.view;
        if (wide > high) across++;
        expect([Math.min(wide, high), Math.max(wide, high)]).toEqual([
          expect.closeTo(width, -1),
          expect.closeTo(height, -1),
        ]);
        const { items } = await sheet.getTextContent();
        const text = items.map((item) => ('str' in item ? item.str : '')).join('');
        expect(text).toContain('Harbour Hall science final');
        expect(text).toContain('revision C · 2027-05-14');
        expect(text).toContain(`page ${i} of ${document.numPages}`);
      }
      expect(across).toBeGreaterThan(5);
      await loading.destroy();
      await page.close();
    },
    120_000,
  );
});

test('the cautions of the trade stand in the book, and defer to local codes', async () => {
  const html = await wholeBookOf(finals);
  for (const words of [
    'qualified electrician',
    'Escape routes',
    'fire rating',
    'second fixing',
    'never look into a connector',
    'two people',
    'Verify on site',
    'Local codes',
  ])
    expect(html).toContain(words);
});

test('the same plan gives the same book, byte for byte', async () => {
  expect(await bookOf(checkedExample('finals'))).toBe(await wholeBookOf(finals));
});
