import type { Finding, Severity } from '../../checks/finding.ts';

/** Findings that a change brought, and those that it mended, the most serious first. Renamed things keep their findings. */
export function findingChangesOf(
  old: readonly Finding[],
  fresh: readonly Finding[],
  newName: (name: string) => string,
): { brought: Finding[]; mended: Finding[] } {
  return {
    brought: worstFirst(
      without(
        fresh,
        old.map((finding) => keyOf(finding, newName)),
        (name) => name,
      ),
    ),
    mended: worstFirst(
      without(
        old,
        fresh.map((finding) => keyOf(finding, (name) => name)),
        newName,
      ),
    ),
  };
}

/** A finding is known by its check, what it is about and the segment: figures in its message may change. */
function keyOf({ check, subject, segment, message }: Finding, newName: (name: string) => string): string {
  const about = subject === null ? message : subject.replace(/[^\s.>,-]+(?:-[^\s.>,-]+)*/g, newName);
  return `${check}\n${about}\n${segment === null ? '' : newName(segment)}`;
}

/** Those of a list that have no counterpart among the keys, each key used up once. */
function without(
  findings: readonly Finding[],
  keys: readonly string[],
  newName: (name: string) => string,
): Finding[] {
  const counts = new Map<string, number>();
  for (const key of keys) counts.set(key, (counts.get(key) ?? 0) + 1);
  return findings.filter((finding) => {
    const key = keyOf(finding, newName);
    const count = counts.get(key) ?? 0;
    if (count > 0) counts.set(key, count - 1);
    return count === 0;
  });
}

const weight: Record<Severity, number> = { error: 0, warning: 1, info: 2 };

function worstFirst(findings: readonly Finding[]): Finding[] {
  return [...findings].sort((a, b) => weight[a.severity] - weight[b.severity]);
}
