import type { Acceptance, Analysis } from '../analysis/model.ts';
import { subjectText } from '../analysis/subjects.ts';
import type { Statement } from '../plan/plan.ts';
import { nearest } from '../plan/spelling.ts';
import type { CheckText, Report } from './check.ts';
import { changedPlan, smallPlan } from './example-plans.ts';
import type { Fix } from './finding.ts';
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
  for (const acceptance of analysis.acceptances) {
    const { statement } = acceptance;
    const { check } = statement.fact;
    if (used.has(statement) || notAsked.has(check) || unknown.has(statement)) continue;
    const known = names.has(check);
    const near = known ? undefined : nearest(check, names);
    report({
      statement,
      part: known ? 'subject' : 'check',
      message: known ? subjectMessage(analysis, acceptance) : checkMessage(check, near),
      fixes: [
        ...(near === undefined ? [] : [renameFix(statement, near)]),
        { title: 'Delete this acceptance', edits: [{ kind: 'delete', statement }] },
      ],
    });
  }
}

function checkMessage(check: string, near: string | undefined): string {
  const guess = near === undefined ? '' : ` Did you mean ${quoted(near)}?`;
  return `There is no check ${quoted(check)}.${guess} Write the name that stands with the finding.`;
}

function subjectMessage(analysis: Analysis, { statement, of }: Acceptance): string {
  const { check, subject } = statement.fact;
  const text = shown(subjectText(subject));
  if (subject.kind === 'name' && !isNamed(analysis, subject.name)) {
    return `Nothing is named ${quoted(text)}, so nothing is accepted. Write the subject as the finding has it, or delete this.`;
  }
  if (of.kind === 'nothing') {
    const kind = { name: 'thing', link: 'link', run: 'run', feed: 'feed' }[subject.kind];
    return `The plan has no ${kind} ${text}, so nothing is accepted. Write the subject as the finding has it, or delete this.`;
  }
  return `${quoted(check)} has found nothing on ${text}, so nothing is accepted. Delete this, or write the subject as the finding has it.`;
}

function isNamed(analysis: Analysis, name: string): boolean {
  const { things, places, kits, cables, interfaces, segments, cases } = analysis;
  return [things, places, kits, cables, interfaces, segments, cases].some((names) => names.has(name));
}

function renameFix(statement: Statement, near: string): Fix {
  return {
    title: `Write ${quoted(near)}`,
    edits: [{ kind: 'replace', statement, part: 'check', text: near }],
  };
}
