import type { CompositeCstNode, LangiumDocument, LeafCstNode } from 'langium';
import type { FoldingRangeProvider } from 'langium/lsp';
import { type FoldingRange, FoldingRangeKind } from 'vscode-languageserver';
import type { PlanFile } from '../language/generated/ast.ts';

/**
 * What can be folded: blocks, comments, a row of imports, and sections. A section begins with a comment such as
 * `// ---- Boxes` and ends before the next.
 */
export class PlanFolding implements FoldingRangeProvider {
  getFoldingRanges(document: LangiumDocument): FoldingRange[] {
    const file = document.parseResult.value as PlanFile;
    const comments = commentsOf(file.$cstNode as CompositeCstNode | undefined);
    const lastLine = file.$cstNode?.range.end.line ?? 0;
    return [
      ...blocks(file),
      ...imports(file),
      ...blockComments(comments),
      ...sections(comments, lastLine),
      ...commentRuns(comments),
    ];
  }
}

function blocks(file: PlanFile): FoldingRange[] {
  return file.statements.flatMap(({ $cstNode }) => {
    if (!$cstNode) return [];
    const { start, end } = $cstNode.range;
    // The line of the closing brace stays.
    return end.line > start.line + 1 ? [{ startLine: start.line, endLine: end.line - 1 }] : [];
  });
}

function imports(file: PlanFile): FoldingRange[] {
  const found: FoldingRange[] = [];
  let first: number | undefined;
  let last = 0;
  const close = () => {
    if (first !== undefined && last > first)
      found.push({ startLine: first, endLine: last, kind: FoldingRangeKind.Imports });
    first = undefined;
  };
  for (const { $type, $cstNode } of file.statements) {
    if ($type !== 'Import') close();
    else if ($cstNode) {
      const { line } = $cstNode.range.start;
      first ??= line;
      last = line;
    }
  }
  close();
  return found;
}

interface Comment {
  readonly text: string;
  readonly line: number;
  readonly endLine: number;
  readonly block: boolean;
}

/** Comments between statements; those within one are too small to fold. */
function commentsOf(root: CompositeCstNode | undefined): Comment[] {
  return (root?.content ?? []).flatMap((item) => {
    if (!item.hidden) return [];
    const { start, end } = item.range;
    const block = (item as LeafCstNode).tokenType.name === 'ML_COMMENT';
    return [{ text: item.text, line: start.line, endLine: end.line, block }];
  });
}

function blockComments(comments: readonly Comment[]): FoldingRange[] {
  return comments
    .filter(({ block, line, endLine }) => block && endLine > line)
    .map(({ line, endLine }) => ({ startLine: line, endLine, kind: FoldingRangeKind.Comment }));
}

function sections(comments: readonly Comment[], lastLine: number): FoldingRange[] {
  const heads = comments.filter(({ text }) => /^\/\/\s*[-=#]{3,}\s*\S/.test(text));
  return heads.flatMap(({ line }, i) => {
    const next = heads[i + 1];
    const endLine = next ? next.line - 1 : lastLine;
    return endLine > line ? [{ startLine: line, endLine, kind: FoldingRangeKind.Region }] : [];
  });
}

/** Several `//` lines, one under the other. */
function commentRuns(comments: readonly Comment[]): FoldingRange[] {
  const found: FoldingRange[] = [];
  let run: Comment[] = [];
  const close = () => {
    const [first] = run;
    const last = run.at(-1);
    if (first && last && last.line > first.line)
      found.push({ startLine: first.line, endLine: last.line, kind: FoldingRangeKind.Comment });
    run = [];
  };
  for (const comment of comments) {
    const continues = run.at(-1)?.line === comment.line - 1;
    if (comment.block || !continues) close();
    if (!comment.block) run.push(comment);
  }
  close();
  return found;
}
