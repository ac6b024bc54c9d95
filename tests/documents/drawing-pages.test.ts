/** Drawings on paper: large enough to be read, whole, and said so where they are left out. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bookParts } from '../../src/documents/book/book.ts';
import { overviewPages, readablePages, windowsOn } from '../../src/documents/book/drawing-pages.ts';
import { checkedExample, checkedPlan } from '../support/example-plans.ts';

/** What is left of A4 (210 mm by 297 mm) and Letter (215.9 mm by 279.4 mm) within the margins, whichever is less. */
const paper = {
  upright: { width: 210 - 26, height: 279.4 - 31 },
  across: { width: 279.4 - 26, height: 210 - 31 },
};
/** Ten units, the smallest letters, in 4 points of 25.4/72 mm: nobody reads smaller ones. */
const LEAST_MM_PER_UNIT = (4 * 25.4) / 72 / 10;

const sizes = fc.record({
  width: fc.integer({ min: 50, max: 20_000 }),
  height: fc.integer({ min: 50, max: 9000 }),
});

describe('a drawing of any size', () => {
  test('is printed in letters that can be read, on pages that have room for it', () => {
    fc.assert(
      fc.property(sizes, (size) => {
        const pages = readablePages(size);
        expect(pages.mm_per_unit).toBeGreaterThanOrEqual(LEAST_MM_PER_UNIT);
        const room = paper[pages.page];
        for (const { width, height } of windowsOn(pages, size)) {
          expect(width * pages.mm_per_unit).toBeLessThanOrEqual(room.width);
          expect(height * pages.mm_per_unit).toBeLessThanOrEqual(room.height);
        }
      }),
    );
  });

  test('is there as a whole: its windows reach from edge to edge and overlap', () => {
    fc.assert(
      fc.property(sizes, (size) => {
        const pages = readablePages(size);
        const windows = windowsOn(pages, size);
        expect(windows).toHaveLength(pages.columns * pages.rows);
        const [first, last] = [windows[0]!, windows.at(-1)!];
        expect(first.left + first.top).toBeCloseTo(0, 9);
        expect(last.left + last.width).toBeCloseTo(size.width, 6);
        expect(last.top + last.height).toBeCloseTo(size.height, 6);
        for (const [i, window] of windows.entries()) {
          const right = windows[i + 1];
          if (right && right.left > window.left) expect(right.left).toBeLessThan(window.left + window.width);
        }
      }),
    );
  });

  test('is looked over on one page, as large as that has room for', () => {
    fc.assert(
      fc.property(sizes, (size) => {
        const pages = overviewPages(size, 1);
        const room = paper[pages.page];
        expect([pages.columns, pages.rows]).toEqual([1, 1]);
        expect(size.width * pages.mm_per_unit).toBeLessThanOrEqual(room.width);
        expect(size.height * pages.mm_per_unit).toBeLessThanOrEqual(room.height);
      }),
    );
  });
});

describe('what is not drawn', () => {
  const show = (count: number) =>
    `kit box "Box" {\n inputs in[1..2] as sdi_3g\n outputs out[1..2] as sdi_3g\n}\nplan "Many" { rate 50 }\nplace hall "Great hall"\nplace room "Side room"\nnode one : box at room\n${Array.from({ length: count }, (_, i) => `node n${i} : box at hall\n`).join('')}`;

  test('is named where it would stand, with its size and the command that draws it', () => {
    const { drawings, drawingsHead } = bookParts(checkedPlan(show(130)));
    expect(drawings.map(({ title }) => title)).toEqual(['Side room']);
    expect(drawingsHead).toContain('The whole show is not drawn here:');
    expect(drawingsHead).toContain('it has 131 boxes');
    expect(drawingsHead).toContain('<code>feedplot draw</code>');
    expect(drawingsHead).toContain('Great hall is not drawn here:');
    expect(drawingsHead).toContain('<code>feedplot draw --place hall</code>');
  });

  test('a book that draws everything says nothing of that', () => {
    const { drawings, drawingsHead } = bookParts(checkedPlan(show(20)));
    expect(drawings.map(({ title }) => title)).toEqual(['The whole show', 'Great hall', 'Side room']);
    expect(drawingsHead).not.toContain('not drawn');
  });
});

test('segments that look alike are drawn once, under both their names', () => {
  const [whole] = bookParts(checkedExample('arena'), new Set(['drawing'])).drawings;
  expect(whole!.views.map(({ title }) => title)).toEqual([
    'Always on',
    'Doors open',
    'Awards; Finale',
    'Rehearsal on the spare trunk',
  ]);
});
