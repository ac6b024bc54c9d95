import { printable } from '../printable.ts';
import type { LocatedFinding } from './located.ts';

const commands = { error: 'error', warning: 'warning', info: 'notice' } as const;

/**
 * Findings as workflow commands, which GitHub shows beside the lines of a pull request. The form and its escapes are
 * those of GitHub's documentation of workflow commands and its toolkit.
 */
export function findingsForGithub(findings: readonly LocatedFinding[]): string[] {
  return findings.map(({ severity, check, message, file, line, column, endLine, endColumn }) => {
    const properties: [string, string | number][] = [
      ['file', file],
      ['line', line],
      ['endLine', endLine],
      // Columns are taken only where both are on one line.
      ...(line === endLine
        ? ([
            ['col', column],
            ['endColumn', endColumn],
          ] as [string, number][])
        : []),
      ['title', check],
    ];
    const written = properties.map(([name, value]) => `${name}=${escapeProperty(String(value))}`);
    return `::${commands[severity]} ${written.join(',')}::${escapeData(message)}`;
  });
}

function escapeData(text: string): string {
  return printable(text).replaceAll('%', '%25').replaceAll('\n', '%0A');
}

function escapeProperty(text: string): string {
  return escapeData(text).replaceAll(':', '%3A').replaceAll(',', '%2C');
}
