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
 * Two columns for what Unicode Standard Annex 11 calls wide or full-width, none for a mark that stands alone, one for
 * everything else.
 */
function characterWidth(character: string): number {
  if (/^[\p{M}\p{Cf}]+$/u.test(character)) return 0;
  return WIDE.test(character) ? 2 : 1;
}

/** The blocks that are wide as a whole (UAX #11, section 5), and the signs that are drawn as pictures. */
const WIDE =
  /^[\u1100-\u115F\u2E80-\u303E\u3041-\u33FF\u3400-\u4DBF\u4E00-\uA4CF\uA960-\uA97F\uAC00-\uD7A3\uF900-\uFAFF\uFE10-\uFE19\uFE30-\uFE6F\uFF01-\uFF60\uFFE0-\uFFE6\u{16FE0}-\u{18DFF}\u{1AFF0}-\u{1B2FF}\u{1F200}-\u{1F265}\u{20000}-\u{3FFFD}\p{Emoji_Presentation}]|\uFE0F/u;

function isAscii(text: string): boolean {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: the range is all of ASCII
  return /^[\u0000-\u007F]*$/.test(text);
}
