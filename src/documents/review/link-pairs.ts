import type { Analysis, Link } from '../../analysis/model.ts';
import type { Statement } from '../../plan/plan.ts';
import type { Matching } from './matching.ts';

/** A cable of the old plan and the one that it became. */
export interface LinkPair {
  readonly before: Link | undefined;
  readonly after: Link | undefined;
}

/** Every cable of both plans, paired as the statements that make them, in order of the new plan. */
export function pairLinks(old: Analysis, fresh: Analysis, { pairs }: Matching): LinkPair[] {
  const oldBy = byStatement(old);
  const newBy = byStatement(fresh);
  return pairs.flatMap(({ before, after }): LinkPair[] => {
    const [was, is] = [before && oldBy.get(before), after && newBy.get(after)];
    return was || is ? [{ before: was, after: is }] : [];
  });
}

function byStatement({ links }: Analysis): Map<Statement, Link> {
  return new Map(links.map((link) => [link.statement, link]));
}
