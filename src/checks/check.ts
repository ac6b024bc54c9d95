import type { Analysis } from '../analysis/model.ts';
import type { Statement } from '../plan/plan.ts';
import type { Finding, Severity } from './finding.ts';

/** What a check says of one finding; name and usual severity are the check's own. */
export interface Report extends Partial<Omit<Finding, 'check' | 'place'>> {
  readonly message: string;
  readonly statement: Statement;
  readonly part?: string;
}

/**
 * One rule. Its documentation lives here, beside the rule: pages, `explain` and the link on a finding are made from
 * it, and its examples are run as tests.
 */
export interface Check {
  /** What is found, in kebab-case, such as `link-overload`; `accept` and machines use it. */
  readonly name: string;
  readonly severity: Severity;
  /** One line: what is wrong when it speaks. */
  readonly summary: string;
  /** Why it matters on the day, how it is judged (with the rule's source), and what mends it. Markdown. */
  readonly explanation: string;
  /** A plan in which it speaks once, and the same plan mended, in which it does not. */
  readonly examples: readonly { readonly wrong: string; readonly right: string }[];
  /** Reads the analysis and reports; computes nothing. */
  find(analysis: Analysis, report: (finding: Report) => void): void;
}

/** A check that speaks of what is written wrongly in one statement, which the reader has told already. */
export function faultCheck(check: Omit<Check, 'find'>): Check {
  return {
    ...check,
    find(analysis, report) {
      for (const statement of analysis.plan.statements) {
        for (const fault of statement.faults) {
          if (fault.check !== check.name) continue;
          const { fix, part, message } = fault;
          const fixes = fix ? [{ title: fix.title, edits: [{ kind: 'replace', statement, part, text: fix.text } as const] }] : [];
          report({ message, statement, part, fixes });
        }
      }
    },
  };
}
