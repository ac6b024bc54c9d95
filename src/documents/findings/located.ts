import { type Finding, locate, type Place, type Severity } from '../../checks/finding.ts';

/** A stretch of text. Lines and columns count from one, columns in UTF-16 units; the end is behind the last. */
export interface Location {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
}

/** A finding as it is printed: places as names and numbers. */
export interface LocatedFinding extends Location {
  readonly check: string;
  readonly severity: Severity;
  readonly message: string;
  readonly subject: string | null;
  readonly segment: string | null;
  readonly related: readonly (Location & { readonly message: string })[];
}

/** What a file is called where the findings are read. */
export type NameOf = (uri: string) => string;

/**
 * Findings in the order of reading: by file as the plan is made of them, by line, by column. What is found in a file
 * that several plans share stands there once.
 *
 * @param files Addresses of the plan's files in order.
 */
export function locateFindings(
  findings: readonly Finding[],
  files: readonly string[],
  nameOf: NameOf,
): LocatedFinding[] {
  const order = new Map(files.map((file, index) => [nameOf(file), index]));
  const rank = ({ file }: Location) => order.get(file) ?? files.length;
  const once = new Map<string, LocatedFinding>();
  for (const finding of findings) {
    const located = locateFinding(finding, nameOf);
    const { file, line, column, check, segment, message } = located;
    once.set([file, line, column, check, segment, message].join('\n'), located);
  }
  return [...once.values()].sort((a, b) => rank(a) - rank(b) || a.line - b.line || a.column - b.column);
}

function locateFinding(finding: Finding, nameOf: NameOf): LocatedFinding {
  const { check, severity, message, subject, segment } = finding;
  return {
    ...location(finding.place, nameOf),
    check,
    severity,
    message,
    subject,
    segment,
    related: finding.related.map((one) => ({ ...location(one.place, nameOf), message: one.message })),
  };
}

function location(place: Place, nameOf: NameOf): Location {
  const { file, range } = locate(place);
  return {
    file: nameOf(file),
    line: range.line + 1,
    column: range.column + 1,
    endLine: range.endLine + 1,
    endColumn: range.endColumn + 1,
  };
}

/** How many there are of each severity. */
export function countBySeverity(findings: readonly { severity: Severity }[]): Record<Severity, number> {
  const counts = { error: 0, warning: 0, info: 0 };
  for (const { severity } of findings) counts[severity]++;
  return counts;
}

/** `1 error`, `2 errors`. */
export function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}
