import { isTold } from './differences.ts';
import { loadChangesOf, pictureChangesOf, reachChangesOf } from './effects.ts';
import { findingChangesOf } from './finding-changes.ts';
import { pairLinks } from './link-pairs.ts';
import { matchPlans } from './matching.ts';
import type { Review, Side } from './review.ts';
import { stepsOf } from './steps.ts';
import { thingChangesOf } from './thing-changes.ts';
import { cablesToBuy, totalsOf } from './totals.ts';

/** Compares two plans: what changed in them, and what that does to the show. The same two plans give the same review. */
export function reviewOf(old: Side, fresh: Side): Review {
  const [was, is] = [old.analysis, fresh.analysis];
  const matching = matchPlans(was.plan, is.plan);
  const { newName } = matching;
  const links = pairLinks(was, is, matching);
  const { brought, mended } = findingChangesOf(old.findings, fresh.findings, newName);
  const told = {
    ...matching,
    pairs: matching.pairs.filter(({ before, after }) => isTold((after ?? before)!.fact)),
  };
  return {
    title: is.settings.title || was.settings.title,
    old: { name: old.name, revision: was.settings.statement?.fact.revision },
    new: { name: fresh.name, revision: is.settings.statement?.fact.revision },
    things: thingChangesOf(told, is.settings.units),
    loads: loadChangesOf(was, is, links),
    pictures: pictureChangesOf(was, is, newName),
    reaches: reachChangesOf(was, is, links),
    newFindings: brought,
    mendedFindings: mended,
    cover: [],
    totals: totalsOf(was, is),
    buy: cablesToBuy(was, is, newName),
    steps: stepsOf(was, is, matching, links),
  };
}
