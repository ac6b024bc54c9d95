import { describe, expect, test } from 'vitest';
import { type Table, textTable } from '../../src/documents/text-table.ts';
import { textWidth } from '../../src/documents/text-width.ts';

const table = (...rows: string[][]): Table => ({
  name: 'links',
  columns: [{ title: 'Link' }, { title: 'Load', right: true }],
  rows,
  empty: 'No links.',
});

describe('a table as text', () => {
  test('columns are aligned, numbers to the right', () => {
    expect(textTable(table(['trunk', '8.052 Gb/s'], ['b', '0']), 80)).toEqual([
      'Link         Load',
      'trunk  8.052 Gb/s',
      'b               0',
    ]);
  });

  test('wide characters keep the columns aligned', () => {
    const [, first, second] = textTable(table(['舞台', '1'], ['desk', '22']), 80);
    expect(first).toBe('舞台     1');
    expect(second).toBe('desk    22');
    expect(textWidth(first!)).toBe(textWidth(second!));
  });

  test('what is too wide is wrapped, and nothing is lost', () => {
    const lines = textTable(table(['box_platform.net <-> box_desk.net', '8.052 Gb/s']), 30);
    expect(lines.every((line) => textWidth(line) <= 30)).toBe(true);
    expect(lines).toEqual([
      'Link                      Load',
      'box_platform.net    8.052 Gb/s',
      '<-> box_desk.net',
    ]);
  });

  test('a word without a space is broken', () => {
    const lines = textTable(table(['x'.repeat(50), '1']), 30);
    expect(lines.every((line) => textWidth(line) <= 30)).toBe(true);
    expect(lines.join('').match(/x/g)).toHaveLength(50);
  });

  test('absurd lengths are cut, control characters shown as their code', () => {
    const lines = textTable(table(['\u001b[31mred\u0007', 'x'.repeat(100_000)]), 100);
    expect(lines.join('')).not.toMatch(/\p{Cc}/u);
    expect(lines.join('')).toContain('\\u{1b}[31mred\\u{7}');
    expect(lines.length).toBeLessThan(10);
  });
});
