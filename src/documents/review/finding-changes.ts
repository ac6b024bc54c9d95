import type { Finding, Severity } from '../../checks/finding.ts';
import type { AcceptedFinding } from '../../checks/findings.ts';
import type { Renames } from './renames.ts';
import type { AcceptanceChange, Side } from './review.ts';

export interface FindingChanges {
  /** The most serious first. */
  readonly brought: readonly Finding[];
  readonly mended: readonly Finding[];
  /** Found before and after, but accepted only now, or only before. */
  readonly accepted: readonly AcceptanceChange[];
  readonly noLongerAccepted: readonly AcceptanceChange[];
}

/**
 * Two checks of which the second speaks where the first would have become worse: a link over its headroom that is
 * overloaded now was not mended.
 */
export const worseningChecks: ReadonlyMap<string, string> = new Map([
  ['link-headroom', 'link-overload'],
  ['link-near-limit', 'link-reach'],
  ['case-heavy', 'case-over'],
  ['format-doubtful', 'format-too-big'],
]);

/** What a change brought and what it mended. Renamed things keep their findings; an accepted one is not a mended one. */
export function findingChangesOf(old: Side, fresh: Side, renames: Renames): FindingChanges {
  const was = old.findings.map((finding) => known(finding, renames));
  const is = fresh.findings.map((finding) => known(finding));
  const [brought, mended] = unmatched(is, was);
  const nowAccepted = acceptedKeys(fresh.accepted);
  const wasAccepted = acceptedKeys(old.accepted, renames);
  const became = new Set(brought.map(({ about, check }) => `${check}\n${about}`));
  const acceptanceOf = ({ about, check }: Known, all: ReadonlyMap<string, AcceptedFinding>) =>
    all.get(`${check}\n${about}`);
  return {
    brought: worstFirst(brought.filter((one) => !acceptanceOf(one, wasAccepted))),
    mended: worstFirst(
      mended.filter(
        (one) =>
          !acceptanceOf(one, nowAccepted) && !became.has(`${worseningChecks.get(one.check)}\n${one.about}`),
      ),
    ),
    accepted: mended.flatMap((one) => acceptanceOf(one, nowAccepted) ?? []),
    noLongerAccepted: brought.flatMap(({ finding, ...one }) => {
      const before = acceptanceOf({ finding, ...one }, wasAccepted);
      return before ? [{ finding, acceptance: before.acceptance }] : [];
    }),
  };
}

/** A finding by its check and what it is about, in the names of the new plan: figures in its message may change. */
interface Known {
  readonly finding: Finding;
  readonly check: string;
  readonly about: string;
  readonly segment: string;
}

function known(finding: Finding, renames?: Renames): Known {
  const { check, subject, segment, message } = finding;
  return {
    finding,
    check,
    about: subject === null ? message : (renames?.subject(subject) ?? subject),
    segment: segment === null ? '' : (renames?.of('segments', segment) ?? segment),
  };
}

/** Those of each list that have no counterpart in the other: in the same segment, else in any. */
function unmatched(these: readonly Known[], those: readonly Known[]): [Known[], Known[]] {
  const exactly = ({ check, about, segment }: Known) => `${check}\n${about}\n${segment}`;
  const anywhere = ({ check, about }: Known) => `${check}\n${about}`;
  let [left, right] = [[...these], [...those]];
  for (const keyOf of [exactly, anywhere]) {
    [left, right] = [without(left, right, keyOf), without(right, left, keyOf)];
  }
  return [left, right];
}

/** Those that have no counterpart, each of which counts once. */
function without(these: readonly Known[], those: readonly Known[], keyOf: (one: Known) => string): Known[] {
  const counts = new Map<string, number>();
  for (const one of those) counts.set(keyOf(one), (counts.get(keyOf(one)) ?? 0) + 1);
  return these.filter((one) => {
    const count = counts.get(keyOf(one)) ?? 0;
    if (count > 0) counts.set(keyOf(one), count - 1);
    return count === 0;
  });
}

/** An acceptance is of one check on one subject, in all segments. */
function acceptedKeys(
  accepted: readonly AcceptedFinding[],
  renames?: Renames,
): ReadonlyMap<string, AcceptedFinding> {
  return new Map(
    accepted.map((one) => {
      const { check, about } = known(one.finding, renames);
      return [`${check}\n${about}`, one];
    }),
  );
}

const weight: Record<Severity, number> = { error: 0, warning: 1, info: 2 };

function worstFirst(findings: readonly Known[]): Finding[] {
  return findings.map(({ finding }) => finding).sort((a, b) => weight[a.severity] - weight[b.severity]);
}
