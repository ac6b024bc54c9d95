import { subjectText, targetText } from '../../analysis/subjects.ts';
import type { Fact } from '../../plan/facts.ts';
import type { Plan, Statement } from '../../plan/plan.ts';

/**
 * What is compared: a statement, or one wish of a feed or black that speaks of several. So a feed that is written as two
 * is no change, and a destination that is added to one is a single thing added.
 */
export interface Item {
  readonly statement: Statement;
  readonly fact: Fact;
  /** The part of the statement that is this item alone. */
  readonly part: string;
}

/** All that a plan says, in order of statements, without the shipped library and without its imports. */
export function itemsOf(plan: Plan): Item[] {
  return plan.statements
    .filter(({ source, fact }) => !plan.libraryFiles.has(source.file) && fact.kind !== 'import')
    .flatMap(itemsIn);
}

function itemsIn(statement: Statement): Item[] {
  const { fact } = statement;
  if (fact.kind !== 'feed' && fact.kind !== 'black') return [{ statement, fact, part: 'name' }];
  const segments = fact.segments.length > 0 ? fact.segments.map((name) => [name]) : [[]];
  return fact.targets.flatMap((target, i) =>
    segments.map((names) => ({
      statement,
      fact: { ...fact, targets: [target], segments: names },
      part: `targets/${i}`,
    })),
  );
}

/** What a person calls it, as the plan writes it. */
export function nameOfFact(fact: Fact): string {
  switch (fact.kind) {
    case 'link':
      return fact.name ?? endsOf(fact, fact.bothWays ? '<->' : '->');
    case 'run':
      return `${fact.from} <-> ${fact.to}`;
    case 'feed':
      return `${fact.source} -> ${fact.targets.map(targetText).join(', ')}${inSegments(fact.segments)}`;
    case 'black':
      return `${fact.targets.map(targetText).join(', ')}${inSegments(fact.segments)}`;
    case 'stock':
      return `${fact.cable}, pieces of ${fact.length_m} m`;
    case 'plan':
      return fact.title;
    case 'accept':
      return `${fact.check} on ${subjectText(fact.subject)}`;
    case 'measured':
      return subjectText(fact.subject);
    case 'proved':
      return `${fact.source} -> ${targetText(fact.target)}`;
    case 'import':
      return fact.path;
    default:
      return fact.name;
  }
}

function inSegments(segments: readonly string[]): string {
  return segments.length > 0 ? ` in ${segments.join(', ')}` : '';
}

type LinkEnds = Pick<Extract<Fact, { kind: 'link' }>, 'from' | 'to'>;

/** The two sockets of a cable with something between. */
export function endsOf({ from, to }: LinkEnds, arrow: string): string {
  return `${from.node}.${from.port} ${arrow} ${to.node}.${to.port}`;
}
