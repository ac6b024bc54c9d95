import type { Analysis } from '../analysis/model.ts';
import { subjectText } from '../analysis/subjects.ts';
import type { Statement } from '../plan/plan.ts';
import { nearest } from '../plan/spelling.ts';
import type { CheckText, Report } from './check.ts';
import { changedPlan, smallPlan } from './example-plans.ts';
import { statementsWithUnknownNames } from './unknown-name.ts';
import { quoted, shown } from './words.ts';

export const nothingAccepted: CheckText = {
  name: 'nothing-accepted',
  severity: 'warning',
  summary: 'An acceptance matches no finding.',
  explanation: `What was accepted is not found any more: the plan has changed, or the name of the check or of the subject is
wrong. Left standing it would silently accept the same trouble when it comes back.

**How it is judged.** After all other checks: one check, one subject, in all segments. A check whose figures are worked
out only when the editor is idle is judged then.

**What mends it.** Deleting it, or the name of the check and the subject as the finding has them.`,
  examples: [
    {
      wrong: smallPlan('accept link-reach on trunk "tested with everything running"'),
      right: changedPlan(
        'stage <-> desk 40 m',
        'stage <-> desk 120 m',
        'accept link-reach on trunk "tested with everything running"',
      ),
    },
    {
      wrong: smallPlan('accept link-too-long on trunk "tested"'),
      right: smallPlan(),
    },
  ],
};

/** What the other checks have left of the acceptances. */
export interface Outcome {
  /** The names of all checks. */
  readonly names: ReadonlySet<string>;
  /** Acceptances that have matched a finding. */
  readonly used: ReadonlySet<Statement>;
  /** Checks that were not asked this time. */
  readonly notAsked: ReadonlySet<string>;
}

/** Tells the acceptances that match nothing. */
export function findUnusedAcceptances(
  analysis: Analysis,
  { names, used, notAsked }: Outcome,
  report: (found: Report) => void,
): void {
  const unknown = statementsWithUnknownNames(analysis);
  for (const { statement } of analysis.acceptances) {
    const { check, subject } = statement.fact;
    if (used.has(statement) || notAsked.has(check) || unknown.has(statement)) continue;
    const known = names.has(check);
    const near = known ? undefined : nearest(check, names);
    report({
      statement,
      part: known ? 'subject' : 'check',
      message: known
        ? `${quoted(check)} has found nothing on ${shown(subjectText(subject))}, so nothing is accepted. Delete this, or write the subject as the finding has it.`
        : `There is no check ${quoted(check)}.${near === undefined ? '' : ` Did you mean ${quoted(near)}?`} Write the name that stands with the finding.`,
      fixes: [
        ...(near === undefined
          ? []
          : [
              {
                title: `Write ${quoted(near)}`,
                edits: [{ kind: 'replace', statement, part: 'check', text: near } as const],
              },
            ]),
        { title: 'Delete this acceptance', edits: [{ kind: 'delete', statement }] },
      ],
    });
  }
}
