import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fitText, LINE_HEIGHT } from '../../src/documents/typeset/fit-text.ts';
import { unpackWoff } from '../../src/documents/typeset/unpack-woff.ts';
import { directionOf, lineWidth, visualRuns } from '../../src/documents/typeset/visual-runs.ts';
import { faces, readFont } from '../support/fonts.ts';
import { hostileLabels } from '../support/hostile-show.ts';

describe('faces', () => {
  test.each(Object.entries(hostileLabels))('every letter of %s has a shape', (_, label) => {
    for (const { face, text } of faces.split(label)) {
      for (const character of text)
        expect(face.font.hasGlyphForCodePoint(character.codePointAt(0)!), character).toBe(true);
    }
  });

  test('scripts without a face of their own stand in the pixel face', () => {
    expect(faces.split('กล้อง').map(({ face }) => face.file)).toEqual(['unifontex-latin-400-normal.woff']);
  });

  test('the tables of an unpacked font are whole: each has the checksum that its directory states', () => {
    // OpenType specification 1.9, "Calculating checksums" (published); `head` counts without its own adjustment.
    const font = readFont('noto-sans-hebrew-hebrew-700-normal.woff');
    const view = new DataView(font.buffer);
    const count = view.getUint16(4);
    expect(count).toBeGreaterThan(8);
    for (let i = 0; i < count; i++) {
      const entry = 12 + 16 * i;
      const tag = String.fromCharCode(...font.subarray(entry, entry + 4));
      const [checksum, offset, length] = [4, 8, 12].map((step) => view.getUint32(entry + step)) as [
        number,
        number,
        number,
      ];
      let sum = 0;
      for (let at = offset; at < offset + length; at += 4) {
        if (tag === 'head' && at === offset + 8) continue;
        sum = (sum + (at + 4 <= font.length ? view.getUint32(at) : 0)) >>> 0;
      }
      expect(sum, tag).toBe(checksum);
    }
  });

  test('a file that is no WOFF is refused', () => {
    expect(() => unpackWoff(createHash('sha256').update('x').digest())).toThrow('no WOFF');
  });
});

/** The first lines of what Unicode Standard Annex 9 calls reordering: rule L2 and its examples (published). */
describe('directions', () => {
  const shown = (line: string) => visualRuns(line, faces).map(({ text }) => text);

  test('what is read from the left stays', () => {
    expect(shown('Box D · net1')).toEqual(['Box D · net1']);
  });

  test('a word that runs to the left, inside a line that does not', () => {
    // Memory order "car means CAR." of the annex's example, with Hebrew for the capitals: the word stays one run. The space has its face.
    expect(shown('car מכונית means')).toEqual(['car ', 'מכונית', ' ', 'means']);
  });

  test('a number inside a line from the right stands at its left end, and keeps its digits in order', () => {
    expect(shown('מכונית 12')).toEqual(['12', 'מכונית ']);
  });

  test('a bracket that runs to the left is turned (rule L4): the last one, at the left end, opens', () => {
    expect(shown('(אב)')).toEqual(['(', 'אב', ')']);
  });

  test('the first letter with a direction decides (rules P2 and P3)', () => {
    expect(directionOf('12 · אב x')).toBe('rtl');
    expect(directionOf('x אב')).toBe('ltr');
    expect(directionOf('12')).toBe('ltr');
  });

  test('Arabic letters are joined: a word is narrower than its letters alone', () => {
    const word = 'المسرح';
    const alone = [...word].reduce((sum, letter) => sum + lineWidth(letter, 10, faces), 0);
    expect(lineWidth(word, 10, faces)).toBeLessThan(alone);
  });
});

describe('fitting', () => {
  const room = { width: 100, height: 30, most: 25 };

  test('a short text has the largest letters and one line', () => {
    expect(fitText('T1', room, faces)).toEqual({ lines: ['T1'], size: expect.closeTo(23.25, 1) });
  });

  test.each(Object.values(hostileLabels))(
    '%s fits whole, in lines that are no wider and no higher',
    (label) => {
      const { lines, size } = fitText(label, room, faces);
      expect(lines.join('').replace(/\s/g, '')).toBe(label.replace(/\s/g, ''));
      expect(lines.length * size * LINE_HEIGHT).toBeLessThanOrEqual(room.height);
      for (const line of lines) expect(lineWidth(line, size, faces)).toBeLessThanOrEqual(room.width * 1.01);
    },
  );

  test('words stay whole as long as that leaves letters of some size, and a dot stays with what is before it', () => {
    const narrow = { width: 105, height: 44, most: 36 };
    expect(fitText('Lectern microphones', narrow, faces).lines).toEqual(['Lectern', 'microphones']);
    for (const line of fitText('other end: Patch field, balcony · front1', narrow, faces).lines)
      expect(line).not.toMatch(/^·/);
    // A name of one word that is longer than that is broken instead of becoming too small to read.
    expect(fitText('x'.repeat(80), narrow, faces).lines.length).toBeGreaterThan(1);
  });

  test('any text of any size of room: never cut', () => {
    fc.assert(
      fc.property(
        fc.string({ maxLength: 120 }),
        fc.integer({ min: 8, max: 200 }),
        fc.integer({ min: 4, max: 60 }),
        (text, width, height) => {
          const { lines } = fitText(text, { width, height, most: 40 }, faces);
          expect(lines.join('').replace(/\s/g, '')).toBe(text.replace(/\s/g, ''));
        },
      ),
      { numRuns: 60 },
    );
  });
});
