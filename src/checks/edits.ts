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
      const block = blockOf(edit.statement, text);
      const end = block ? block.begin : { line: whole.endLine, column: whole.endColumn };
      const space = block ? [`${edit.text} `] : [` ${edit.text}`];
      return { file, range: at(end.line, end.column), text: space.join('') };
    }
    case 'insertInside': {
      const block = blockOf(edit.statement, text);
      const indent = `${newLine}  ${edit.text}`;
      if (block) return { file, range: at(block.begin.line, block.begin.column + 1), text: indent };
      return { file, range: at(whole.endLine, whole.endColumn), text: ` {${indent}${newLine}}` };
    }
    case 'insertAfter':
      return { file, range: at(whole.endLine, endOfLine(text, whole.endLine)), text: `${newLine}${edit.text}` };
    case 'delete':
      return { file, range: linesOf(whole, text), text: '' };
  }
}

function at(line: number, column: number): TextRange {
  return { line, column, endLine: line, endColumn: column };
}

function isSame(a: TextRange, b: TextRange): boolean {
  return (
    a.line === b.line && a.column === b.column && a.endLine === b.endLine && a.endColumn === b.endColumn
  );
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

/** Where the block of a statement begins: the first brace that stands neither in text nor in a comment. */
function blockOf(
  { source }: Statement,
  text: string,
): { readonly begin: { readonly line: number; readonly column: number } } | undefined {
  const { line, column, endLine, endColumn } = source.whole();
  const lines = text.split(LINES).slice(line, endLine + 1);
  const wanted = /"[^"]*"?|[“”„«][^“”„«»]*[“”»]?|\/\/.*|\/\*[\s\S]*?\*\/|\{/g;
  let inComment = false;
  for (const [i, one] of lines.entries()) {
    const until = line + i === endLine ? endColumn : one.length;
    let from = i === 0 ? column : 0;
    if (inComment) {
      const close = one.indexOf('*/', from);
      if (close < 0) continue;
      from = close + 2;
      inComment = false;
    }
    wanted.lastIndex = from;
    for (let match = wanted.exec(one); match && match.index < until; match = wanted.exec(one)) {
      if (match[0] === '{') return { begin: { line: line + i, column: match.index } };
    }
    inComment = one.slice(from).includes('/*') && one.lastIndexOf('/*') > one.lastIndexOf('*/');
  }
  return undefined;
}
