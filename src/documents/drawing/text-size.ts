/**
 * Widths of text without a browser: the advance widths of a common sans-serif at 1 em, by class of letter, rounded
 * up so that text never leaves its box in a slightly wider face. East Asian wide characters take a whole em (Unicode
 * Standard Annex 11, classes W and F).
 */
const narrow = /[ijl.,:;'|!()[\]{}ftIr\-/ ]/;
const wide = /[MWmw@%—…]/;
const capital = /[A-HJ-LN-VX-Z0-9&#$?]/;
const eastAsian =
  /[\u1100-\u115f\u2e80-\u303e\u3041-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6]|[\u{1f300}-\u{1faff}\u{20000}-\u{3fffd}]/u;

/** The width of a line of text in the unit of the font size. */
export function textWidth(text: string, fontSize: number, bold = false): number {
  let ems = 0;
  for (const character of text) {
    if (eastAsian.test(character)) ems += 1;
    else if (narrow.test(character)) ems += 0.38;
    else if (wide.test(character)) ems += 0.95;
    else if (capital.test(character)) ems += 0.68;
    else ems += 0.61;
  }
  return ems * fontSize * (bold ? 1.06 : 1);
}

/** A text shortened with an ellipsis until it fits; the whole stays reachable as the element's title. */
export function fitText(text: string, fontSize: number, width: number, bold = false): string {
  if (textWidth(text, fontSize, bold) <= width) return text;
  const characters = [...text];
  while (characters.length > 1 && textWidth(`${characters.join('')}…`, fontSize, bold) > width)
    characters.pop();
  return `${characters.join('').trimEnd()}…`;
}
