/** Words in lines of a width that a terminal has. */
import { oneLine, printable } from './printable.ts';
import { characters, textWidth } from './text-width.ts';

/** Longer lines only come of names that nobody means; they are cut. */
const LONGEST_LINE = 10_000;

/** Text in lines of at most so many columns, broken at spaces where that can be, else within a word. */
export function wrapText(text: string, width: number): string[] {
  if (textWidth(text) <= width) return [text];
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (textWidth(longer) <= width) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    const pieces = breakWord(word, width);
    line = pieces.pop() ?? '';
    lines.push(...pieces);
  }
  return line === '' ? lines : [...lines, line];
}

/** A line in lines of at most so many columns, each as deep as its beginning. */
export function wrapLine(line: string, width: number): string[] {
  const indent = /^ */.exec(line)![0];
  return wrapText(oneLine(line.slice(indent.length), LONGEST_LINE), width - indent.length).map(
    (part) => indent + part,
  );
}

function breakWord(word: string, width: number): string[] {
  const pieces: string[] = [];
  let piece = '';
  for (const character of characters(word)) {
    if (piece !== '' && textWidth(piece + character) > width) {
      pieces.push(piece);
      piece = '';
    }
    piece += character;
  }
  return [...pieces, piece];
}

/** Text of paragraphs, lists and indented lines: paragraphs are filled, everything else stays line by line. */
export function wrapProse(text: string, width: number): string[] {
  const lines: string[] = [];
  let paragraph = '';
  const endParagraph = () => {
    if (paragraph !== '') lines.push(...wrapLine(paragraph, width));
    paragraph = '';
  };
  for (const line of text.trim().split(/\r?\n/)) {
    if (/^\s|^[-*|] |^$/.test(line)) {
      endParagraph();
      lines.push(...wrapLine(line, width));
    } else paragraph = paragraph === '' ? line : `${paragraph} ${line}`;
  }
  endParagraph();
  return lines;
}

/** Terms with what they stand for, one below the other, those with nothing to say left out. */
export function wrapDefinitions(
  rows: readonly (readonly [term: string, text: string])[],
  width: number,
): string[] {
  const said = rows.filter(([, text]) => text !== '');
  const indent = Math.max(0, ...said.map(([term]) => textWidth(term))) + 2;
  return said.flatMap(([term, text]) =>
    wrapText(printable(text), width - indent).map((line, i) => (i === 0 ? term : '').padEnd(indent) + line),
  );
}
