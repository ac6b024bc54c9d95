import type { Paint } from '../paint.ts';
import { oneLine } from '../printable.ts';
import { countBySeverity, counted, type LocatedFinding, type Location } from './located.ts';

/** More words than anyone reads in one finding. */
const LONGEST_MESSAGE = 2000;

/** More findings than anyone goes through at a terminal. */
const MOST_FINDINGS = 1000;

/**
 * Findings for a terminal, one to a line: `file:line:column: severity check: message`. The other places that have a part
 * in it stand below, indented.
 */
export function findingsText(findings: readonly LocatedFinding[], paint: Paint): string[] {
  const left = findings.length - MOST_FINDINGS;
  const lines = findings.slice(0, MOST_FINDINGS).flatMap((finding) => {
    const { severity, check, message, related } = finding;
    const head = `${paint.heading(position(finding))}: ${paint[severity](`${severity} ${check}`)}: `;
    return [
      head + oneLine(message, LONGEST_MESSAGE),
      ...related.map((one) => `  ${position(one)}: ${oneLine(one.message)}`),
    ];
  });
  if (left > 0) lines.push(`${left} more are not shown: \`feedplot check --output json\` lists all.`);
  return lines;
}

function position({ file, line, column }: Location): string {
  return `${oneLine(file)}:${line}:${column}`;
}

/** The last line: how much was found in which plans. */
export function summaryText(
  findings: readonly LocatedFinding[],
  plans: readonly string[],
  paint: Paint,
): string {
  const { error, warning, info } = countBySeverity(findings);
  const where = plans.length === 1 ? oneLine(plans[0]!) : `${plans.length} files`;
  if (findings.length === 0) return `Nothing wrong in ${where}.`;
  const counts = [
    error > 0 ? paint.error(counted(error, 'error')) : '',
    warning > 0 ? paint.warning(counted(warning, 'warning')) : '',
    info > 0 ? paint.info(counted(info, 'note')) : '',
  ].filter(Boolean);
  return `${counts.join(', ')} in ${where}. \`feedplot explain CHECK\` tells what a check means.`;
}
