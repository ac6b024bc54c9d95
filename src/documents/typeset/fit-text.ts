import { characters } from '../text-width.ts';
import type { Faces } from './faces.ts';
import { lineWidth } from './visual-runs.ts';

export interface FittedText {
  readonly lines: readonly string[];
  readonly size: number;
}

export interface Room {
  readonly width: number;
  readonly height: number;
  /** The largest letters. */
  readonly most: number;
}

/** Height of a line against the size of its letters. */
export const LINE_HEIGHT = 1.22;
const SHRINK = 0.93;

/** Down to this share of the largest letters, words stay whole; smaller ones are worse to read than a broken word. */
const WHOLE_WORDS = 0.4;

/**
 * A text that fits: it is broken into lines, between words as long as that leaves letters of some size, and shrinks
 * until they all have room. Never cut: a long name ends in small letters.
 */
export function fitText(text: string, { width, height, most }: Room, faces: Faces): FittedText {
  const ems = measured(text, faces);
  const longest = Math.max(0, ...ems.map((word) => word.width));
  let size = longest * most * WHOLE_WORDS <= width ? Math.min(most, (width / longest) * 0.999) : most;
  for (;;) {
    const lines = broken(ems, width / size);
    if ((lines.length * LINE_HEIGHT * size <= height && lines.every(({ fits }) => fits)) || size < 0.5)
      return { lines: lines.map((line) => line.text), size };
    size *= SHRINK;
  }
}

interface Word {
  readonly text: string;
  readonly width: number;
  /** Of the space behind it, in its own face. */
  readonly space: number;
  /** Its characters with their own widths, for a word that is longer than a line; most words never need them. */
  letters(): readonly { readonly text: string; readonly width: number }[];
}

/** The same words come again and again: each is measured once in the same faces. */
const wordsOf = new WeakMap<Faces, Map<string, Word>>();

/** The words of a text with their widths at size 1; a dot between two stays with the first. */
function measured(text: string, faces: Faces): Word[] {
  const words = wordsOf.get(faces) ?? new Map<string, Word>();
  wordsOf.set(faces, words);
  return text
    .split(/\s+(?!·(?:\s|$))/)
    .filter(Boolean)
    .map((word) => {
      const known = words.get(word) ?? measuredWord(word, faces);
      words.set(word, known);
      return known;
    });
}

function measuredWord(text: string, faces: Faces): Word {
  const width = lineWidth(text, 1, faces);
  const space = Math.max(0, lineWidth(`${text} `, 1, faces) - width);
  let letters: ReturnType<Word['letters']> | undefined;
  return {
    text,
    width,
    space,
    letters: () => {
      letters ??= characters(text).map((letter) => ({ text: letter, width: lineWidth(letter, 1, faces) }));
      return letters;
    },
  };
}

/** Words in lines of a width; `fits` is false where even one letter is too wide. */
function broken(words: readonly Word[], width: number): { text: string; fits: boolean }[] {
  const lines: { text: string; width: number }[] = [];
  let line = { text: '', width: 0 };
  /** @param gap The space before it; undefined inside a word. */
  const put = (text: string, own: number, gap: number | undefined) => {
    if (line.text !== '' && line.width + (gap ?? 0) + own > width) {
      lines.push(line);
      line = { text: '', width: 0 };
    }
    const space = line.text === '' || gap === undefined ? undefined : gap;
    line = {
      text: `${line.text}${space === undefined ? '' : ' '}${text}`,
      width: line.width + (space ?? 0) + own,
    };
  };
  for (const [i, word] of words.entries()) {
    const gap = words[i - 1]?.space ?? 0;
    if (word.width <= width) put(word.text, word.width, gap);
    else
      for (const [k, letter] of word.letters().entries())
        put(letter.text, letter.width, k === 0 ? gap : undefined);
  }
  return [...lines, line].map((one) => ({ text: one.text, fits: one.width <= width * 1.001 }));
}
