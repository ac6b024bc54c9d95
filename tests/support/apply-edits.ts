import { type Change, changesOf } from '../../src/checks/edits.ts';
import type { Edit } from '../../src/checks/finding.ts';
import { root } from './plans.ts';

/** Texts after edits; undefined when an edit does not fit the text. */
export function applied(
  texts: Record<string, string>,
  edits: readonly Edit[],
): Record<string, string> | undefined {
  const nameOf = (uri: string) => decodeURIComponent(uri.slice(root.length + 1));
  const changes = changesOf(edits, (uri) => texts[nameOf(uri)] ?? '');
  if (!changes) return undefined;
  const result = { ...texts };
  // From the end, so that what lies before stays where it is; of two at one place the first stays first.
  const backwards = changes
    .map((change, i) => ({ ...change, i }))
    .sort((a, b) => b.range.line - a.range.line || b.range.column - a.range.column || b.i - a.i);
  for (const change of backwards)
    result[nameOf(change.file)] = replaced(result[nameOf(change.file)] ?? '', change);
  return result;
}

function replaced(text: string, { range, text: mended }: Change): string {
  const offset = (line: number, column: number) => {
    const lines = text.split(/(?<=\r\n|\n|\r(?!\n))/);
    return lines.slice(0, line).join('').length + column;
  };
  const start = offset(range.line, range.column);
  return text.slice(0, start) + mended + text.slice(offset(range.endLine, range.endColumn));
}
