/**
 * Widths of text without a browser, as wide as a wide face sets it, so that text stays in its place in any other: the
 * advance widths of DejaVu Sans 2.37, Book and Bold, in hundredths of an em for the characters U+0020 to U+007E (read
 * from the published font files; Arial, Segoe UI and Noto Sans are narrower).
 */
const regular = widthsOf(
  '32 40 46 84 64 95 78 27 39 39 50 84 32 36 32 34 64 64 64 64 64 64 64 64 64 64 34 34 84 84 84 53 100 68 69 70 77 63 58 77 75 29 29 66 56 86 75 79 60 79 69 63 61 73 68 99 69 61 69 39 34 39 84 50 50 61 63 55 63 62 35 63 63 28 28 58 28 97 63 61 63 63 41 52 39 63 59 82 59 59 52 64 34 64 84',
);
const bold = widthsOf(
  '35 46 52 84 70 100 87 31 46 46 52 84 38 42 38 37 70 70 70 70 70 70 70 70 70 70 40 40 84 84 84 58 100 77 76 73 83 68 68 82 84 37 37 77 64 100 84 85 73 85 77 72 68 81 77 110 77 72 73 46 37 46 84 50 50 67 72 59 72 68 44 72 71 34 34 67 34 104 71 69 72 72 49 60 48 71 65 92 65 65 58 71 37 71 84',
);

function widthsOf(list: string): readonly number[] {
  return list.split(' ').map((width) => Number(width) / 100);
}

/** Written by a character of its own before or after others; it takes no room. */
const withoutWidth = /^[\p{M}\p{Cf}]$/u;
/** A whole em: what Unicode Standard Annex 11 calls wide, long dashes. */
const wholeEm =
  /^[\u1100-\u115f\u2e80-\u303e\u3041-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6\u{20000}-\u{3fffd}—…]$/u;
const pictograph = /^\p{Extended_Pictographic}$/u;
const pictographEms = 1.4;
/** Everything else: letters of other scripts, arrows and mathematical signs. Few are wider. */
const otherEms = 0.85;
const middleDot = '·';

/** The width of a line of text in the unit of the font size. */
export function textWidth(text: string, fontSize: number, isBold = false): number {
  let ems = 0;
  for (const character of text) ems += emsOf(character, isBold ? bold : regular);
  return ems * fontSize;
}

function emsOf(character: string, face: readonly number[]): number {
  const known = face[character.charCodeAt(0) - 0x20];
  if (known !== undefined) return known;
  if (character === middleDot) return 0.38;
  if (withoutWidth.test(character)) return 0;
  if (wholeEm.test(character)) return 1;
  return pictograph.test(character) ? pictographEms : otherEms;
}

/** A text shortened with an ellipsis until it fits; the whole stays reachable as the element's title. */
export function fitText(text: string, fontSize: number, width: number, isBold = false): string {
  return textWidth(text, fontSize, isBold) <= width ? text : shorten(text, fontSize, width, isBold);
}

function shorten(text: string, fontSize: number, width: number, isBold: boolean): string {
  let room = width - textWidth('…', fontSize, isBold);
  let fits = '';
  for (const { segment } of graphemes().segment(text)) {
    room -= textWidth(segment, fontSize, isBold);
    if (room < 0) break;
    fits += segment;
  }
  return `${fits.trimEnd()}…`;
}

/** A text in lines of at most so much width, broken between words; the last line ends in an ellipsis when there is more. */
export function wrapText(
  text: string,
  fontSize: number,
  width: number,
  mostLines: number,
  isBold = false,
): string[] {
  const lines: string[] = [];
  let line = '';
  const words = text.split(/\s+/u).filter(Boolean);
  for (const [i, word] of words.entries()) {
    const longer = line ? `${line} ${word}` : word;
    if (textWidth(longer, fontSize, isBold) <= width) line = longer;
    else if (lines.length + 1 === mostLines || (!line && textWidth(word, fontSize, isBold) > width)) {
      line = shorten([line, ...words.slice(i)].filter(Boolean).join(' '), fontSize, width, isBold);
      break;
    } else {
      lines.push(line);
      line = fitText(word, fontSize, width, isBold);
    }
  }
  return line || lines.length === 0 ? [...lines, line] : lines;
}

let segmenter: Intl.Segmenter | undefined;

/** What a reader takes for one character each, accents and joined signs together. */
function graphemes(): Intl.Segmenter {
  segmenter ??= new Intl.Segmenter(undefined, { granularity: 'grapheme' });
  return segmenter;
}
