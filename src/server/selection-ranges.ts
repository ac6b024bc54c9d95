import { type CstNode, CstUtils, DocumentState, type LangiumDocument } from 'langium';
import { createRequestHandler } from 'langium/lsp';
import type {
  Connection,
  Position,
  Range,
  SelectionRange,
  SelectionRangeParams,
} from 'vscode-languageserver';
import { statementAt } from './positions.ts';
import type { FeedplotSharedServices } from './services.ts';

export function addSelectionRangeHandler(connection: Connection, services: FeedplotSharedServices): void {
  connection.onSelectionRanges(
    createRequestHandler(
      (_language, document, params: SelectionRangeParams) => selectionRanges(document, params),
      services,
      DocumentState.Parsed,
    ),
  );
}

/** Selections that grow: a word, the clause it is in, the statement with its description, its group, the file. */
function selectionRanges(document: LangiumDocument, params: SelectionRangeParams): SelectionRange[] {
  return params.positions.map((position) => growing(document, position));
}

function growing(document: LangiumDocument, position: Position): SelectionRange {
  const ranges = rangesAround(document, position);
  let selection: SelectionRange | undefined;
  for (const range of ranges.reverse()) selection = selection ? { range, parent: selection } : { range };
  return selection ?? { range: { start: position, end: position } };
}

/** From the smallest to the largest; each holds the one before. */
function rangesAround(document: LangiumDocument, position: Position): Range[] {
  const { textDocument } = document;
  const root = document.parseResult.value.$cstNode;
  const offset = textDocument.offsetAt(position);
  const ranges: Range[] = [];
  const add = (start: number, end: number) => {
    const range = { start: textDocument.positionAt(start), end: textDocument.positionAt(end) };
    const last = ranges.at(-1);
    if (!last || (holds(range, last) && !holds(last, range))) ranges.push(range);
  };
  let node: CstNode | undefined = root && CstUtils.findLeafNodeAtOffset(root, offset);
  node ??= root && offset > 0 ? CstUtils.findLeafNodeAtOffset(root, offset - 1) : undefined;
  for (; node && node !== root; node = node.container) {
    if (/^".+"$/.test(node.text)) add(node.offset + 1, node.end - 1);
    add(node.offset, node.end);
  }
  const statement = statementAt(document, offset)?.$cstNode;
  const comment = statement && CstUtils.findCommentNode(statement, ['ML_COMMENT']);
  if (statement && comment) add(comment.offset, statement.end);
  const text = textDocument.getText();
  add(groupStart(text, offset), groupEnd(text, offset));
  add(0, text.length);
  return ranges;
}

function holds(outer: Range, inner: Range): boolean {
  const after = (a: Position, b: Position) =>
    a.line > b.line || (a.line === b.line && a.character >= b.character);
  return after(inner.start, outer.start) && after(outer.end, inner.end);
}

/** Where the group of lines without a blank line between them begins. */
function groupStart(text: string, offset: number): number {
  const before = text.slice(0, offset);
  const blank = before.match(/^[\s\S]*\n[ \t]*\r?\n/);
  return blank ? blank[0].length : 0;
}

function groupEnd(text: string, offset: number): number {
  const blank = /\r?\n[ \t]*\r?\n/.exec(text.slice(offset));
  return blank ? offset + blank.index : text.trimEnd().length;
}
