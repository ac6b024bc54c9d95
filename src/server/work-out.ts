import { analyse, analyseAgain } from '../analysis/analyse.ts';
import { failing } from '../analysis/failures.ts';
import { goneFrom } from '../analysis/lists.ts';
import type { Analysis } from '../analysis/model.ts';
import type { Finding } from '../checks/finding.ts';
import { checking, type FindingsOptions, findingsOf, waitsForRest } from '../checks/findings.ts';
import { shown } from '../checks/words.ts';
import { type AssembledPlan, labelsReplacedSince } from '../plan/assemble.ts';

/** One plan as it stands: what was read, worked out and found. */
export interface CurrentPlan {
  readonly uri: string;
  readonly assembled: AssembledPlan;
  readonly analysis: Analysis;
  readonly findings: readonly Finding[];
  /** Whether every check was asked; while somebody types, the costly ones stand as they were. */
  readonly settled: boolean;
}

/**
 * Works a plan out anew where a fact is new, and asks the checks again where only words are; else it is as it was.
 *
 * @param isHeld Whether somebody goes on reading what `before` has worked out; else it is used up.
 */
export function workOut(
  uri: string,
  assembled: AssembledPlan,
  before: CurrentPlan | undefined,
  isHeld: boolean,
  onToolFault: FindingsOptions['onToolFault'] & object,
): CurrentPlan {
  const sameFacts = before?.assembled.plan === assembled.plan;
  if (sameFacts && !isWordedAnew(before, assembled)) return { ...before, assembled };
  const { plan } = assembled;
  const again = before && !isHeld ? () => analyseAgain(plan, before.analysis) : () => analyse(plan);
  const analysis = sameFacts ? before.analysis : again();
  const { unreadables, faulty } = assembled;
  if (!before)
    return {
      uri,
      assembled,
      analysis,
      findings: findingsOf(analysis, unreadables, { faulty, onToolFault }),
      settled: true,
    };
  const quick = findingsOf(analysis, unreadables, { when: 'typing', faulty, onToolFault });
  return { uri, assembled, analysis, findings: [...quick, ...standing(before, assembled)], settled: false };
}

/** Whether words have changed that a finding shows. Most labels that are typed are in none. */
function isWordedAnew({ assembled, findings }: CurrentPlan, now: AssembledPlan): boolean {
  if (assembled.wording !== now.wording) return true;
  const former = labelsReplacedSince(assembled);
  return (
    former.length > 0 && findings.length > 0 && former.some((label) => !label || isShown(label, findings))
  );
}

function isShown(label: string, findings: readonly Finding[]): boolean {
  const words = shown(label);
  return findings.some(
    ({ message, related }) => message.includes(words) || related.some((one) => one.message.includes(words)),
  );
}

/** Asks every check, the costly ones too, in small steps. */
export function* settling(
  { analysis, assembled }: CurrentPlan,
  onToolFault: FindingsOptions['onToolFault'] & object,
): Generator<undefined, readonly Finding[]> {
  yield* failing(analysis);
  const { unreadables, faulty } = assembled;
  const { findings } = yield* checking(analysis, unreadables, { faulty, onToolFault });
  return findings;
}

/** What the costly checks found before, on statements that are still there. */
function standing({ findings, assembled }: CurrentPlan, { plan }: AssembledPlan): readonly Finding[] {
  const waiting = findings.filter(waitsForRest);
  if (waiting.length === 0) return [];
  const gone = new Set(goneFrom(assembled.plan.statements, plan.statements));
  return waiting.filter(({ place }) => !('statement' in place) || !gone.has(place.statement));
}
