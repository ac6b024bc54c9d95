import type { Analysis } from '../analysis/model.ts';
import type { Statement, Unreadable } from '../plan/plan.ts';
import type { Finding, Fix, Severity } from './finding.ts';

/** What a check says of one finding; name and usual severity are the check's own. */
export type Report = Said & (AtStatement | AtTopOfFile);

interface AtStatement {
  readonly statement: Statement;
  /** Part of the statement, as `Source.range` takes it. */
  readonly part?: string | undefined;
}

interface AtTopOfFile {
  readonly file: string;
}

interface Said {
  readonly message: string;
  /** Where it is not the check's usual one. */
  readonly severity?: Severity;
  readonly subject?: string | null;
  readonly segment?: string | null;
  readonly related?: Finding['related'];
  /** What mends it; a function is asked only when somebody wants to see the fixes, about the analysis of then. */
  readonly fixes?: readonly Fix[] | ((analysis: Analysis) => readonly Fix[]);
}

/** What is told of a check to people: pages, `explain` and the link on a finding are made from it. */
export interface CheckText {
  /** What is found, in kebab-case, such as `link-overload`; `accept` and machines use it. The file has its name. */
  readonly name: string;
  readonly severity: Severity;
  /** One line: what is wrong when it speaks. */
  readonly summary: string;
  /**
   * Markdown in three parts: what it means and why it matters on the day; **How it is judged.** with the source of
   * the rule and its label; **What mends it.**
   */
  readonly explanation: string;
  /** A plan in which it speaks, and the same plan mended, in which nothing is found. Run as tests. */
  readonly examples: readonly Example[];
}

export interface Example {
  readonly wrong: string;
  readonly right: string;
  /** How often it speaks in the wrong plan; once where not said. */
  readonly times?: number;
}

/** One rule. It reads the analysis and reports; it computes nothing. */
export interface Check extends CheckText {
  /** `idle`: what it reads is too costly to be worked out on every keystroke. */
  readonly when?: 'idle';
  /** @param unreadables What of the plan's text could not be read, which is told already. */
  find(analysis: Analysis, report: (finding: Report) => void, unreadables: readonly Unreadable[]): void;
}

/** A check that speaks of what is written wrongly in one statement, which the reader has told already. */
export function faultCheck(check: CheckText): Check {
  return {
    ...check,
    find({ plan }, report) {
      for (const statement of plan.statements) {
        for (const found of faultReports(statement, check.name)) report(found);
      }
    },
  };
}

/** What the reader has told of a statement under the name of one check. */
export function faultReports(statement: Statement, check: string): Report[] {
  return statement.faults
    .filter((fault) => fault.check === check)
    .map(({ fix, part, message }) => ({
      message,
      statement,
      part,
      fixes: fix ? [{ title: fix.title, edits: [{ kind: 'replace', statement, part, text: fix.text }] }] : [],
    }));
}
