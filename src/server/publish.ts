import type { LangiumDocument } from 'langium';
import type { Diagnostic, DiagnosticRelatedInformation } from 'vscode-languageserver';
import { DiagnosticSeverity, type Range } from 'vscode-languageserver-types';
import { type Finding, locate, type Severity } from '../checks/finding.ts';
import { statementFindings } from '../checks/findings.ts';
import { toolFault } from '../checks/tool-fault.ts';
import { treeOf } from '../language/incremental/file-tree.ts';
import type { TextRange } from '../plan/plan.ts';
import { OpenText } from './open-text.ts';
import type { Plans } from './plans.ts';
import { explanationAddress } from './protocol.ts';
import type { FeedplotSharedServices } from './services.ts';

/** More findings than a person reads in one file; the rest is counted. */
const MOST_FINDINGS = 200;

const severities: Record<Severity, DiagnosticSeverity> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  info: DiagnosticSeverity.Information,
};

/**
 * Tells the editor every file's findings: those of the plans that it belongs to, and for a file of no plan those of
 * its own statements. A file is told again only when what it would be told differs, or when its text has a new version
 * that the findings are to be known for.
 */
export class Publisher {
  readonly #shared: FeedplotSharedServices;
  readonly #told = new Map<string, { readonly version: number | undefined; readonly text: string }>();

  constructor(shared: FeedplotSharedServices) {
    this.#shared = shared;
  }

  publish(documents: readonly LangiumDocument[], plans: Plans): void {
    if (!this.#shared.lsp.Connection) return;
    const byFile = findingsByFile(plans);
    const gone = new Set(this.#told.keys());
    for (const document of documents) {
      const uri = document.uri.toString();
      gone.delete(uri);
      const open = this.#shared.workspace.TextDocuments.get(uri);
      // What is typed while a plan is worked out is told with the next findings.
      if (open instanceof OpenText && treeOf(document)?.text !== open.text) continue;
      const own = byFile.get(uri) ?? statementFindings(plans.read(document));
      const fault = plans.failed.has(uri) ? [faultOf(uri)] : [];
      this.#tell(uri, open?.version, [...fault, ...own]);
    }
    for (const uri of gone) {
      this.#tell(uri, undefined, []);
      this.#told.delete(uri);
    }
  }

  #tell(uri: string, version: number | undefined, findings: readonly Finding[]): void {
    const diagnostics = diagnosticsOf(findings, this.#shared.plans.Abilities.options.showsExplanations);
    const text = JSON.stringify(diagnostics);
    const told = this.#told.get(uri);
    if (told ? told.text === text && told.version === version : diagnostics.length === 0 && !version) return;
    this.#told.set(uri, { version, text });
    void this.#shared.lsp.Connection?.sendDiagnostics({ uri, ...(version && { version }), diagnostics });
  }
}

function findingsByFile(plans: Plans): Map<string, Finding[]> {
  const byFile = new Map<string, Finding[]>();
  for (const { assembled, findings } of plans.all().values()) {
    for (const file of assembled.plan.files) if (!byFile.has(file)) byFile.set(file, []);
    for (const finding of findings) byFile.get(fileOf(finding))?.push(finding);
  }
  return byFile;
}

function faultOf(file: string): Finding {
  return {
    check: toolFault.name,
    severity: toolFault.severity,
    message:
      'This plan could not be worked out. That is a fault of Feedplot, not of the plan: please report it with what the log says.',
    place: { file, range: { line: 0, column: 0, endLine: 0, endColumn: 1 } },
    subject: null,
    segment: null,
    related: [],
    fixes: [],
  };
}

function fileOf({ place }: Finding): string {
  return 'statement' in place ? place.statement.source.file : place.file;
}

/**
 * Findings as the protocol has them, the most serious first where there are too many.
 *
 * @param explained The editor can show the explanation of a check, so each finding leads there.
 */
export function diagnosticsOf(findings: readonly Finding[], explained = false): Diagnostic[] {
  if (findings.length <= MOST_FINDINGS) return findings.map((finding) => diagnosticOf(finding, explained));
  const weight = (finding: Finding) => severities[finding.severity];
  const shown = [...findings].sort((a, b) => weight(a) - weight(b)).slice(0, MOST_FINDINGS);
  const notice: Diagnostic = {
    severity: DiagnosticSeverity.Information,
    range: { start: { line: 0, character: 0 }, end: { line: 0, character: 1 } },
    message: `${findings.length - MOST_FINDINGS} more findings in this file are not shown; \`feedplot check --output json\` lists all.`,
    source: 'feedplot',
  };
  return [...shown.map((finding) => diagnosticOf(finding, explained)), notice];
}

function diagnosticOf(finding: Finding, explained: boolean): Diagnostic {
  const diagnostic: Diagnostic = {
    severity: severities[finding.severity],
    range: rangeOf(locate(finding.place).range),
    message: finding.message,
    source: 'feedplot',
    code: finding.check,
  };
  if (explained) diagnostic.codeDescription = { href: explanationAddress(finding.check) };
  if (finding.related.length > 0) diagnostic.relatedInformation = finding.related.map(relatedOf);
  return diagnostic;
}

function relatedOf({ place, message }: Finding['related'][number]): DiagnosticRelatedInformation {
  const { file, range } = locate(place);
  return { location: { uri: file, range: rangeOf(range) }, message };
}

export function rangeOf({ line, column, endLine, endColumn }: TextRange): Range {
  return { start: { line, character: column }, end: { line: endLine, character: endColumn } };
}
