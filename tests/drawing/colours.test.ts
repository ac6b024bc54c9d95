/** Colours: where the palette comes from, and that everything can be read. */
import { describe, expect, test } from 'vitest';
import {
  badgeShape,
  contrast,
  edgeOn,
  inkOn,
  LEAST_CONTRAST,
  pictureColour,
} from '../../src/documents/drawing/colours.ts';
import { type Theme, type ThemeName, themes } from '../../src/documents/drawing/themes.ts';

const themeNames = Object.keys(themes) as ThemeName[];

test('the first seven colours are those of Okabe and Ito', () => {
  // RGB values as printed in B. Wong, "Points of view: Color blindness", Nature Methods 8, 441 (2011), after
  // M. Okabe and K. Ito, "Color Universal Design" (2008).
  const published = {
    blue: [0, 114, 178],
    vermillion: [213, 94, 0],
    'bluish green': [0, 158, 115],
    'reddish purple': [204, 121, 167],
    orange: [230, 159, 0],
    'sky blue': [86, 180, 233],
    yellow: [240, 228, 66],
  };
  const ours = [1, 2, 3, 4, 5, 6, 7].map((number) =>
    [1, 3, 5].map((at) => Number.parseInt(pictureColour(number).slice(at, at + 2), 16)),
  );
  expect(ours).toEqual(Object.values(published));
});

test('no two of the first twenty-four pictures have the same colour and the same shape', () => {
  const looks = Array.from({ length: 24 }, (_, i) => `${pictureColour(i + 1)} ${badgeShape(i + 1)}`);
  expect(new Set(looks).size).toBe(24);
  expect(pictureColour(1)).toBe(pictureColour(9));
  expect(badgeShape(1)).not.toBe(badgeShape(9));
});

test('contrast is that of WCAG 2.2', () => {
  // Black on white is 21:1, a colour on itself 1:1 (WCAG 2.2, definition of contrast ratio: "can range from 1 to 21").
  expect(contrast('#000000', '#FFFFFF')).toBeCloseTo(21, 10);
  expect(contrast('#FFFFFF', '#000000')).toBeCloseTo(21, 10);
  expect(contrast('#D55E00', '#D55E00')).toBe(1);
  // The lightest grey that passes 4.5:1 on white, and the next, which does not (from memory: much quoted, among others
  // in W3C's "Understanding Success Criterion 1.4.3").
  expect(contrast('#767676', '#FFFFFF')).toBeGreaterThanOrEqual(4.5);
  expect(contrast('#777777', '#FFFFFF')).toBeLessThan(4.5);
});

/** All pairs of words and ground that the drawing makes, by theme. */
function wordsOn({ paper, room, box, ink, faint }: Theme): [string, string][] {
  return [ink, faint].flatMap((words) =>
    [paper, room, box].map((ground): [string, string] => [words, ground]),
  );
}

describe.each(themeNames)('in the theme %s', (name) => {
  const theme = themes[name];

  // WCAG 2.2, success criterion 1.4.3: 4.5:1 for words of this size.
  test('words are read everywhere', () => {
    for (const [words, ground] of wordsOn(theme))
      expect(contrast(words, ground), `${words} on ${ground}`).toBeGreaterThanOrEqual(4.5);
  });

  // WCAG 2.2, success criterion 1.4.11: 3:1 for what must be seen to understand.
  test('boxes, free ports and idle cables are seen', () => {
    for (const line of [theme.boxEdge, theme.idle])
      for (const ground of [theme.paper, theme.room, theme.box])
        expect(contrast(line, ground), `${line} on ${ground}`).toBeGreaterThanOrEqual(3);
  });

  test('every picture is seen on paper, in rooms and on boxes: it or its edge', () => {
    for (let number = 1; number <= 8; number++)
      for (const ground of [theme.paper, theme.room, theme.box])
        expect(contrast(edgeOn(pictureColour(number), ground), ground)).toBeGreaterThanOrEqual(
          LEAST_CONTRAST,
        );
  });
});

test('every number is read on its badge', () => {
  for (let number = 1; number <= 8; number++) {
    const colour = pictureColour(number);
    expect(contrast(inkOn(colour), colour), colour).toBeGreaterThanOrEqual(4.5);
  }
});

test('a colour that can be seen keeps itself', () => {
  expect(edgeOn('#0072B2', '#FFFFFF')).toBe('#0072B2');
  expect(edgeOn('#F0E442', '#FFFFFF')).not.toBe('#F0E442');
  expect(edgeOn('#F0E442', '#000000')).toBe('#F0E442');
});
