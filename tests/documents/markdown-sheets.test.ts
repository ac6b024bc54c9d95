import { expect, test } from 'vitest';
import { escapeMarkdown, markdownOf } from '../../src/documents/sheets/markdown.ts';
import type { Sheet } from '../../src/documents/sheets/sheet.ts';

const sheet: Sheet = {
  id: 'test',
  title: 'Cables | "all"',
  about: 'Read from the top.',
  cautions: ['Never look into a connector.'],
  empty: 'Nothing.',
  tables: [
    {
      file: 'cables',
      group: { heading: 'Way', title: 'desk | stage' },
      columns: [{ title: 'Name' }, { title: 'Length', kind: 'quantity' }],
      rows: [{ cells: ['<script>', { text: '5 m', value: 5 }] }],
    },
    {
      file: 'cables',
      group: { heading: 'Way', title: 'stage' },
      columns: [{ title: 'Name' }, { title: 'Length', kind: 'quantity' }],
      rows: [{ cells: ['[x](http://evil) @team', ''] }],
    },
  ],
};

test('tables of one sheet and one file are one table, what they have in common a column', () => {
  expect(markdownOf('Plan *A*', 'Revision C', [sheet])).toBe(`# Plan \\*A\\*

Revision C

## Cables \\| "all"

Read from the top.

- **Never look into a connector.**

| Way | Name | Length |
| --- | --- | --: |
| desk \\| stage | \\<script\\> | 5 m |
| stage | \\[x\\](http:\\//evil) @&#8203;team |  |
`);
});

test('a sheet without rows says why', () => {
  expect(markdownOf('Plan', '', [{ ...sheet, tables: [] }])).toContain('Nothing.');
});

test.each(['- item', '+ item', '1. item', '# head', '> quote', '* item', '`code`', '~~~', '![x](y)', '&lt;'])(
  '%s opens nothing',
  (text) => {
    expect(escapeMarkdown(text)).toMatch(/^(\\|\d)/);
  },
);
