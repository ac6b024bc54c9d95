import { describe, expect, test } from 'vitest';
import { csvOf, safeCell } from '../../src/documents/sheets/csv.ts';
import type { Cell } from '../../src/documents/sheets/sheet.ts';

const table = (titles: readonly string[], ...rows: readonly Cell[][]) => ({
  file: 'test',
  columns: titles.map((title) => ({ title })),
  rows,
});

/** The characters with which OWASP's page "CSV Injection" (published) says that a cell must not begin. */
const openers = ['=', '+', '-', '@', '\t', '\r', '\n', '＝', '＋', '－', '＠'];

test.each(openers)('a cell that begins with %j starts no formula', (opener) => {
  for (const before of ['', ' ', '"', "'"]) {
    const cell = safeCell(`${before}${opener}HYPERLINK("http://x")`);
    expect(cell).not.toMatch(/^[=+\-@\t\r\n＝＋－＠]/);
    expect(cell).not.toMatch(/^["\s]+[=+\-@＝＋－＠]/);
  }
});

test('a cell that begins like any other stays as it is, and keeps its words', () => {
  expect(safeCell('Box D · net1')).toBe('Box D · net1');
  expect(safeCell('-2+3')).toBe("'-2+3");
});

describe('figures', () => {
  test('of one unit: it stands in the head, and the cells are numbers, negative ones too', () => {
    const csv = csvOf(
      table(['What', 'Length'], ['a', { text: '58.5 m', value: 58.5 }], ['b', { text: '-3 m', value: -3 }]),
    );
    expect(csv).toBe('\uFEFFWhat,Length (m)\r\na,58.5\r\nb,-3\r\n');
  });

  test('without a unit are numbers as well', () => {
    expect(csvOf(table(['Count'], [{ text: '12', value: 12 }]))).toBe('\uFEFFCount\r\n12\r\n');
  });

  test('of several units stay words with their unit, so that nobody adds Gb/s to Mb/s', () => {
    const csv = csvOf(
      table(['Rate'], [{ text: '2.684 Gb/s', value: 2.684e9 }], [{ text: '2.9 Mb/s', value: 2.9e6 }]),
    );
    expect(csv).toBe('\uFEFFRate\r\n2.684 Gb/s\r\n2.9 Mb/s\r\n');
  });

  test('that are not known are words in a column of numbers', () => {
    expect(csvOf(table(['Length'], [{ text: '5 m', value: 5 }], ['not known']))).toBe(
      '\uFEFFLength (m)\r\n5\r\nnot known\r\n',
    );
  });

  test('text that only looks like a figure is text', () => {
    expect(csvOf(table(['Name'], ['12 m'], [{ text: '5 m', value: 5 }]))).toBe(
      '\uFEFFName (m)\r\n12 m\r\n5\r\n',
    );
  });
});

test('quotes, commas and line breaks are quoted as RFC 4180 has it', () => {
  expect(csvOf(table(['a,b'], ['x "y"\nz']))).toBe('\uFEFF"a,b"\r\n"x ""y"" z"\r\n');
});

test('second lines, pictures and ticks are words in the cell', () => {
  const cells: Cell[] = [
    { text: 'Judges', small: 'Platform' },
    { text: 'Program', picture: 7 },
    { text: '', tick: 'done', small: '2027-05-14' },
    { text: '', tick: 'open' },
  ];
  expect(csvOf(table(['a', 'b', 'c', 'd'], cells))).toBe(
    '\uFEFFa,b,c,d\r\nJudges; Platform,7 Program,done; 2027-05-14,\r\n',
  );
});
