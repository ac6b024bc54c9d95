/** Edits as people and programs make them, and such as nobody would make. */
import { everyStatement } from '../support/every-statement.ts';
import type { Random } from './random.ts';

/** [start, end) replaced. */
export interface RandomEdit {
  readonly kind: string;
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

type Draw = (text: string, random: Random) => Omit<RandomEdit, 'kind'>;

const marks = [
  ...[
    '{',
    '}',
    '"',
    '“',
    '”',
    '/*',
    '*/',
    '//',
    '/**',
    '\n',
    '\r',
    '\r\n',
    '/',
    '*',
    ' ',
    '\t',
    '.',
    ',',
    ':',
    '$',
  ],
  ...[
    '<->',
    '->',
    '[',
    ']',
    '..',
    '-',
    '5,5',
    '1080p59.94',
    '\uFEFF',
    '\u00A0',
    '\u2028',
    'é',
    '%',
    '\u0001',
  ],
  ...[
    'feed ',
    'place ',
    'node',
    'kit x {\n',
    '\n}\n',
    '/* c */',
    '// c\n',
    ' at ',
    ' over ',
    'case',
    'plan "x"',
  ],
  ...['import "kit.feedplot"\n', '/** words */', '\0', '* /', '"*/"', '// */\n', 'delay 1', '\n\n\n'],
];

const around = ['{', '}', '"', '/*', '*/', '//', 'feed', 'kit', 'place', '\n', '\r\n', 'over', '.', 'import'];

function anywhere(text: string, random: Random): number {
  if (random.below(2) === 0) return random.below(text.length + 1);
  const mark = random.pick(around);
  const from = text.indexOf(mark, random.below(text.length + 1));
  const at = from < 0 ? text.indexOf(mark) : from;
  if (at < 0) return random.below(text.length + 1);
  return Math.max(0, Math.min(text.length, at + random.below(mark.length + 2) - 1));
}

function lineAt(text: string, offset: number): [number, number] {
  const start = text.lastIndexOf('\n', offset - 1) + 1;
  const end = text.indexOf('\n', offset);
  return [start, end < 0 ? text.length : end + 1];
}

function wordAt(text: string, offset: number): [number, number] {
  let start = offset;
  let end = offset;
  while (start > 0 && /\w/.test(text[start - 1]!)) start--;
  while (end < text.length && /\w/.test(text[end]!)) end++;
  return [start, end];
}

const insert = (at: number, text: string) => ({ start: at, end: at, text });

const wild: Record<string, Draw> = {
  typeLetter: (t, r) => insert(anywhere(t, r), r.pick([...'abcmnp0195_ ."-'])),
  deleteLetter: (t, r) => {
    const at = anywhere(t, r);
    return { start: at, end: Math.min(t.length, at + 1), text: '' };
  },
  replaceLetter: (t, r) => {
    const at = anywhere(t, r);
    return { start: at, end: Math.min(t.length, at + 1), text: r.pick([...'abp01_ ."{}/*\n\r']) };
  },
  mark: (t, r) => insert(anywhere(t, r), r.pick(marks)),
  deleteLine: (t, r) => {
    const [start, end] = lineAt(t, anywhere(t, r));
    return { start, end, text: '' };
  },
  deleteSpan: (t, r) => {
    const start = anywhere(t, r);
    return { start, end: Math.min(t.length, start + r.below(300)), text: '' };
  },
  duplicateLine: (t, r) => {
    const [start, end] = lineAt(t, anywhere(t, r));
    return insert(start, t.slice(start, end));
  },
  joinLines: (t, r) => {
    const [, end] = lineAt(t, anywhere(t, r));
    return { start: Math.max(0, end - 1), end, text: r.pick(['', ' ']) };
  },
  insertStatement: (t, r) => insert(lineAt(t, anywhere(t, r))[0], `${r.pick(everyStatement)}\n`),
  paste: (t, r) => {
    const [from] = lineAt(t, anywhere(t, r));
    return insert(lineAt(t, anywhere(t, r))[0], t.slice(from, from + 200 + r.below(1500)));
  },
  moveLine: (t, r) => {
    const [start, end] = lineAt(t, anywhere(t, r));
    const [, next] = lineAt(t, end);
    return { start, end: next, text: t.slice(end, next) + t.slice(start, end) };
  },
  replaceWord: (t, r) => {
    const [start, end] = wordAt(t, anywhere(t, r));
    const [from, to] = wordAt(t, anywhere(t, r));
    return { start, end, text: r.pick([t.slice(from, to), 'x', 'node', 'feed', '']) };
  },
  comment: (t, r) => insert(lineAt(t, anywhere(t, r))[0], r.pick(['// ', '/* ', '/** x */ '])),
  head: (t, r) => ({
    start: 0,
    end: Math.min(t.length, r.below(3)),
    text: r.pick(['', 'x', '\n', '// h\n', 'place ', '"']),
  }),
  tail: (t, r) => ({
    start: Math.max(0, t.length - r.below(3)),
    end: t.length,
    text: r.pick(['', 'x', '\n', 'feed s1', '/*', '}', ' -> d', '// end']),
  }),
  lineEnds: (t, r) => {
    const [start, end] = lineAt(t, anywhere(t, r));
    const line = t.slice(start, end);
    return {
      start,
      end,
      text: line.includes('\r\n') ? line.replace('\r\n', '\n') : line.replace('\n', '\r\n'),
    };
  },
};

const kinds = Object.keys(wild);

/** One edit of any kind. */
export function wildEdit(text: string, random: Random): RandomEdit {
  const kind = random.pick(kinds);
  return { kind, ...wild[kind]!(text, random) };
}

/** Somebody at a keyboard: writes a statement letter by letter, mends a word, takes a line out backwards, comments it. */
export class Typist {
  #script: Omit<RandomEdit, 'kind'>[] = [];

  next(text: string, random: Random): RandomEdit {
    if (this.#script.length === 0) this.#plan(text, random);
    const edit = this.#script.shift()!;
    return { kind: 'typing', ...edit };
  }

  #plan(text: string, random: Random): void {
    const [start, end] = lineAt(text, anywhere(text, random));
    const type = (at: number, words: string) => [...words].map((letter, i) => insert(at + i, letter));
    const drawn = random.below(10);
    if (drawn < 6) {
      this.#script.push(...type(start, `${random.pick(everyStatement)}\n`));
    } else if (drawn < 8) {
      const at = start + random.below(Math.max(1, end - start - 1));
      this.#script.push(...type(at, 'ab1'));
      for (let i = 2; i >= 0; i--) this.#script.push({ start: at + i, end: at + i + 1, text: '' });
    } else if (drawn < 9) {
      for (let at = end - 1; at > start; at--) this.#script.push({ start: at - 1, end: at, text: '' });
    } else {
      this.#script.push(...type(start, '// '), { start, end: start + 3, text: '' });
    }
    if (this.#script.length === 0) this.#script.push(insert(start, ' '));
  }
}
