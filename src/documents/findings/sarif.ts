import type { CheckText } from '../../checks/check.ts';
import type { Severity } from '../../checks/finding.ts';
import { printable } from '../printable.ts';
import type { LocatedFinding, Location } from './located.ts';

const levels: Record<Severity, 'error' | 'warning' | 'note'> = {
  error: 'error',
  warning: 'warning',
  info: 'note',
};

/**
 * Findings in the Static Analysis Results Interchange Format, version 2.1.0 of the OASIS standard.
 *
 * @param checks All checks: each is a rule, whether it speaks or not.
 * @param version The program's own.
 */
export function findingsSarif(
  findings: readonly LocatedFinding[],
  checks: readonly CheckText[],
  version: string,
): object {
  const ruleIndex = new Map(checks.map(({ name }, index) => [name, index]));
  return {
    $schema: 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json',
    version: '2.1.0',
    runs: [
      {
        tool: { driver: { name: 'Feedplot', version, rules: checks.map(rule) } },
        columnKind: 'utf16CodeUnits',
        results: findings.map((finding) => result(finding, ruleIndex.get(finding.check))),
      },
    ],
  };
}

function rule({ name, severity, summary, explanation }: CheckText): object {
  return {
    id: name,
    shortDescription: { text: summary },
    fullDescription: { text: summary },
    help: { text: explanation, markdown: explanation },
    defaultConfiguration: { level: levels[severity] },
  };
}

function result(finding: LocatedFinding, ruleIndex: number | undefined): object {
  const { check, severity, message, subject, segment, related } = finding;
  return {
    ruleId: check,
    ...(ruleIndex === undefined ? {} : { ruleIndex }),
    level: levels[severity],
    message: { text: plainText(message) },
    locations: [{ physicalLocation: physicalLocation(finding) }],
    ...(related.length === 0
      ? {}
      : {
          relatedLocations: related.map((one, id) => ({
            id,
            message: { text: plainText(one.message) },
            physicalLocation: physicalLocation(one),
          })),
        }),
    // Lines move with every edit; what a finding is about does not.
    partialFingerprints: { 'checkSubject/v1': [check, finding.file, subject ?? '', segment ?? ''].join('|') },
  };
}

/** In a message, brackets stand for links (§3.11.6) and are escaped with a backslash, as is that itself. */
function plainText(message: string): string {
  return printable(message).replace(/[\\[\]]/g, '\\$&');
}

function physicalLocation({ file, line, column, endLine, endColumn }: Location): object {
  return {
    artifactLocation: { uri: relativeUri(file), uriBaseId: '%SRCROOT%' },
    region: { startLine: line, startColumn: column, endLine, endColumn },
  };
}

function relativeUri(file: string): string {
  return file.split(/[\\/]/).map(encodeURIComponent).join('/');
}
