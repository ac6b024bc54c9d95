import * as jsQr from 'jsqr';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, test } from 'vitest';
import { codeRows } from '../../src/documents/labels/code.ts';
import { type LabelPaper, paperSizes, rollPaper, spotsOn } from '../../src/documents/labels/label-paper.ts';
import { type LabelPdfOptions, labelPdf } from '../../src/documents/labels/label-pdf.ts';
import { cableLabels, type Label, portLabels } from '../../src/documents/labels/labels.ts';
import { Titles } from '../../src/documents/sheets/titles.ts';
import { checkedExample, checkedPlan } from '../support/example-plans.ts';
import { faces } from '../support/fonts.ts';
import { hostileLabels, hostileShow } from '../support/hostile-show.ts';

const sheet: LabelPaper = {
  width_mm: 210,
  height_mm: 297,
  columns: 3,
  rows: 8,
  top_mm: 12,
  right_mm: 7,
  bottom_mm: 12,
  left_mm: 7,
  across_mm: 2.5,
  down_mm: 0,
};

const usual: Omit<LabelPdfOptions, 'paper'> = { title: 'Test', faces, codes: false, skip: 0, frames: false };

const POINTS_PER_MM = 72 / 25.4;

interface Word {
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly baseline: number;
}

/** Its types and its module disagree on where the function is. */
const readCode = (jsQr as unknown as { default: ReadCode }).default;
type ReadCode = (data: Uint8ClampedArray, width: number, height: number) => { data: string } | null;

/** What a PDF reader of another maker sees: words with their places in millimetres from the top left corner. */
async function pagesOf(pdf: Uint8Array): Promise<{ width: number; height: number; words: Word[] }[]> {
  const loading = getDocument({ data: new Uint8Array(pdf), verbosity: 0 });
  const document = await loading.promise;
  const pages = [];
  for (let i = 1; i <= document.numPages; i++) {
    const page = await document.getPage(i);
    const [, , width = 0, height = 0] = page.view;
    const { items } = await page.getTextContent();
    const words = items.flatMap((item) =>
      'str' in item && item.str.trim() !== ''
        ? [
            {
              text: item.str,
              left: item.transform[4] / POINTS_PER_MM,
              right: (item.transform[4] + item.width) / POINTS_PER_MM,
              baseline: (height - item.transform[5]) / POINTS_PER_MM,
            },
          ]
        : [],
    );
    pages.push({ width: width / POINTS_PER_MM, height: height / POINTS_PER_MM, words });
  }
  await loading.destroy();
  return pages;
}

const label = (main: string): Label => ({
  main,
  second: 'other end: here',
  foot: 'T1 · 61 m',
  code: 'plan\nt\na',
});

describe('what labels say', () => {
  const { analysis } = checkedExample('finals');
  const titles = new Titles(analysis);

  test('two for each cable: this end, the other end, its own label, kind and length as the plan shows them', () => {
    const labels = cableLabels(analysis, titles);
    expect(labels).toHaveLength(2 * analysis.links.length);
    // Measured 61 m; the plan shows feet: 61 / 0.3048 = 200.1.
    expect(labels.slice(0, 2)).toEqual([
      {
        main: 'Box D · net1',
        second: 'other end: Box P · net1',
        foot: 'T1 · Cat 6A · 200 ft',
        code: 'Harbour Hall science final C\ntrunk\nbox_d.net1',
      },
      {
        main: 'Box P · net1',
        second: 'other end: Box D · net1',
        foot: 'T1 · Cat 6A · 200 ft',
        code: 'Harbour Hall science final C\ntrunk\nbox_p.net1',
      },
    ]);
  });

  test('one for each socket that is used or has a name; what the crew calls it is the largest', () => {
    const labels = portLabels(analysis, titles);
    const bench = labels.find(({ main }) => main === 'Bench camera');
    expect(bench).toMatchObject({ second: 'Box P · in1', foot: 'takes Bench camera' });
    expect(labels.find(({ second }) => second === 'Scaler · in1')).toMatchObject({ main: 'Question laptop' });
  });
});

