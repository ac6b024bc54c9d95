import { CstUtils, type LangiumDocument, URI, UriUtils } from 'langium';
import { type CodeAction, CodeActionKind, TextDocumentEdit, TextEdit } from 'vscode-languageserver';
import type { Kit, PlanFile } from '../../language/generated/ast.ts';
import { resolveImport } from '../../language/imports.ts';
import type { Asked, Refactoring } from './refactorings.ts';

/** Where kit goes when it leaves the plan. */
const KIT_FILE = 'kit.feedplot';

/** Moves the kit of a plan into a file of its own, which other plans can import too. */
export const moveKit: Refactoring = (asked) => {
  const { document, statement, abilities, plan } = asked;
  if (statement.fact.kind !== 'kit' || !abilities.createsFiles || document.uri.toString() !== plan.uri)
    return [];
  const file = document.parseResult.value as PlanFile;
  const kits = file.statements.filter((node): node is Kit => node.$type === 'Kit');
  const { name } = statement.fact;
  const here = kits.filter((kit) => kit.name === name);
  return [
    moveAction(asked, here, `Move the kit ${name} to ${KIT_FILE}`),
    ...(kits.length > 1 ? [moveAction(asked, kits, `Move all ${kits.length} kits to ${KIT_FILE}`)] : []),
  ].flatMap((action) => action ?? []);
};

function moveAction(
  { document, shared }: Asked,
  kits: readonly Kit[],
  title: string,
): CodeAction | undefined {
  const { LangiumDocuments } = shared.workspace;
  const target = resolveImport(document.uri.toString(), KIT_FILE);
  if (!target) return undefined;
  const present = LangiumDocuments.getDocument(URI.parse(target));
  if (present && shared.plans.Plans.read(present).hasPlan) return undefined;
  const ranges = kits.flatMap((kit) => rangeWithComment(document, kit) ?? []);
  const { textDocument } = document;
  const newline = textDocument.getText().includes('\r\n') ? '\r\n' : '\n';
  const text = ranges
    .map(({ start, end }) => textDocument.getText().slice(start, end))
    .join(newline + newline);
  const removals = ranges.map(({ start, end }) => TextEdit.del(linesOf(document, start, end)));
  const edits = [...importEdit(document, target, newline), ...removals];
  return {
    title,
    kind: CodeActionKind.RefactorExtract,
    edit: {
      documentChanges: [
        ...(present ? [] : [{ kind: 'create' as const, uri: target, options: { ignoreIfExists: true } }]),
        TextDocumentEdit.create({ uri: target, version: null }, [
          TextEdit.insert(endOf(present), `${present ? newline : ''}${text}${newline}`),
        ]),
        TextDocumentEdit.create({ uri: textDocument.uri, version: null }, edits),
      ],
    },
  };
}

function rangeWithComment(
  document: LangiumDocument,
  { $cstNode }: Kit,
): { start: number; end: number } | undefined {
  if (!$cstNode) return undefined;
  const comment = CstUtils.findCommentNode($cstNode, ['ML_COMMENT']);
  const between = comment && document.textDocument.getText().slice(comment.end, $cstNode.offset);
  const above = comment?.text.startsWith('/**') && /^[ \t]*\r?\n[ \t]*$/.test(between ?? '');
  return { start: above ? comment!.offset : $cstNode.offset, end: $cstNode.end };
}

/** The lines of a statement, with one blank line behind them if there is one. */
function linesOf({ textDocument }: LangiumDocument, start: number, end: number) {
  const text = textDocument.getText();
  const rest = /^[ \t]*(\r?\n)?([ \t]*\r?\n)?/.exec(text.slice(end))![0].length;
  return { start: textDocument.positionAt(start), end: textDocument.positionAt(end + rest) };
}

/** The line that brings the kit back in, behind the other imports or the head of the plan; none if it is there. */
function importEdit(document: LangiumDocument, target: string, newline: string): TextEdit[] {
  const { statements } = document.parseResult.value as PlanFile;
  const uri = document.uri.toString();
  const imports = statements.filter((statement) => statement.$type === 'Import');
  if (imports.some(({ path }) => resolveImport(uri, path ?? '') === target)) return [];
  const before = imports.at(-1) ?? statements.find(({ $type }) => $type === 'PlanHead');
  const line = `import "${UriUtils.basename(URI.parse(target))}"`;
  if (!before?.$cstNode) return [TextEdit.insert({ line: 0, character: 0 }, line + newline)];
  const gap = imports.length > 0 ? newline : newline + newline;
  return [TextEdit.insert(before.$cstNode.range.end, gap + line)];
}

function endOf(document: LangiumDocument | undefined) {
  if (!document) return { line: 0, character: 0 };
  return document.textDocument.positionAt(document.textDocument.getText().length);
}
