import type { Spoken } from '../analysis/model.ts';
import { subjectText } from '../analysis/subjects.ts';
import type { StatementOf } from '../plan/plan.ts';
import { linkSubject } from './words.ts';

/** Everything that the findings an acceptance means may have as their subject. */
export function subjectsOf({ fact }: StatementOf<'accept'>, of: Spoken): Set<string> {
  const subjects = new Set([subjectText(fact.subject)]);
  if (of.kind === 'link') subjects.add(linkSubject(of.link));
  else if (of.kind === 'run') subjects.add(of.run.name);
  else if (of.kind === 'feed') for (const feed of of.feeds) subjects.add(feed.name);
  return subjects;
}
