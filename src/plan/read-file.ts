import type { CompositeCstNode, LeafCstNode, ParseResult } from 'langium';
import type { PlanFile } from '../language/generated/ast.ts';
import { isStatementWord } from '../language/words.ts';
import type { Statement, StatementOf, TextRange, Unreadable } from './plan.ts';
import { readStatement } from './read-statement.ts';
import { TextSource } from './text-source.ts';

/** One file, read as far as it can be. */
export interface ReadFile {
  readonly uri: string;
  readonly statements: readonly Statement[];
  readonly imports: readonly StatementOf<'import'>[];
  readonly hasPlan: boolean;
  readonly unreadables: readonly Unreadable[];
  /** The statement that was read from a node of the syntax tree. */
  statementOf(node: object): Statement | undefined;
}

/** Reads the facts out of a parsed file. Errors of the text are kept beside what could be read. */
export function readFile(uri: string, parsed: ParseResult<PlanFile>): ReadFile {
  const descriptions = descriptionsOf(parsed.value.$cstNode as CompositeCstNode | undefined);
  const statements: Statement[] = [];
  const byNode = new Map<object, Statement>();
  for (const node of parsed.value.statements) {
    const statement = readStatement(
      node,
      new TextSource(uri, node),
      node.$cstNode && descriptions.get(node.$cstNode),
    );
    if (!statement) continue;
    statements.push(statement);
    byNode.set(node, statement);
  }
  return {
    uri,
    statements,
    imports: statements.filter((s): s is StatementOf<'import'> => s.fact.kind === 'import'),
    hasPlan: statements.some((s) => s.fact.kind === 'plan'),
    unreadables: unreadablesOf(uri, parsed),
    statementOf: (node) => byNode.get(node),
  };
}

/** The documentation comment directly above each statement. */
function descriptionsOf(root: CompositeCstNode | undefined): Map<object, string> {
  const descriptions = new Map<object, string>();
  let comment: string | undefined;
  for (const item of root?.content ?? []) {
    if (!item.hidden) {
      if (comment) descriptions.set(item, comment);
      comment = undefined;
    } else if ((item as LeafCstNode).tokenType.name === 'ML_COMMENT') {
      comment = item.text.startsWith('/**') ? commentText(item.text) : undefined;
    }
  }
  return descriptions;
}

function commentText(comment: string): string {
  return comment
    .replace(/^\/\*\*|\*\/$/g, '')
    .split(/\r?\n/)
    .map((line) => line.replace(/^\s*\* ?/, '').trim())
    .join('\n')
    .trim();
}

function unreadablesOf(uri: string, parsed: ParseResult<PlanFile>): Unreadable[] {
  const lexed = parsed.lexerErrors.map((error) => ({
    file: uri,
    message: error.message,
    range: oneLine((error.line ?? 1) - 1, (error.column ?? 1) - 1, Math.min(error.length, 80)),
  }));
  const parsedErrors = parsed.parserErrors.map((error) => {
    const { token } = error;
    const previous = (error as { previousToken?: typeof token }).previousToken;
    // What is missing at the end of a line is told there, not on the keyword of the next statement.
    const belongsToNext =
      !Number.isFinite(token.startOffset) ||
      (previous !== undefined && isStatementWord(token.image) && Number.isFinite(previous.startOffset));
    const at = belongsToNext && previous && Number.isFinite(previous.startOffset) ? previous : token;
    const known = Number.isFinite(at.startOffset);
    const range = known
      ? oneLine((at.startLine ?? 1) - 1, (at.startColumn ?? 1) - 1, at.image.length)
      : endOf(parsed);
    return { file: uri, message: error.message, range };
  });
  return [...lexed, ...parsedErrors];
}

function oneLine(line: number, column: number, length: number): TextRange {
  return { line, column, endLine: line, endColumn: column + Math.max(1, length) };
}

function endOf(parsed: ParseResult<PlanFile>): TextRange {
  const end = parsed.value.$cstNode?.range.end ?? { line: 0, character: 0 };
  return { line: end.line, column: end.character, endLine: end.line, endColumn: end.character };
}
