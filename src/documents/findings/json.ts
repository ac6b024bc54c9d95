import { list, object, oneOf, orNull, text, type ValueOf, whole } from '../json/schema.ts';
import { countBySeverity, type LocatedFinding, type Location } from './located.ts';

const locationShape = {
  file: text('Name of the file, from the folder in which the command ran'),
  line: whole('First line, from 1'),
  column: whole('First column, from 1, in UTF-16 units'),
  end_line: whole('Last line, from 1'),
  end_column: whole('The column behind the last, from 1, in UTF-16 units'),
};

export const findingShape = object('Something wrong or doubtful, with its place in the text', {
  check: text('Name of the check that speaks, as `explain` and `accept` take it'),
  severity: oneOf(
    'error: it cannot work, or breaks a stated limit. warning: it works but is doubtful. info: good to know',
    ['error', 'warning', 'info'],
  ),
  message: text('What is wrong, with its figures, and what would mend it'),
  ...locationShape,
  subject: orNull(
    text('What it is about, as `accept` writes it: a name, `a.out1 -> b.in1`, `source -> destination`'),
  ),
  segment: orNull(text('The segment in which it holds; null: without any segment, or always')),
  related: list(
    'Other places that have a part in it',
    object('A place', { message: text('What is there'), ...locationShape }),
  ),
});

export const reportShape = object('What `feedplot check --output json` prints', {
  schema: whole('Version of this shape: 1'),
  plans: list('Names of the files that were checked as plans', text('A file')),
  errors: whole('How many findings are errors'),
  warnings: whole('How many findings are warnings'),
  findings: list('All findings, by file and line', findingShape),
});

export function findingJson(finding: LocatedFinding): ValueOf<typeof findingShape> {
  const { check, severity, message, subject, segment } = finding;
  return {
    check,
    severity,
    message,
    ...locationJson(finding),
    subject,
    segment,
    related: finding.related.map((one) => ({ message: one.message, ...locationJson(one) })),
  };
}

function locationJson({ file, line, column, endLine, endColumn }: Location) {
  return { file, line, column, end_line: endLine, end_column: endColumn };
}

/** A check's whole report. @param plans Names of the files that were checked as plans. */
export function reportJson(
  findings: readonly LocatedFinding[],
  plans: readonly string[],
): ValueOf<typeof reportShape> {
  const counts = countBySeverity(findings);
  return {
    schema: 1,
    plans,
    errors: counts.error,
    warnings: counts.warning,
    findings: findings.map(findingJson),
  };
}
