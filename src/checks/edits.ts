/** Fixes as changes of text, for the editor and for tests alike. */
import type { Statement, TextRange } from '../plan/plan.ts';
import type { Edit } from './finding.ts';

/** Text in place of a range of a file. */
export interface Change {
  readonly file: string;
  readonly range: TextRange;
  readonly text: string;
}

/**
 * The changes that edits mean, where the statements stand now.
 *
 * @param textOf The text of a file.
 * @returns undefined when a part that is to be replaced is not written any more: then the fix does not fit the text.
 */
export function changesOf(
  edits: readonly Edit[],
  textOf: (file: string) => string,
): readonly Change[] | undefined {
  const changes: Change[] = [];
  for (const edit of edits) {
    const change = changeOf(edit, textOf);
    if (!change) return undefined;
    changes.push(change);
  }
  return changes;
}

function changeOf(edit: Edit, textOf: (file: string) => string): Change | undefined {
  if (edit.kind === 'insertOnTop') {
    return { file: edit.file, range: at(0, 0), text: `${edit.text}${lineEnd(textOf(edit.file))}` };
  }
  const { source } = edit.statement;
  const { file } = source;
  const whole = source.whole();
  const text = textOf(file);
  const newLine = lineEnd(text);
  switch (edit.kind) {
    case 'replace': {
      const range = source.range(edit.part);
      // A part that is not written has the range of the statement's first line: that must never be overwritten.
      return isSame(range, source.range()) ? undefined : { file, range, text: edit.text };
    }
    case 'append': {
      const brace = braceOf(edit.statement, text);
      if (brace) return { file, range: at(brace.line, brace.column), text: `${edit.text} ` };
      return { file, range: at(whole.endLine, whole.endColumn), text: ` ${edit.text}` };
    }
    case 'insertInside': {
      const brace = braceOf(edit.statement, text);
      const line = `${newLine}  ${edit.text}`;
      if (brace) return { file, range: at(brace.line, brace.column + 1), text: line };
      return { file, range: at(whole.endLine, whole.endColumn), text: ` {${line}${newLine}}` };
    }
    case 'insertAfter':
      return {
        file,
        range: at(whole.endLine, endOfLine(text, whole.endLine)),
        text: `${newLine}${edit.text}`,
      };
    case 'delete':
      return { file, range: linesOf(whole, text), text: '' };
  }
}

interface Position {
  readonly line: number;
  readonly column: number;
}

function at(line: number, column: number): TextRange {
  return { line, column, endLine: line, endColumn: column };
}

function isSame(a: TextRange, b: TextRange): boolean {
  return a.line === b.line && a.column === b.column && a.endLine === b.endLine && a.endColumn === b.endColumn;
}

/** As the file ends its lines. */
function lineEnd(text: string): string {
  return text.includes('\r\n') ? '\r\n' : '\n';
}

const LINES = /\r\n|\r|\n/;

function lineAt(text: string, line: number): string {
  return text.split(LINES)[line] ?? '';
}

function endOfLine(text: string, line: number): number {
  return lineAt(text, line).length;
}

/** The statement with the rest of its last line and its line end; of the last line of a file, with the line end before it. */
function linesOf(whole: TextRange, text: string): TextRange {
  const lines = text.split(LINES);
  const last = lines.length - 1;
  if (whole.endLine < last) return { line: whole.line, column: 0, endLine: whole.endLine + 1, endColumn: 0 };
  const endColumn = (lines[last] ?? '').length;
  const before = whole.line - 1;
  if (before < 0) return { line: 0, column: 0, endLine: last, endColumn };
  return { line: before, column: (lines[before] ?? '').length, endLine: last, endColumn };
}

/** What stands in a statement before its block, in which a brace means nothing, and the brace itself. */
const TEXT_COMMENT_OR_BRACE = /"[^"\n]*"?|[“”„«][^“”„«»\n]*[“”»]?|\/\/[^\n]*|\/\*[\s\S]*?\*\/|\{/g;

/** Where the opening brace of a statement's block stands. */
function braceOf({ source }: Statement, text: string): Position | undefined {
  const { line, column, endLine, endColumn } = source.whole();
  const lines = text.split(LINES).slice(line, endLine + 1);
  const last = lines.length - 1;
  lines[last] = (lines[last] ?? '').slice(0, endColumn);
  lines[0] = ' '.repeat(column) + (lines[0] ?? '').slice(column);
  const statement = lines.join('\n');
  for (const { 0: found, index } of statement.matchAll(TEXT_COMMENT_OR_BRACE)) {
    if (found !== '{') continue;
    const before = statement.slice(0, index).split('\n');
    return { line: line + before.length - 1, column: before[before.length - 1]!.length };
  }
  return undefined;
}
