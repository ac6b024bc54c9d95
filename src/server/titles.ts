/** Short names of statements, for outlines, lists and headings. */
import type { EndFact, Fact, SubjectFact, TargetFact } from '../plan/facts.ts';
import type { Statement } from '../plan/plan.ts';

export interface Title {
  /** What it is called in the plan: its name, or its ends. */
  readonly name: string;
  /** What an outline shows beside: the label, the kit, the place. */
  readonly detail: string;
}

export function titleOf({ fact, label }: Statement): Title {
  const { name, detail = '' } = partsOf(fact);
  return { name, detail: [label, detail].filter((part) => part).join(' · ') };
}

function partsOf(fact: Fact): { name: string; detail?: string } {
  switch (fact.kind) {
    case 'plan':
      return { name: fact.title, detail: fact.revision === undefined ? '' : `revision ${fact.revision}` };
    case 'import':
      return { name: fact.path };
    case 'run':
      return { name: `${fact.from} <-> ${fact.to}` };
    case 'node':
    case 'source':
    case 'destination':
      return { name: fact.name, detail: words(fact.kit, fact.place && `at ${fact.place}`) };
    case 'link':
      return linkTitle(fact);
    case 'feed':
      return {
        name: `${fact.source} -> ${fact.targets.map(targetText).join(', ')}`,
        detail: fact.segments.length > 0 ? `in ${fact.segments.join(', ')}` : '',
      };
    case 'black':
      return {
        name: fact.targets.map(targetText).join(', '),
        detail: `black in ${fact.segments.join(', ')}`,
      };
    case 'stock':
      return { name: fact.cable, detail: fact.count === undefined ? 'any number' : `${fact.count} pieces` };
    case 'accept':
      return { name: `${fact.check} on ${subjectText(fact.subject)}`, detail: fact.reason ?? '' };
    case 'measured':
      return { name: subjectText(fact.subject), detail: 'measured' };
    case 'proved':
      return {
        name: `${fact.source} -> ${targetText(fact.target)}`,
        detail: `proved ${fact.date ?? ''}`.trim(),
      };
    case 'circuit':
    case 'uplink':
      return { name: fact.name, detail: fact.place === undefined ? '' : `at ${fact.place}` };
    default:
      return { name: fact.name };
  }
}

function linkTitle(fact: Extract<Fact, { kind: 'link' }>): { name: string; detail?: string } {
  const ends = `${endText(fact.from)} ${fact.bothWays ? '<->' : '->'} ${endText(fact.to)}`;
  const over = fact.cable && `over ${fact.cable}`;
  return fact.name === undefined
    ? { name: ends, detail: words(over) }
    : { name: fact.name, detail: words(ends, over) };
}

function words(...parts: (string | undefined)[]): string {
  return parts.filter((part) => part).join(' ');
}

export function endText({ node, port }: EndFact): string {
  return `${node}.${port}`;
}

export function targetText({ thing, port }: TargetFact): string {
  return port === undefined ? thing : `${thing}.${port}`;
}

export function subjectText(subject: SubjectFact): string {
  switch (subject.kind) {
    case 'name':
      return subject.name;
    case 'link':
      return `${endText(subject.from)} -> ${endText(subject.to)}`;
    case 'run':
      return `${subject.from} <-> ${subject.to}`;
    case 'feed':
      return `${subject.source} -> ${targetText(subject.target)}`;
  }
}
