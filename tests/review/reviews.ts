/** Reviews of plans out of strings. */
import { analyse } from '../../src/analysis/analyse.ts';
import { checkPlan } from '../../src/checks/findings.ts';
import { reviewOf } from '../../src/documents/review/compare.ts';
import type { Review, Side } from '../../src/documents/review/review.ts';
import { assembledOf, root } from '../support/plans.ts';

export type Texts = string | Record<string, string>;

export function sideOf(texts: Texts, name: string): Side {
  const { plan, unreadables } = assembledOf(texts);
  const analysis = analyse(plan);
  return { analysis, ...checkPlan(analysis, unreadables), unreadable: unreadables.length, name };
}

export function reviewed(old: Texts, fresh: Texts): Review {
  return reviewOf(sideOf(old, 'before'), sideOf(fresh, 'after'));
}

/** Files by their names below the folder of the show. */
export function nameOf(uri: string): string {
  return decodeURIComponent(uri.slice(root.length + 1));
}

/** `renamed node box_desk`. */
export function thingsOf({ things }: Review): string[] {
  return things.map(({ change, kind, name }) => `${change} ${kind} ${name}`);
}

export function textsOf({ steps }: Review): string[] {
  return steps.map(({ text }) => text);
}
