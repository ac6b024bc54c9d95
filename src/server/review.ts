import { type FileSystemProvider, URI } from 'langium';
import type { Connection } from 'vscode-languageserver';
import { analyse } from '../analysis/analyse.ts';
import { checkPlan } from '../checks/findings.ts';
import { mergeReviewOf, reviewOf } from '../documents/review/compare.ts';
import { headlineOf } from '../documents/review/headline.ts';
import type { Review, ReviewPlace, Side } from '../documents/review/review.ts';
import { reviewScenes } from '../documents/review/scenes.ts';
import { type Entry, type Section, sectionsOf } from '../documents/review/sections.ts';
import { comparedText } from '../documents/review/text.ts';
import { loadFigures } from '../documents/review/words.ts';
import { resolveImport } from '../language/imports.ts';
import { type AssembledPlan, assemblePlan, type FileAccess } from '../plan/assemble.ts';
import { readLibrary } from '../plan/library/read.ts';
import type { ReadFile } from '../plan/read-file.ts';
import { readText } from '../plan/read-text.ts';
import {
  type ReviewAnswer,
  type ReviewQuestion,
  reviewRequests,
  type ShownEntry,
  type ShownLoad,
  type ShownPlace,
  type ShownReview,
  type ShownSection,
  type TextThenQuestion,
} from './protocol/review.ts';
import { rangeOf } from './publish.ts';
import type { FeedplotSharedServices } from './services.ts';

/** A plan as it stood at a commit. */
export interface PlanAtRevision {
  readonly uri: string;
  readonly access: FileAccess;
  /** The revision, as people ask for it. */
  readonly title: string;
  /** There was no such plan: everything in it is new. */
  readonly isAbsent: boolean;
}

/** The plan to compare with, and the other sides of a merge that is, or is about to be, checked out. */
export interface PlansAtRevision {
  readonly old: PlanAtRevision;
  readonly mergedWith: readonly PlanAtRevision[];
}

/** Reads a git repository; only where there is a disk. */
export interface Revisions {
  /** @throws RevisionTrouble */
  plan(
    plan: { readonly uri: string; readonly title: string },
    revision: string,
    library: readonly ReadFile[],
  ): Promise<PlansAtRevision>;
  /** @throws RevisionTrouble */
  text(uri: string, revision: string): Promise<string | undefined>;
}

/** Why a revision cannot be had, in words for the person who asked. */
export class RevisionTrouble extends Error {
  override readonly name = 'RevisionTrouble';
}

/** At most so many files make one plan. */
const MOST_FILES = 500;

/**
 * Answers what has changed in a plan, as its text is in the editor, since a commit or against another file.
 *
 * @param revisions Undefined in a browser: there is no repository to be read.
 */
export function addReviewHandlers(
  connection: Connection,
  services: FeedplotSharedServices,
  libraryFolder: string,
  revisions?: Revisions,
): void {
  connection.onRequest<ReviewAnswer, void>(reviewRequests.review, async (question: ReviewQuestion) => {
    try {
      return await answer(question, services, readLibrary(libraryFolder), revisions);
    } catch (error) {
      if (error instanceof RevisionTrouble) return { kind: 'trouble', reason: error.message };
      throw error;
    }
  });

  connection.onRequest(
    reviewRequests.textThen,
    async ({ uri, revision }: TextThenQuestion): Promise<string | null> => {
      try {
        return (await revisions?.text(uri, revision)) ?? null;
      } catch (error) {
        if (error instanceof RevisionTrouble) return null;
        throw error;
      }
    },
  );
}

async function answer(
  { uri, against }: ReviewQuestion,
  services: FeedplotSharedServices,
  library: readonly ReadFile[],
  revisions: Revisions | undefined,
): Promise<ReviewAnswer> {
  const document = services.workspace.LangiumDocuments.getDocument(URI.parse(uri));
  const current = document && services.plans.Plans.of(document);
  if (!current) throw new RevisionTrouble('No plan imports this file, so there is nothing to compare.');
  const { assembled, analysis } = current;
  const fresh = sideOf(assembled, 'as it is now');
  let old: Side;
  let merged: Side[] = [];
  if (against.kind === 'file') old = await sideOfFile(against.uri, services, library);
  else {
    if (!revisions)
      throw new RevisionTrouble('A browser has no repository to read. Compare with a file instead.');
    const plan = { uri: current.uri, title: analysis.settings.title };
    const then = await revisions.plan(plan, against.revision, library);
    old = sideThen(then.old);
    merged = then.mergedWith.map(sideThen);
  }
  const merge = merged.length > 0 ? mergeReviewOf([old, ...merged], fresh) : undefined;
  const review = reviewOf(old, fresh, merge && merge.findings.length > 0 ? merge : undefined);
  return {
    kind: 'review',
    review: shownReview(current.uri, review, reviewScenes(old.analysis, fresh.analysis)),
  };
}

