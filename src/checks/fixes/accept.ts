import type { Analysis } from '../../analysis/model.ts';
import type { Statement } from '../../plan/plan.ts';
import type { Finding, Fix } from '../finding.ts';

/** Checks of what cannot be lived with: the plan does not say what it means. */
const NEVER_ACCEPTED: ReadonlySet<string> = new Set(['unreadable', 'tool-fault', 'nothing-accepted']);

/** The finding accepted with a reason, in the plan's own file behind what was accepted before. */
export function acceptFix({ plan }: Analysis, finding: Finding): Fix | undefined {
  const { check, subject, place } = finding;
  if (subject === null || NEVER_ACCEPTED.has(check) || !('statement' in place)) return undefined;
  let last: Statement | undefined;
  let lastAccepted: Statement | undefined;
  for (const statement of plan.statements) {
    if (statement.source.file !== plan.file) continue;
    last = statement;
    if (statement.fact.kind === 'accept') lastAccepted = statement;
  }
  const statement = lastAccepted ?? last;
  if (!statement) return undefined;
  const text = `accept ${check} on ${subject} "say why it is acceptable"`;
  return { title: 'Accept this with a reason', edits: [{ kind: 'insertAfter', statement, text }] };
}
