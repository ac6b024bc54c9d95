import type { LangiumDocument } from 'langium';
import type { Connection, Diagnostic, DiagnosticRelatedInformation } from 'vscode-languageserver';
import { DiagnosticSeverity, type Range } from 'vscode-languageserver-types';
import { type Finding, locate, type Severity } from '../checks/finding.ts';
import { statementFindings } from '../checks/findings.ts';
import type { TextRange } from '../plan/plan.ts';
import type { Plans } from './plans.ts';
import type { FeedplotSharedServices } from './services.ts';

/** More findings than a person reads in one file; the rest is counted. */
const MOST_FINDINGS = 200;

/** Where the explanation of a check is to be read. */
const EXPLANATIONS = 'https://feedplot.invalid/checks';

const severities: Record<Severity, DiagnosticSeverity> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  info: DiagnosticSeverity.Information,
};

/** Sends every file the findings of the plans that it belongs to; files of no plan get those of their own statements. */
export function publishFindings(
  shared: FeedplotSharedServices,
  documents: LangiumDocument[],
  plans: Plans,
): void {
  const connection: Connection | undefined = shared.lsp.Connection;
  if (!connection) return;
  const byFile = findingsByFile(plans);
  for (const document of documents) {
    const uri = document.uri.toString();
    const own = byFile.get(uri) ?? statementFindings(plans.read(document));
    const open = shared.workspace.TextDocuments.get(document.uri);
    const diagnostics = diagnosticsOf(own);
    connection.sendDiagnostics(open ? { uri, version: open.version, diagnostics } : { uri, diagnostics });
  }
}

function findingsByFile(plans: Plans): Map<string, Finding[]> {
  const byFile = new Map<string, Finding[]>();
  for (const { assembled, findings } of plans.all().values()) {
    for (const file of assembled.plan.files) if (!byFile.has(file)) byFile.set(file, []);
    for (const finding of findings) byFile.get(locate(finding.place).file)?.push(finding);
  }
  return byFile;
}

/** Findings as the protocol has them, the most serious first where there are too many. */
export function diagnosticsOf(findings: readonly Finding[]): Diagnostic[] {
  if (findings.length <= MOST_FINDINGS) return findings.map(diagnosticOf);
  const weight = (finding: Finding) => severities[finding.severity];
  const shown = [...findings].sort((a, b) => weight(a) - weight(b)).slice(0, MOST_FINDINGS);
  const notice: Diagnostic = {
    severity: DiagnosticSeverity.Information,
    range: { start: { line: 0, character: 0 }, end: { line: 0, character: 1 } },
    message: `${findings.length - MOST_FINDINGS} more findings in this file are not shown; \`feedplot check\` lists all.`,
    source: 'feedplot',
  };
  return [...shown.map(diagnosticOf), notice];
}

function diagnosticOf(finding: Finding): Diagnostic {
  const diagnostic: Diagnostic = {
    severity: severities[finding.severity],
    range: rangeOf(locate(finding.place).range),
    message: finding.message,
    source: 'feedplot',
    code: finding.check,
    codeDescription: { href: `${EXPLANATIONS}#${finding.check}` },
  };
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