/** Worked out apart from what is typed meanwhile. */
function sideOf({ plan, unreadables }: AssembledPlan, name: string): Side {
  const analysis = analyse(plan);
  return { analysis, ...checkPlan(analysis, unreadables), unreadable: unreadables.length, name };
}

/** A plan that was not there had no findings, and nothing in it that could not be read. */
function sideThen({ uri, access, title, isAbsent }: PlanAtRevision): Side {
  const side = sideOf(assemblePlan(uri, access)!, title);
  return isAbsent ? { ...side, findings: [], accepted: [], unreadable: 0 } : side;
}

/** Another plan: as it is in the editor where that has it, else from its file with all that it imports. */
async function sideOfFile(
  uri: string,
  services: FeedplotSharedServices,
  library: readonly ReadFile[],
): Promise<Side> {
  const { LangiumDocuments, FileSystemProvider } = services.workspace;
  const files = new Map<string, ReadFile>();
  const name = decodeURIComponent(uri.slice(uri.lastIndexOf('/') + 1));
  const mayRead = (file: string) => services.plans.Plans.isInside(file);
  if (!mayRead(uri))
    throw new RevisionTrouble(
      `${name} lies outside of the folder that is open, so it is not read. Open a folder with both files, or compare them in a terminal: \`feedplot review OLD NEW\`.`,
    );
  let wanted = [uri];
  while (wanted.length > 0 && files.size < MOST_FILES) {
    const next: string[] = [];
    for (const one of wanted) {
      const document = LangiumDocuments.getDocument(URI.parse(one));
      const file = document
        ? services.plans.Plans.read(document)
        : await readIfThere(one, FileSystemProvider);
      if (!file) continue;
      files.set(one, file);
      for (const { fact } of file.imports) {
        const target = resolveImport(one, fact.path);
        if (target !== undefined && !files.has(target) && mayRead(target)) next.push(target);
      }
    }
    wanted = [...new Set(next)];
  }
  if (!files.get(uri)?.hasPlan) throw new RevisionTrouble(`${name} has no plan to compare with.`);
  const access: FileAccess = {
    library,
    file: (one) => files.get(one) ?? (mayRead(one) ? 'not found' : 'outside'),
  };
  return sideOf(assemblePlan(uri, access)!, name);
}

async function readIfThere(uri: string, files: FileSystemProvider): Promise<ReadFile | undefined> {
  try {
    return readText(uri, await files.readFile(URI.parse(uri)));
  } catch {
    return undefined;
  }
}

function shownReview(plan: string, review: Review, scenes: ShownReview['scenes']): ShownReview {
  return {
    plan,
    title: review.title,
    headline: headlineOf(review).join(', '),
    compared: comparedText(review),
    sections: sectionsOf(review).map(shownSection),
    scenes,
    loads: shownLoads(review),
  };
}

function shownSection({ entries, ...section }: Section): ShownSection {
  return { ...section, entries: entries.map(shownEntry) };
}

function shownEntry({ place, ...entry }: Entry): ShownEntry {
  return { ...entry, place: place ? shownPlace(place) : null };
}

function shownPlace({ side, file, range }: ReviewPlace): ShownPlace {
  return { side, uri: file, range: rangeOf(range) };
}

/** One text a link, both directions in it. */
function shownLoads({ loads }: Review): ShownLoad[] {
  const byLink = new Map<string, { place: ReviewPlace; texts: string[] }>();
  for (const load of loads) {
    if (load.place.side === 'old') continue;
    const known = byLink.get(load.name) ?? { place: load.place, texts: [] };
    known.texts.push(loadFigures(load));
    byLink.set(load.name, known);
  }
  return [...byLink.values()].map(({ place, texts }) => ({
    place: shownPlace(place),
    text: texts.join(' · '),
  }));
}
