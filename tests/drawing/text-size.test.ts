/** Widths without a browser: never narrower than a face sets the words. */
import { readFileSync } from 'node:fs';
import { create, type Font } from 'fontkit';
import { describe, expect, test } from 'vitest';
import { fitText, textWidth, wrapText } from '../../src/documents/drawing/text-size.ts';

/** Noto Sans, as it is packaged for labels: a face that many systems set the drawing in. */
function notoSans(weight: 400 | 700): Font {
  const path = new URL(
    `../../node_modules/@fontsource/noto-sans/files/noto-sans-latin-${weight}-normal.woff`,
    import.meta.url,
  );
  return create(readFileSync(path)) as Font;
}

const samples = [
  'Vision mixer',
  'Control desk, balcony',
  'OM4 multimode fibre',
  '84 m measured, 100 m reach',
  'WWW @@@ MMM',
  'illicit jill',
  '0123456789 % & $ #',
  '10.74 of 10 Gb/s: 735.1 Mb/s too much',
];

describe.each([
  ['regular', 400, false],
  ['bold', 700, true],
] as const)('%s', (_, weight, bold) => {
  test.each(samples)('“%s” has room', (sample) => {
    const font = notoSans(weight);
    const ems = font.layout(sample).advanceWidth / font.unitsPerEm;
    const ours = textWidth(sample, 1, bold);
    expect(ours).toBeGreaterThanOrEqual(ems);
    // And not twice as much.
    expect(ours).toBeLessThan(ems * 1.5);
  });
});

test('a width grows with the size of the letters', () => {
  expect(textWidth('Vision mixer', 22)).toBeCloseTo(2 * textWidth('Vision mixer', 11), 10);
  expect(textWidth('', 11)).toBe(0);
});

test('East Asian letters take a whole em, joined marks nothing', () => {
  expect(textWidth('舞台', 10)).toBe(20);
  expect(textWidth('e\u0301', 10)).toBe(textWidth('e', 10));
});

describe('a text that is too long', () => {
  test('ends in an ellipsis and fits', () => {
    const short = fitText('a very long title of a box', 11, 80);
    expect(short).toMatch(/^a very.*…$/);
    expect(textWidth(short, 11)).toBeLessThanOrEqual(80);
  });

  test('is left alone when it fits', () => {
    expect(fitText('Box', 11, 80)).toBe('Box');
  });

  test('is not cut within what a reader takes for one letter', () => {
    const family = '👩‍👩‍👧';
    const cut = fitText(family.repeat(5), 10, 90);
    expect(cut.replace('…', '').length % family.length).toBe(0);
  });

  test('is broken between words, and the last line says that there is more', () => {
    const lines = wrapText('Slides, through the laptop’s converter and the long cable', 13, 150, 2);
    expect(lines).toHaveLength(2);
    expect(lines[1]).toMatch(/…$/);
    for (const line of lines) expect(textWidth(line, 13)).toBeLessThanOrEqual(150);
    expect(wrapText('Slides, through the laptop', 13, 150, 2).join(' ')).toBe('Slides, through the laptop');
  });

  test('is broken within a word that is wider than a line', () => {
    for (const line of wrapText(`a ${'w'.repeat(300)} b`, 13, 150, 3))
      expect(textWidth(line, 13)).toBeLessThanOrEqual(150);
  });

  test('an empty one is one empty line', () => {
    expect(wrapText('', 13, 150, 2)).toEqual(['']);
    expect(wrapText('   ', 13, 150, 2)).toEqual(['']);
  });
});
