import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { schemas } from '../../src/documents/json/schemas.ts';
import { ansiPaint, plainPaint } from '../../src/documents/paint.ts';
import { headlineOf } from '../../src/documents/review/headline.ts';
import { reviewHtml } from '../../src/documents/review/html.ts';
import { reviewJson } from '../../src/documents/review/json.ts';
import { reviewMarkdown } from '../../src/documents/review/markdown.ts';
import { sectionsOf } from '../../src/documents/review/sections.ts';
import { reviewText } from '../../src/documents/review/text.ts';
import { escapeMarkdown } from '../../src/documents/sheets/markdown.ts';
import { nameOf, reviewed, sideOf } from './reviews.ts';
import { changed, kit, plan, withCamera } from './shows.ts';

const show = changed(plan, 'import "kit.feedplot"', kit);
const withSpare = `${show}link trunk_b "T2" box_d.net2 <-> box_p.net2 over cat6a standby for trunk\n`;

/** Something of every section: a spare lost, an overload, a picture lost, a longer run, a purchase, a name. */
const before = `${withSpare}stock cat6a 2 of 50 m costs 40\nstock rg6 any of 10 m costs 5\n`;
const after = changed(
  changed(
    changed(
      withCamera(withCamera(changed(before, withSpare.slice(show.length), ''), 'close', 3), 'wide', 4),
      '40 m "left wall"',
      '60 m "left wall"',
    ),
    'feed program -> speaker',
    '',
  ),
  'box_d',
  'desk_box',
);
const everything = () => reviewed(before, after);

describe('the order of reading', () => {
  test('the worst first, then what to do, then the rest', () => {
    expect(sectionsOf(everything()).map(({ name, open }) => `${name}${open ? '' : ' (folded)'}`)).toEqual([
      'findings',
      'lost',
      'steps',
      'pictures (folded)',
      'loads (folded)',
      'lengths (folded)',
      'mended (folded)',
      'totals (folded)',
      'purchases (folded)',
      'things (folded)',
    ]);
  });

  test('the headline counts, the worst first', () => {
    expect(headlineOf(everything())[0]).toMatch(/^\d new error/);
    expect(headlineOf(everything())).toContain('1 screen or input loses its picture');
    expect(headlineOf(reviewed(show, show))).toEqual(['nothing changes']);
    expect(headlineOf(reviewed(show, changed(show, 'box_p', 'stage_box')))).toEqual([
      'nothing changes for pictures and hands',
    ]);
  });
});

