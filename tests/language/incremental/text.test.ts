import { describe, expect, it } from 'vitest';
import { Text } from '../../../src/language/incremental/text.ts';
import { Random } from '../../incremental/random.ts';

describe('a text in chunks', () => {
  it('is after any edits what a string would be', () => {
    const random = new Random(1);
    let plain = 'node a : b at c\r\n'.repeat(3000);
    let text = Text.of(plain);
    for (let i = 0; i < 500; i++) {
      const start = random.below(plain.length + 1);
      const end = Math.min(plain.length, start + random.below(random.pick([1, 3, 40, 20_000])));
      const by = random.pick(['', 'x', '\n', '\r', 'abc'.repeat(random.below(4000)), '*', '/']);
      const before = text;
      text = text.replace(start, end, by);
      expect(before.toString()).toBe(plain);
      plain = plain.slice(0, start) + by + plain.slice(end);
      expect(text.length).toBe(plain.length);
      const from = random.below(plain.length + 1);
      const to = random.below(plain.length + 1);
      expect(text.slice(from, to)).toBe(from < to ? plain.slice(from, to) : '');
      for (const search of ['*/', '*', 'abcabc', '\r\n'])
        expect(text.indexOf(search, from)).toBe(plain.indexOf(search, from));
      expect(text.lineStart(from)).toBe(lineStart(plain, from));
      expect(text.nextLine(from)).toBe(nextLine(plain, from));
    }
    expect(text.toString()).toBe(plain);
  });

  it('takes the two halves of a line break for one', () => {
    const text = Text.of('a\r\nb\rc\nd');
    expect([0, 1, 2, 3, 4, 5, 6, 7].map((at) => text.lineStart(at))).toEqual([0, 0, 0, 3, 3, 5, 5, 7]);
    expect([0, 1, 2, 3, 4, 5, 6, 7].map((at) => text.nextLine(at))).toEqual([3, 3, 3, 5, 5, 7, 7, 8]);
  });
});

function lineStart(text: string, offset: number): number {
  const at = text[offset - 1] === '\r' && text[offset] === '\n' ? offset - 1 : offset;
  return text
    .slice(0, at)
    .split(/(?<=[\r\n])/)
    .reduce((sum, line) => (/[\r\n]$/.test(line) ? sum + line.length : sum), 0);
}

function nextLine(text: string, offset: number): number {
  const found = /\r\n?|\n/.exec(text.slice(offset));
  return found ? offset + found.index + found[0].length : text.length;
}
