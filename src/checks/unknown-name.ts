import type { Analysis, Thing, UnknownName, Use, Wanted } from '../analysis/model.ts';
import type { Statement } from '../plan/plan.ts';
import { nearest } from '../plan/spelling.ts';
import type { Check } from './check.ts';
import { changedPlan, smallPlan } from './example-plans.ts';
import type { Finding, Fix } from './finding.ts';
import { declareFix } from './fixes/declare.ts';
import { kindText, quoted, withArticle } from './words.ts';

export const unknownName: Check = {
  name: 'unknown-name',
  severity: 'error',
  summary: 'A name is used that nothing declares, or nothing of the kind that is needed.',
  explanation: `A statement speaks of something that is not in the plan. What hangs on it is not worked out: a link to
a node that does not exist carries nothing, and a feed to it goes nowhere.

**How it is judged.** A name is visible when it is declared in the plan's own file, in a file that it imports (also
through another), or in the shipped library. A missing name is told once, with all places that use it.

**What mends it.** The right spelling, the declaration, or the import of the file that has it.`,
  examples: [
    {
      wrong: changedPlan('node box_d : edge_box at desk', 'node box_d : edge_box at deks'),
      right: smallPlan(),
    },
    { wrong: changedPlan('feed camera -> screen', 'feed camera -> scren'), right: smallPlan() },
  ],

  find(analysis, report) {
    for (const missing of missingNames(analysis)) {
      const { near, uses, declaredAs } = missing;
      const [first, ...others] = uses;
      if (!first) continue;
      const related: Finding['related'][number][] = others.map((place) => ({
        place,
        message: 'Used here too.',
      }));
      if (declaredAs)
        related.unshift({ place: { statement: declaredAs, part: 'name' }, message: 'Declared here.' });
      report({
        ...first,
        related,
        message: messageOf(missing),
        fixes: () => {
          const declare = declaredAs ? undefined : declareFix(analysis, missing);
          return [...(near === undefined ? [] : [renameFix(near, uses)]), ...(declare ? [declare] : [])];
        },
      });
    }
  },
};

/** A name that nothing declares, and the one that was probably meant. */
export interface MissingName extends UnknownName {
  readonly near: string | undefined;
}

/** A plan with more unknown names than this lacks a file, not a letter; looking for the nearest of each costs. */
const MOST_GUESSES = 50;

/**
 * Missing names, each once however many statements use it and whatever they expect it to be. Where a file of the plan
 * is missing, names that resemble none are left out: they may well be in it.
 */
export function missingNames(analysis: Analysis): readonly MissingName[] {
  let missing = found.get(analysis);
  if (!missing) {
    missing = findMissing(analysis);
    found.set(analysis, missing);
  }
  return missing;
}

/** Statements in which a name is wrong: what else they say may be meant otherwise. */
export function statementsWithUnknownNames({ names }: Analysis): Set<Statement> {
  return new Set(names.unknown.flatMap(({ uses }) => uses.map(({ statement }) => statement)));
}

/** Several checks ask, each for every analysis. */
const found = new WeakMap<Analysis, readonly MissingName[]>();

function findMissing(analysis: Analysis): readonly MissingName[] {
  const declaredAgain = new Map(analysis.names.duplicates.map(({ name, others }) => [name, others]));
  const merged = new Map<string, UnknownName & { uses: Use[] }>();
  for (const unknown of analysis.names.unknown) {
    // Declared as what is wanted, but of a name that is declared twice only the first counts: that is told already.
    if (declaredAgain.get(unknown.name)?.some(({ fact }) => isKind(fact.kind, unknown.wanted))) continue;
    const key = `${spaceOf(unknown.wanted)} ${unknown.name}`;
    const known = merged.get(key);
    if (known) known.uses.push(...unknown.uses);
    else merged.set(key, { ...unknown, uses: [...unknown.uses] });
  }
  const missing = [...merged.values()].map((unknown, i) => ({
    ...unknown,
    near: i < MOST_GUESSES ? nearest(unknown.name, candidates(analysis, unknown.wanted)) : undefined,
  }));
  const filesMissing = analysis.plan.missingFiles.length > 0;
  return filesMissing ? missing.filter(({ near, declaredAs }) => near !== undefined || declaredAs) : missing;
}

function messageOf({ wanted, name, near, uses, declaredAs }: MissingName): string {
  const kind =
    wanted === 'thing' || wanted === 'subject' ? 'thing' : wanted === 'target' ? 'destination' : wanted;
  if (declaredAs) {
    return `${quoted(name)} is ${kindText(declaredAs)}; ${withArticle(kind)} is expected here. Write the name of one${near === undefined ? '' : `, perhaps ${quoted(near)}`}.`;
  }
  const what = kind === 'thing' ? 'Nothing is named' : `There is no ${kind} named`;
  const often = uses.length > 1 ? ` (used ${uses.length} times)` : '';
  const mend =
    near === undefined
      ? 'Mend the name, declare it or import its file.'
      : `Did you mean ${quoted(near)}? Else declare it or import its file.`;
  return `${what} ${quoted(name)}${often}. ${mend}`;
}

function renameFix(near: string, uses: readonly Use[]): Fix {
  return {
    title: `Write ${quoted(near)}`,
    edits: uses.map(({ statement, part }) => ({ kind: 'replace', statement, part, text: near })),
  };
}

/** Names of one space are the same name, whatever is expected of them. */
function spaceOf(wanted: Wanted): string {
  switch (wanted) {
    case 'place':
    case 'kit':
    case 'cable':
    case 'interface':
    case 'segment':
      return wanted;
    default:
      return 'thing';
  }
}

function* candidates(analysis: Analysis, wanted: Wanted): Iterable<string> {
  switch (wanted) {
    case 'place':
      return yield* analysis.places.keys();
    case 'kit':
      return yield* analysis.kits.keys();
    case 'cable':
      return yield* analysis.cables.keys();
    case 'interface':
      return yield* analysis.interfaces.keys();
    case 'segment':
      return yield* analysis.segments.keys();
    case 'subject':
      yield* analysis.places.keys();
      yield* analysis.kits.keys();
      yield* analysis.cables.keys();
      yield* analysis.interfaces.keys();
      yield* analysis.segments.keys();
      yield* analysis.cases.keys();
  }
  for (const [name, thing] of analysis.things) if (isWanted(thing, wanted)) yield name;
}

function isWanted(thing: Thing, wanted: Wanted): boolean {
  // The derived names of links cannot be written.
  return (thing.kind !== 'link' || thing.named) && isKind(thing.kind, wanted);
}

function isKind(kind: string, wanted: Wanted): boolean {
  if (wanted === 'thing' || wanted === 'subject') return true;
  return wanted === 'target' ? kind === 'destination' || kind === 'node' : kind === wanted;
}
