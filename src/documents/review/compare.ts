import type { Finding } from '../../checks/finding.ts';
import { cautionsOf } from './cautions.ts';
import { Comparison } from './comparison.ts';
import { coverChangesOf } from './cover.ts';
import { findingChangesOf } from './finding-changes.ts';
import { loadChangesOf } from './loads.ts';
import { pictureChangesOf } from './pictures.ts';
import { purchasesOf } from './purchases.ts';
import { reachChangesOf } from './reaches.ts';
import type { MergeReview, Review, ReviewedPlan, Side } from './review.ts';
import { stepsOf } from './steps.ts';
import { subjectTitles } from './subject-titles.ts';
import { thingChangesOf } from './thing-changes.ts';
import { totalsOf } from './totals.ts';

/** Compares two plans: what changed in them, and what that does to the show. The same two plans give the same review. */
export function reviewOf(old: Side, fresh: Side, merge?: MergeReview): Review {
  const comparison = new Comparison(old.analysis, fresh.analysis);
  const { matching, renames, is, was } = comparison;
  const { brought, mended, accepted, noLongerAccepted } = findingChangesOf(old, fresh, renames);
  const { units, currency } = is.settings;
  const steps = stepsOf(comparison);
  const told = [...brought, ...noLongerAccepted.map(({ finding }) => finding), ...(merge?.findings ?? [])];
  return {
    title: is.settings.title || was.settings.title,
    old: planOf(old),
    new: planOf(fresh),
    newFindings: brought,
    mendedFindings: mended,
    acceptedFindings: accepted,
    noLongerAccepted,
    subjects: subjectTitles(comparison, told),
    merge,
    pictures: pictureChangesOf(comparison),
    loads: loadChangesOf(comparison),
    reaches: reachChangesOf(comparison),
    cover: coverChangesOf(comparison),
    totals: totalsOf(comparison),
    currency: currency ?? was.settings.currency,
    purchases: purchasesOf(comparison),
    things: thingChangesOf(matching, units),
    steps,
    cautions: cautionsOf(comparison, steps),
    units,
  };
}

/** Findings of a merge that are new to each of the histories that it joins. */
export function mergeReviewOf(parents: readonly Side[], fresh: Side): MergeReview {
  const brought = parents.map((parent) => new Set(newFindingsOf(parent, fresh)));
  return {
    parents: parents.map(({ name }) => name),
    findings: fresh.findings.filter((finding) => brought.every((findings) => findings.has(finding))),
  };
}

function newFindingsOf(old: Side, fresh: Side): readonly Finding[] {
  const { renames } = new Comparison(old.analysis, fresh.analysis);
  return findingChangesOf(old, fresh, renames).brought;
}

function planOf({ name, unreadable, analysis }: Side): ReviewedPlan {
  return { name, unreadable, revision: analysis.settings.statement?.fact.revision };
}
