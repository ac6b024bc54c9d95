import { oneLine } from '../printable.ts';
import { cellText, mergedTables } from './merged.ts';
import type { Sheet, SheetColumn } from './sheet.ts';

/** The sheets as one Markdown document for a wiki: tables as GitHub's specification has them (published). */
export function markdownOf(title: string, from: string, sheets: readonly Sheet[]): string {
  return `${[`# ${escapeMarkdown(title)}`, escapeMarkdown(from), ...sheets.map(sheetMarkdown)].join('\n\n')}\n`;
}

function sheetMarkdown(sheet: Sheet): string {
  const tables = mergedTables(sheet);
  return [
    `## ${escapeMarkdown(sheet.title)}`,
    sheet.about,
    (sheet.cautions ?? []).map((one) => `- **${escapeMarkdown(one)}**`).join('\n'),
    ...(tables.length === 0
      ? [sheet.empty]
      : tables.map(({ columns, rows }) =>
          table(
            columns,
            rows.map((row) => row.map(cellText)),
          ),
        )),
  ]
    .filter(Boolean)
    .join('\n\n');
}

function table(columns: readonly SheetColumn[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;
  return [
    line(columns.map(({ title }) => escapeMarkdown(title))),
    line(columns.map(({ kind }) => (kind === 'quantity' ? '--:' : '---'))),
    ...rows.map((row) => line(columns.map((_, i) => escapeMarkdown(row[i] ?? '')))),
  ].join('\n');
}

/** Text of a plan must not become markup, a link, a mention or another column. */
export function escapeMarkdown(words: string): string {
  return oneLine(words, 4000)
    .replace(/[\\*_[\]<>|#~`!&]/g, '\\$&')
    .replace(/:\/\//g, ':\\//')
    .replaceAll('@', '@&#8203;')
    .replace(/^(\d*)([-+=.)])/, '$1\\$2');
}
