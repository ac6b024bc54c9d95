import type { SubjectFact } from '../plan/facts.ts';
import type { Statement, StatementOf } from '../plan/plan.ts';
import { type Building, nothing } from './building.ts';
import { add } from './lists.ts';
import type { Acceptance, Feed, Measurement, Place, Proof, Spoken, Thing } from './model.ts';
import type { NameBook } from './names.ts';
import type { Statements } from './statements.ts';
import { type Subjects, subjectText, targetText } from './subjects.ts';

/** Where everything that a plan can accept, measure or prove is looked up. */
export interface Surroundings {
  readonly names: NameBook;
  readonly subjects: Subjects;
  readonly things: ReadonlyMap<string, Thing>;
  readonly places: ReadonlyMap<string, Place>;
  /** Everything else that has a name. */
  readonly others: readonly ReadonlyMap<string, unknown>[];
}

export interface SpokenOf {
  /** Measurements of feeds; those of cables, runs and uplinks belong to the plant. */
  readonly measurements: readonly Measurement[];
  readonly acceptances: readonly Acceptance[];
  readonly proofs: readonly Proof[];
  /** Names of the feeds that something is said of, whether they are there or not. */
  readonly names: ReadonlySet<string>;
}

/** What was accepted, measured and proved, tied to the feeds that it speaks of. */
export function speakOf(
  statements: Statements,
  feeds: readonly Building<Feed>[],
  around: Surroundings,
): SpokenOf {
  const measured = statements.of('measured').filter(({ fact }) => fact.subject.kind === 'feed');
  const proved = statements.of('proved');
  const accepted = statements.of('accept');
  const wanted = new Set<string>();
  for (const { fact } of proved) wanted.add(`${fact.source} -> ${targetText(fact.target)}`);
  for (const { fact } of [...measured, ...accepted])
    if (fact.subject.kind === 'feed') wanted.add(subjectText(fact.subject));
  const byName = new Map<string, Building<Feed>[]>();
  if (wanted.size > 0) for (const feed of feeds) if (wanted.has(feed.name)) add(byName, feed.name, feed);
  return {
    names: wanted,
    measurements: measured.map((statement) => {
      tellNames(statement, statement.fact.subject, around);
      return measure(statement, byName);
    }),
    proofs: proved.map((statement) => prove(statement, byName, around)),
    acceptances: accepted.map((statement) => {
      tellNames(statement, statement.fact.subject, around);
      return { statement, of: accept(statement, byName, around) };
    }),
  };
}

/** Takes everything back that was said of feeds. */
export function unsay({ measurements, proofs }: SpokenOf): void {
  for (const { of } of measurements)
    if (of.kind === 'feed') for (const feed of of.feeds) (feed as Building<Feed>).measured = undefined;
  for (const { feeds } of proofs) for (const feed of feeds) (feed as Building<Feed>).proofs = nothing;
}

/** The names in a subject that stand for nothing. */
function tellNames(statement: Statement, subject: SubjectFact, around: Surroundings): void {
  if (subject.kind === 'name') tellName(subject.name, statement, 'subject.first.thing', around);
  else if (subject.kind === 'feed') {
    tellName(subject.source, statement, 'subject.first.thing', around);
    tellName(subject.target.thing, statement, 'subject.second.thing', around);
  } else {
    const [first, second] =
      subject.kind === 'link' ? [subject.from.node, subject.to.node] : [subject.from, subject.to];
    tellName(first, statement, 'subject.first.thing', around);
    tellName(second, statement, 'subject.second.thing', around);
  }
}

function tellName(name: string, statement: Statement, part: string, around: Surroundings): void {
  const { names, things, places, others } = around;
  if (things.has(name) || places.has(name) || others.some((one) => one.has(name))) return;
  names.tellUnknown('subject', name, statement, part, undefined);
}

type FeedsByName = ReadonlyMap<string, readonly Building<Feed>[]>;

function measure(statement: StatementOf<'measured'>, byName: FeedsByName): Measurement {
  const feeds = byName.get(subjectText(statement.fact.subject)) ?? [];
  const of: Spoken = feeds.length === 0 ? { kind: 'nothing' } : { kind: 'feed', feeds };
  if (feeds.length === 0) return { statement, of, useless: 'matches nothing' };
  if (statement.fact.delay === undefined) return { statement, of, useless: 'wrong quantity' };
  if (feeds[0]!.measured) return { statement, of, useless: 'measured before' };
  for (const feed of feeds) feed.measured = statement;
  return { statement, of, useless: undefined };
}

function prove(statement: StatementOf<'proved'>, byName: FeedsByName, around: Surroundings): Proof {
  const { source, target } = statement.fact;
  tellName(source, statement, 'source', around);
  tellName(target.thing, statement, 'target.thing', around);
  const feeds = byName.get(`${source} -> ${targetText(target)}`) ?? [];
  for (const feed of feeds) feed.proofs = [...feed.proofs, statement];
  return { statement, feeds };
}

function accept(
  { fact }: StatementOf<'accept'>,
  byName: FeedsByName,
  { subjects, things, places }: Surroundings,
): Spoken {
  const { subject } = fact;
  switch (subject.kind) {
    case 'feed': {
      const feeds = byName.get(subjectText(subject)) ?? [];
      return feeds.length > 0 ? { kind: 'feed', feeds } : { kind: 'nothing' };
    }
    case 'link': {
      const link = subjects.linkBetween(subject.from, subject.to);
      return link ? { kind: 'link', link } : { kind: 'nothing' };
    }
    case 'run': {
      const run = subjects.runBetween(places.get(subject.from), places.get(subject.to));
      return run ? { kind: 'run', run } : { kind: 'nothing' };
    }
    case 'name': {
      const thing = things.get(subject.name);
      if (thing?.kind === 'link') return { kind: 'link', link: thing };
      if (thing?.kind === 'uplink') return { kind: 'uplink', uplink: thing };
      return { kind: 'other', name: subject.name };
    }
  }
}
