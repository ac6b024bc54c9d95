/**
 * The table of sources that the figures are checked against, read from the checks themselves.
 *
 * Run it to print the table: `node tests/published/sources.ts`.
 */
import { readdir } from 'node:fs/promises';
import { collect, type Label, type Row } from './source.ts';

export interface SourceRow {
  readonly source: string;
  readonly label: Label;
  readonly checks: number;
}

let declared: Promise<readonly Row[]> | undefined;

/** Every declaration of this folder, file by file. Files are read once: a module runs only at its first import. */
export function declarations(): Promise<readonly Row[]> {
  declared ??= readDeclarations();
  return declared;
}

async function readDeclarations(): Promise<readonly Row[]> {
  const folder = new URL('.', import.meta.url);
  const files = (await readdir(folder)).filter((name) => name.endsWith('.test.ts')).sort();
  return collect(async () => {
    for (const file of files) await import(new URL(file, folder).href);
  });
}

/** One row a source and label with the number of its checks, in order of names. */
export async function sources(): Promise<readonly SourceRow[]> {
  const bySource = new Map<string, SourceRow>();
  for (const { source, label, checks } of await declarations()) {
    const key = `${source}\n${label}`;
    bySource.set(key, { source, label, checks: checks + (bySource.get(key)?.checks ?? 0) });
  }
  return [...bySource.values()].sort(
    (a, b) => a.source.localeCompare(b.source, 'en') || a.label.localeCompare(b.label, 'en'),
  );
}

/** The rows as a Markdown table, with their sum. */
export function formatSources(rows: readonly SourceRow[]): string {
  const sum = rows.reduce((total, row) => total + row.checks, 0);
  const lines = rows.map(
    ({ source, label, checks }) => `| ${source.replaceAll('|', '\\|')} | ${label} | ${checks} |`,
  );
  return ['| source | label | checks |', '|---|---|---:|', ...lines, `| all | | ${sum} |`, ''].join('\n');
}

if (process.argv[1] === new URL(import.meta.url).pathname)
  process.stdout.write(formatSources(await sources()));
