import { expect, test } from 'vitest';
import { wrapDefinitions, wrapLine, wrapProse } from '../../src/documents/wrap.ts';

test('a wrapped line keeps its depth', () => {
  expect(wrapLine('    source: RFC 4175 and others', 20)).toEqual(['    source: RFC 4175', '    and others']);
});

test('paragraphs are filled, lists and indented lines stay', () => {
  const text = 'First words\nof a paragraph.\n\n- one\n- two\n  more\nLast.';
  expect(wrapProse(text, 40)).toEqual([
    'First words of a paragraph.',
    '',
    '- one',
    '- two',
    '  more',
    'Last.',
  ]);
});

test('a definition continues under its text', () => {
  expect(
    wrapDefinitions(
      [
        ['Rate', '10 Gb/s'],
        ['Takes also', 'a b c d'],
        ['Lanes', ''],
      ],
      18,
    ),
  ).toEqual(['Rate        10', '            Gb/s', 'Takes also  a b c', '            d']);
});
