import type { LangiumDocument } from 'langium';
import type { CodeActionProvider } from 'langium/lsp';
import { type CodeAction, CodeActionKind, type CodeActionParams, type Range } from 'vscode-languageserver';
import { type Finding, type Fix, locate } from '../checks/finding.ts';
import { statementFindings } from '../checks/findings.ts';
import { statementAt } from './positions.ts';
import { clientCommands, type ReasonWanted } from './protocol.ts';
import { diagnosticsOf, rangeOf } from './publish.ts';
import { refactoringsOf } from './refactorings/refactorings.ts';
import type { FeedplotLspServices, FeedplotSharedServices } from './services.ts';
import { workspaceEditOf } from './text-edits.ts';

/** The fixes that checks declare for what they find here, and changes of form that a person may want. */
export class PlanCodeActions implements CodeActionProvider {
  readonly #shared: FeedplotSharedServices;

  constructor(services: FeedplotLspServices) {
    this.#shared = services.shared as FeedplotSharedServices;
  }

  getCodeActions(document: LangiumDocument, { range, context }: CodeActionParams): CodeAction[] {
    const wanted = (kind: string) => !context.only || context.only.some((only) => kind.startsWith(only));
    return [
      ...(wanted(CodeActionKind.QuickFix) ? this.#fixes(document, range) : []),
      ...(wanted(CodeActionKind.Refactor) ? this.#refactorings(document, range) : []),
    ];
  }

  #fixes(document: LangiumDocument, range: Range): CodeAction[] {
    const here = this.#findings(document).filter((finding) => {
      const { file, range: found } = locate(finding.place);
      return file === document.uri.toString() && touches(rangeOf(found), range);
    });
    return here.flatMap((finding) =>
      finding.fixes.flatMap((fix, i) => this.#action(finding, fix, i === 0) ?? []),
    );
  }

  #findings(document: LangiumDocument): readonly Finding[] {
    const { Plans } = this.#shared.plans;
    const plan = Plans.of(document);
    if (!plan) return statementFindings(Plans.read(document));
    return plan.findings;
  }

  #action(finding: Finding, fix: Fix, first: boolean): CodeAction | undefined {
    const edit = workspaceEditOf(fix.edits, this.#shared.workspace.LangiumDocuments);
    if (!edit) return undefined;
    const reason = reasonWanted(edit.changes, finding);
    // Of several findings in one place a person must see which one is accepted.
    const title = plainTitle(reason ? `${fix.title}: ${finding.check}` : fix.title);
    const action: CodeAction = {
      title,
      kind: CodeActionKind.QuickFix,
      diagnostics: diagnosticsOf([finding], this.#shared.plans.Abilities.options.showsExplanations),
    };
    if (reason && this.#shared.plans.Abilities.options.asksForReason) {
      return { ...action, command: { title, command: clientCommands.accept, arguments: [reason] } };
    }
    return { ...action, edit, isPreferred: first && finding.check !== 'accept' };
  }

  #refactorings(document: LangiumDocument, range: Range): CodeAction[] {
    const node = statementAt(document, document.textDocument.offsetAt(range.start));
    const { Plans, Abilities } = this.#shared.plans;
    const plan = Plans.of(document);
    const statement = node && Plans.read(document).statementOf(node);
    if (!plan || !statement) return [];
    return refactoringsOf({ plan, statement, document, shared: this.#shared, abilities: Abilities });
  }
}

/** For an editor that asks: the line that accepts the finding, with a gap where the reason goes. */
function reasonWanted(
  changes: Record<string, readonly { range: Range; newText: string }[]> | undefined,
  { message }: Finding,
): ReasonWanted | undefined {
  const [[uri, edits] = []] = Object.entries(changes ?? {});
  const [only, ...others] = edits ?? [];
  const parts = only && /^(\s*accept [^"]*")[^"]*("\s*)$/.exec(only.newText);
  if (!uri || !parts || others.length > 0) return undefined;
  return { uri, position: only.range.start, before: parts[1]!, after: parts[2]!, message };
}

/** A menu shows plain text: the marks round names would stand there as they are. */
function plainTitle(title: string): string {
  return title.replaceAll('`', '');
}

function touches(a: Range, b: Range): boolean {
  const before = (x: Range['start'], y: Range['start']) =>
    x.line < y.line || (x.line === y.line && x.character < y.character);
  return !before(a.end, b.start) && !before(b.end, a.start);
}