describe('sheets', () => {
  test('three by eight on A4: the middle spot lies where a ruler finds it', () => {
    // (210 - 14 - 5) / 3 = 63.667 wide; (297 - 24) / 8 = 34.125 high.
    const spots = spotsOn(sheet);
    expect(spots).toHaveLength(24);
    expect(spots[4]).toEqual({
      x_mm: expect.closeTo(73.167, 2),
      y_mm: expect.closeTo(46.125, 3),
      width_mm: expect.closeTo(63.667, 2),
      height_mm: 34.125,
    });
  });

  test('margins that leave nothing leave no spot, and no PDF', async () => {
    const paper = { ...sheet, left_mm: 205 };
    expect(spotsOn(paper)).toEqual([]);
    expect(() => labelPdf([label('x')], { ...usual, paper })).toThrow('no room');
  });

  test('the paper sizes of ISO 216 and ANSI (published)', () => {
    expect(paperSizes.get('a4')).toEqual([210, 297]);
    expect(paperSizes.get('letter')).toEqual([215.9, 279.4]);
  });

  test('labels go on behind the spots that are used up, and on to the next sheet', async () => {
    const labels = Array.from({ length: 5 }, (_, i) => label(`L${i}`));
    const pages = await pagesOf(await labelPdf(labels, { ...usual, paper: sheet, skip: 22 }));
    expect(
      pages.map(({ words }) => words.filter(({ text }) => /^L\d$/.test(text)).map(({ text }) => text)),
    ).toEqual([
      ['L0', 'L1'],
      ['L2', 'L3', 'L4'],
    ]);
    expect([pages[0]!.width, pages[0]!.height]).toEqual([expect.closeTo(210, 1), expect.closeTo(297, 1)]);
  });

  test('a roll has one label a page, of the size that was asked for', async () => {
    const pages = await pagesOf(
      await labelPdf([label('a'), label('b')], { ...usual, paper: rollPaper(60, 18) }),
    );
    expect(pages).toHaveLength(2);
    expect([pages[0]!.width, pages[0]!.height]).toEqual([expect.closeTo(60, 1), expect.closeTo(18, 1)]);
  });

  test('no labels give an empty sheet, not a broken file', async () => {
    expect(await pagesOf(await labelPdf([], { ...usual, paper: sheet }))).toHaveLength(1);
  });

  test('the same labels give the same file, byte for byte', async () => {
    const make = () => labelPdf([label('a')], { ...usual, paper: sheet });
    expect(Buffer.from(await make()).equals(Buffer.from(await make()))).toBe(true);
  });
});

describe('hostile names', () => {
  const { analysis } = checkedPlan(hostileShow);
  const labels = cableLabels(analysis, new Titles(analysis));

  test.each([
    ['a sheet', sheet],
    ['a sheet of small labels', { ...sheet, columns: 5, rows: 13 }],
    ['a roll', rollPaper(50, 12)],
  ])('on %s every letter stands inside its label', async (_, paper) => {
    const spots = spotsOn(paper);
    const pages = await pagesOf(await labelPdf(labels, { ...usual, paper, codes: true }));
    expect(pages.flatMap(({ words }) => words).length).toBeGreaterThan(100);
    for (const { words } of pages) {
      for (const { text, left, right, baseline } of words) {
        const inside = spots.some(
          (spot) =>
            left >= spot.x_mm - 0.05 &&
            right <= spot.x_mm + spot.width_mm + 0.05 &&
            baseline >= spot.y_mm &&
            baseline <= spot.y_mm + spot.height_mm,
        );
        expect(inside, `${text} at ${left}–${right}, ${baseline}`).toBe(true);
      }
    }
  });

  test.each([
    hostileLabels.formula,
    hostileLabels.markup,
    hostileLabels.path,
    hostileLabels.japanese,
    hostileLabels.korean,
    hostileLabels.unbroken,
    hostileLabels.long,
  ])('a reader of PDF finds %s again, whole', async (name) => {
    const [page] = await pagesOf(await labelPdf([label(name)], { ...usual, paper: rollPaper(60, 20) }));
    const text = page!.words.map((word) => word.text).join('');
    expect(text.replace(/\s/g, '')).toContain(name.replace(/\s/g, ''));
  });
});

describe('2D codes', () => {
  /** As a camera sees it: eight pixels a square. */
  function photograph(rows: readonly (readonly boolean[])[]): { data: Uint8ClampedArray; side: number } {
    const scale = 8;
    const side = rows.length * scale;
    const data = new Uint8ClampedArray(side * side * 4).fill(255);
    for (let y = 0; y < side; y++)
      for (let x = 0; x < side; x++)
        if (rows[Math.floor(y / scale)]![Math.floor(x / scale)])
          data.fill(0, (y * side + x) * 4, (y * side + x) * 4 + 3);
    return { data, side };
  }

  test.each([
    'Harbour Hall science final C\ntrunk\nbox_d.net1',
    `${hostileLabels.japanese}\n${hostileLabels.arabic}\n${hostileLabels.markup}`,
    `${'w'.repeat(59)}…\n${'x'.repeat(59)}…\n${'y'.repeat(59)}…`,
  ])('a reader of another maker reads plan, link and end: %j', (text) => {
    const { data, side } = photograph(codeRows(text));
    expect(readCode(data, side, side)?.data).toBe(text);
  });

  test('a free edge of four squares on every side (ISO/IEC 18004, second-hand)', () => {
    const rows = codeRows('x');
    const edge = [
      ...rows.slice(0, 4),
      ...rows.slice(-4),
      ...rows.map((row) => [...row.slice(0, 4), ...row.slice(-4)]),
    ];
    expect(edge.flat()).not.toContain(true);
    expect(rows[4]![4]).toBe(true);
  });
});
