import type { Plan, Statement } from '../plan/plan.ts';
import type { Analysis } from './model.ts';
import { plantOf } from './plant.ts';
import { followInPlant } from './plant-edits.ts';
import { Show } from './show.ts';
import { editBetween, isOfPlant, Statements } from './statements.ts';
import { keepShow, showOf } from './tools.ts';

/**
 * Works out a plan. Pure: the same plan gives the same analysis, whatever is wrong with it, and it never throws.
 *
 * First the plant (what stands and is plugged where), then the show: wishes, ways, formats and flows, delays, loads,
 * reaches. Each stage reads only those before it.
 *
 * @param before An earlier analysis of the plan. While all statements of the plant are the same objects, its plant is
 *   taken over; the result is the same as without.
 */
export function analyse(plan: Plan, before?: Analysis): Analysis {
  const statements = new Statements(plan);
  const show = before && showOf(before);
  const isKept = show !== undefined && areSame(show.plantStatements, statements.ofPlant());
  return finished(
    isKept ? new Show(statements, show.works, show.router.graph) : new Show(statements, plantOf(statements)),
    plan,
  );
}

/**
 * Works out a plan after an edit, with what `before` has worked out already; the result is the same as without. What the
 * edit leaves alone stays the same object, and what it touches is changed in place: `before` is used up.
 */
export function analyseAgain(plan: Plan, before: Analysis): Analysis {
  return followed(plan, before) ?? analyse(plan, before);
}

/** Statements of these kinds can come and go while the show stays; the others change what it is made of. */
const FOLLOWED: readonly Statement['fact']['kind'][] = ['import', 'feed', 'accept', 'measured', 'proved'];

function followed(plan: Plan, before: Analysis): Analysis | undefined {
  const show = showOf(before);
  if (show.plan !== before.plan) return undefined;
  const edit = editBetween(before.plan.statements, plan.statements);
  const isWish = (statement: Statement) => !isOfPlant(statement);
  const wishes = [...edit.removed, ...edit.added].filter(isWish);
  if (!wishes.every(({ fact }) => FOLLOWED.includes(fact.kind))) return undefined;
  const changes = followInPlant(show.works, edit.removed.filter(isOfPlant), edit.added.filter(isOfPlant));
  if (!changes) return undefined;
  show.follow(edit, changes);
  return finished(show, plan);
}

function finished(show: Show, plan: Plan): Analysis {
  const analysis = show.analysis(plan);
  keepShow(analysis, show);
  return analysis;
}

function areSame(a: readonly Statement[], b: readonly Statement[]): boolean {
  return a.length === b.length && a.every((statement, i) => statement === b[i]);
}
