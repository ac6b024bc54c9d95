import { describe, expect, test } from 'vitest';
import { characters, textWidth } from '../../src/documents/text-width.ts';

// Columns: Unicode Standard Annex 11, East Asian Width. W and F take two, marks that stand on a letter none.
describe('columns of a text', () => {
  test.each([
    ['box_desk', 8],
    ['Büro', 4],
    ['Bu\u0308ro', 4], // the same with a combining mark
    ['控制台', 6], // W
    ['ステージ', 8], // W
    ['무대', 4], // W
    ['\uFF21\uFF22', 4], // F, full-width Latin
    ['\uFF71', 1], // H, half-width katakana
    ['\u{1F3A5}', 2], // Emoji_Presentation=Yes
    ['\u{1F469}\u200D\u{1F3A4}', 2], // two signs joined are drawn as one
    ['', 0],
  ])('%j takes %i', (text, width) => {
    expect(textWidth(text)).toBe(width);
  });

  test('a letter and its mark are one character', () => {
    expect(characters('e\u0301a')).toEqual(['e\u0301', 'a']);
  });
});
