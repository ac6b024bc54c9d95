/** How many columns of a terminal a text takes. */
export function textWidth(text: string): number {
  if (isAscii(text)) return text.length;
  let width = 0;
  for (const character of characters(text)) width += characterWidth(character);
  return width;
}

/** What a reader takes for one character each, accents and joined signs together. */
export function characters(text: string): string[] {
  if (isAscii(text)) return [...text];
  segmenter ??= new Intl.Segmenter(undefined, { granularity: 'grapheme' });
  return Array.from(segmenter.segment(text), ({ segment }) => segment);
}

let segmenter: Intl.Segmenter | undefined;

/**
 * Two columns for what Unicode Standard Annex 11 calls wide (the scripts, the full-width forms and the signs that are
 * drawn as pictures), none for a mark that stands alone, one for everything else.
 */
function characterWidth(character: string): number {
  if (/^\p{M}+$/u.test(character)) return 0;
  return WIDE.test(character) ? 2 : 1;
}

const WIDE =
  /^[\p{Script=Han}\p{Script=Hangul}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Bopomofo}\p{Script=Yi}\p{Emoji_Presentation}\u3000-\u303E\uFF01-\uFF60\uFFE0-\uFFE6]|\uFE0F/u;

function isAscii(text: string): boolean {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: the range is all of ASCII
  return /^[\u0000-\u007F]*$/.test(text);
}
