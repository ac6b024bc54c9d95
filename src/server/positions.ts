/** What stands at a place in the text. */
import { type AstNode, type CstNode, CstUtils, type LangiumDocument, type LeafCstNode } from 'langium';
import type { Position, Range } from 'vscode-languageserver';
import type { PlanFile, Statement as StatementNode } from '../language/generated/ast.ts';

/** The word or sign at a place; between two, the one that is a word, and of two words the one behind. */
export function leafAt(document: LangiumDocument, position: Position): LeafCstNode | undefined {
  const root = document.parseResult.value.$cstNode;
  if (!root) return undefined;
  const offset = document.textDocument.offsetAt(position);
  const here = CstUtils.findLeafNodeAtOffset(root, offset);
  if (here && !here.hidden && isWord(here.text)) return here;
  const before = offset > 0 ? CstUtils.findLeafNodeAtOffset(root, offset - 1) : undefined;
  return before && !before.hidden && isWord(before.text) ? before : (here ?? undefined);
}

function isWord(text: string): boolean {
  return /^[\p{L}\p{N}_"]/u.test(text);
}

/** The statement that holds a node of the syntax tree. */
export function statementNodeOf(node: AstNode): StatementNode | undefined {
  let statement: AstNode | undefined = node;
  while (statement?.$container?.$container) statement = statement.$container;
  return statement?.$container ? (statement as StatementNode) : undefined;
}

/** The last statement that begins at or before an offset. */
export function statementBefore(document: LangiumDocument, offset: number): StatementNode | undefined {
  return statementsOf(document)[countBefore(document, offset) - 1];
}

/** The statements that have a line in a range, in order. */
export function statementsWithin(document: LangiumDocument, { start, end }: Range): StatementNode[] {
  const { textDocument } = document;
  const from = textDocument.offsetAt({ line: start.line, character: 0 });
  const to = textDocument.offsetAt({ line: end.line + 1, character: 0 });
  const first = countBefore(document, from) - 1;
  const reachesIn = (statementsOf(document)[first]?.$cstNode?.end ?? 0) > from;
  return statementsOf(document).slice(Math.max(0, reachesIn ? first : first + 1), countBefore(document, to));
}

function statementsOf(document: LangiumDocument): readonly StatementNode[] {
  return (document.parseResult.value as PlanFile).statements;
}

/** How many statements begin at or before an offset. */
function countBefore(document: LangiumDocument, offset: number): number {
  const statements = statementsOf(document);
  let low = 0;
  let high = statements.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((statements[middle]?.$cstNode?.offset ?? 0) <= offset) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The statement in whose text an offset lies. */
export function statementAt(document: LangiumDocument, offset: number): StatementNode | undefined {
  const statement = statementBefore(document, offset);
  return statement?.$cstNode && offset <= statement.$cstNode.end ? statement : undefined;
}

/** The node of the syntax tree of this type that a part of the text lies in. */
export function enclosing<T extends AstNode>(leaf: CstNode, type: string): T | undefined {
  let node: AstNode | undefined = leaf.astNode;
  while (node && node.$type !== type) node = node.$container;
  return node as T | undefined;
}
