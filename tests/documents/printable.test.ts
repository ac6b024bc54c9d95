import { expect, test } from 'vitest';
import { oneLine, printable } from '../../src/documents/printable.ts';

test.each([
  ['an escape sequence', 'a\u001b[2Jb', 'a\\u{1b}[2Jb'],
  ['a bell', 'a\u0007', 'a\\u{7}'],
  ['a C1 control', 'a\u009b31m', 'a\\u{9b}31m'],
  ['a carriage return that would overwrite the line', 'error\rfine', 'error\\u{d}fine'],
  // Unicode Technical Report 36: a mark that turns the direction makes a line read other than it is.
  ['a mark of direction', 'a\u202Eb', 'a\\u{202e}b'],
  ['half a character', 'a\uD800', 'a\\u{d800}'],
  ['a line separator', 'a\u2028b', 'a\\u{2028}b'],
])('%s is shown as its code', (_, text, shown) => {
  expect(printable(text)).toBe(shown);
});

test('letters of every script, accents and joined signs stay', () => {
  const text = 'Büro 舞台 नमस्ते \u{1F469}\u200D\u{1F3A4}';
  expect(printable(text)).toBe(text);
});

test('one line is one line, and not longer than asked for', () => {
  expect(oneLine('a\r\n  b\nc')).toBe('a b c');
  expect(oneLine('x'.repeat(50), 10)).toBe(`${'x'.repeat(9)}…`);
});