describe('terminal text', () => {
  const told = (width = 90) => reviewText(everything(), nameOf, plainPaint, width);

  test('colour adds nothing but colour', () => {
    const coloured = reviewText(everything(), nameOf, ansiPaint, 90).join('\n');
    expect(coloured).not.toBe(told().join('\n'));
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the colours
    expect(coloured.replace(/\u001b\[\d+m/g, '')).toBe(told().join('\n'));
  });

  test('what is grave has a mark, so that it is found without colour', () => {
    expect(told(400).filter((line) => line.startsWith(' ! '))).toEqual([
      expect.stringMatching(/error link-overload/),
      expect.stringMatching(/Speaker's screen: no longer gets a picture; it showed Program/),
      expect.stringMatching(/T1: from Box P · net1 to Box D · net1: 53\.7 % .* → 107\.4 %/),
    ]);
  });

  test('lines are no wider than the terminal', () => {
    for (const width of [60, 90])
      expect(
        Math.max(
          ...told(width)
            .slice(1)
            .map((line) => line.length),
        ),
      ).toBeLessThanOrEqual(width);
  });
});

describe('Markdown', () => {
  const told = () => reviewMarkdown(everything(), nameOf);

  test('the first line is the summary; what is folded stands behind a summary of its own', () => {
    const text = told();
    expect(text).toMatch(
      /^### Feedplot review: \d new errors?, .*\n\nSpring lecture: before → after\.\n\n#### New errors and warnings\n/,
    );
    expect(text.match(/<details><summary>/g)).toHaveLength(7);
    expect(text.match(/<\/details>/g)).toHaveLength(7);
    expect(text).toContain('<details><summary>Load of network links: 2 links</summary>\n\n- ⚠ **T1**: from');
  });

  test('text of a plan is no markup, no link, no mention and no other line', () => {
    const evil = '<img src=x onerror=alert(1)> [a](http://x) @all `code` *b* |c| # d';
    const { length } = reviewMarkdown(reviewed(show, show), nameOf);
    const named = changed(show, '"Spring lecture"', `"${evil}"`);
    const text = reviewMarkdown(
      reviewed(named, changed(withCamera(named, 'close', 3), '"close camera"', `"${evil}"`)),
      nameOf,
    );
    expect(text.length).toBeGreaterThan(length);
    const outside = text.replace(/`[^`\n]*`/g, '');
    expect(outside).not.toMatch(/(?<!\\)<(?!\/?(details|summary)>)/);
    expect(outside).not.toMatch(/@(?!&#8203;)/);
    expect(outside).not.toMatch(/(?<!\\)\]\(/);
    expect(outside).not.toContain('://');
  });

  test('a number at the beginning of a text stays a number', () => {
    // CommonMark 0.31, 2.4: a backslash before a digit is a backslash.
    expect(escapeMarkdown('156.8 kg')).toBe('156\\.8 kg');
    expect(escapeMarkdown('1) first')).toBe('1\\) first');
    expect(escapeMarkdown('- no list')).toBe('\\- no list');
  });

  test('however much has changed it fits into a comment, keeps what to do, and says what is left out', () => {
    // A comment on GitHub has at most 65,536 characters.
    const many = Array.from(
      { length: 3000 },
      (_, i) => `place spot_${i} "${'x'.repeat(60)} ${i}"\ncircuit c_${i} at spot_${i} 16 A 230 V`,
    ).join('\n');
    const text = reviewMarkdown(reviewed(show, `${withCamera(show, 'close', 3)}${many}\n`), nameOf);
    expect(text.length).toBeLessThan(65_536);
    expect(text.length).toBeGreaterThan(40_000);
    expect(text).toMatch(/\*\*\d+ lines left out\*\* because a comment has room for so much only/);
    expect(text).toContain('Set up close camera');
    expect(text).toMatch(/- … and \d+ more\n\n<\/details>/);
    expect(text.match(/<details>/g)!.length).toBe(text.match(/<\/details>/g)!.length);
  });

  test('many new errors leave room for the steps', () => {
    const cameras = Array.from({ length: 2000 }, (_, i) => `feed nobody_${i} -> nowhere_${i}`).join('\n');
    const text = reviewMarkdown(reviewed(show, `${withCamera(show, 'close', 3)}${cameras}\n`), nameOf);
    expect(text.length).toBeLessThan(65_536);
    expect(text).toContain('#### What to do on site: 5 steps');
    expect(text).toContain('5. **Desk**: Look: Mixer · in3 shows close camera.');
  });
});

describe('JSON', () => {
  const validate = new Ajv2020({ strict: true, allErrors: true }).compile(
    schemas.get('feedplot-review.schema.json')!,
  );

  test.each([
    ['of everything', before, after],
    ['of nothing', show, show],
    ['of a plan that is new', 'place desk\n', show],
    ['of a plan that is gone', show, 'place desk\n'],
  ])('%s is as its schema says', (_, old, fresh) => {
    const json = JSON.parse(JSON.stringify(reviewJson(reviewed(old, fresh), nameOf)));
    expect(validate(json), JSON.stringify(validate.errors?.slice(0, 3))).toBe(true);
  });

  test('quantities are in SI units, told by the end of the key', () => {
    const { loads, lengths } = reviewJson(everything(), nameOf);
    // Four pictures of 2 683 765 614 b/s, each rounded by itself there.
    expect(Math.abs(loads[0]!.after!.load_bits_per_second - 4 * 2_683_765_614)).toBeLessThan(10);
    expect(lengths).toMatchObject([
      { name: 'trunk', before: { length_m: 46 }, after: { length_m: 66, reach_m: 100 } },
    ]);
  });

  test('places are where the thing stands: in the new text, or in the old where it is gone', () => {
    const { things } = reviewJson(everything(), nameOf);
    const camera = things.find(({ name }) => name === 'close')!;
    const line = after.split('\n').findIndex((one) => one.startsWith('source close')) + 1;
    expect(camera.place).toMatchObject({ side: 'new', file: 'show.feedplot', line, column: 8 });
    const gone = things.find(({ name }) => name === 'trunk_b')!;
    const oldLine = before.split('\n').findIndex((one) => one.startsWith('link trunk_b')) + 1;
    expect(gone.place).toMatchObject({ side: 'old', line: oldLine });
  });
});

describe('the page', () => {
  const page = (old = before, fresh = after) => {
    const [was, is] = [sideOf(old, 'before'), sideOf(fresh, 'after')];
    return reviewHtml(reviewed(old, fresh), was.analysis, is.analysis, nameOf);
  };

  test('lets nothing load, and its one style is allowed by its hash', async () => {
    const html = await page();
    const policy = /Content-Security-Policy" content="([^"]*)"/.exec(html)![1]!;
    const style = /<style>([\s\S]*?)<\/style>/.exec(html)![1]!;
    const hash = createHash('sha256').update(style).digest('base64');
    expect(policy).toBe(
      `default-src 'none'; style-src 'sha256-${hash}'; base-uri 'none'; form-action 'none'`,
    );
    expect(html).not.toMatch(/<script|<link|\bon\w+=|(?<![\w-])style=|url\((?!#)/);
    expect(html.match(/(?:src|href)="[^"#]/g)).toBeNull();
  });

  test('text of a plan stays text', async () => {
    const html = await page(
      show,
      changed(withCamera(show, 'close', 3), '"close camera"', '"</li><script>alert(1)</script>"'),
    );
    expect(html).not.toContain('<script');
    expect(html).toContain('&lt;script&gt;');
  });

  test('has everything that the terminal has', async () => {
    const html = await page();
    for (const { title } of sectionsOf(everything())) expect(html).toContain(title);
  });
});

describe('the example', () => {
  const folder = `${import.meta.dirname}/../../examples/finals`;
  const files = ['finals.feedplot', 'hall.feedplot', 'stock.feedplot', 'kit/house.feedplot'];
  const texts = Object.fromEntries(files.map((name) => [name, readFileSync(`${folder}/${name}`, 'utf8')]));

  test('compared with itself has nothing to tell', () => {
    expect(sectionsOf(reviewed(texts, texts))).toEqual([]);
  });
});
