import type { StatementOf } from '../plan/plan.ts';
import type { Building } from './building.ts';
import type { RawLink } from './links.ts';
import type { Measurement, Place, Run, Spoken, Thing, Uplink } from './model.ts';
import type { NameBook } from './names.ts';
import type { Subjects } from './subjects.ts';

/** Measurements of the plant: lengths of cables and runs, rates of uplinks. Those of feeds are left to the show. */
export class PlantMeasurements {
  readonly all: Measurement[] = [];
  /** Lengths of cables as found on site. */
  readonly links = new Map<RawLink, number>();
  readonly #subjects: Subjects;
  readonly #things: ReadonlyMap<string, Thing>;
  readonly #places: ReadonlyMap<string, Place>;
  readonly #names: NameBook;

  constructor(
    subjects: Subjects,
    things: ReadonlyMap<string, Thing>,
    places: ReadonlyMap<string, Place>,
    names: NameBook,
  ) {
    this.#subjects = subjects;
    this.#things = things;
    this.#places = places;
    this.#names = names;
  }

  take(statements: readonly StatementOf<'measured'>[]): void {
    for (const statement of statements) {
      if (statement.fact.subject.kind !== 'feed') this.all.push(this.#read(statement));
    }
  }

  #read(statement: StatementOf<'measured'>): Measurement {
    const of = this.#spokenOf(statement);
    const { length_m, rate_bits_per_second } = statement.fact;
    if (of.kind === 'nothing') return { statement, of, useless: 'matches nothing' };
    if (of.kind === 'link' && length_m !== undefined) {
      const link = of.link as RawLink;
      if (this.links.has(link)) return { statement, of, useless: 'measured before' };
      this.links.set(link, length_m);
      return { statement, of, useless: undefined };
    }
    if (of.kind === 'run' && length_m !== undefined) {
      const run = of.run as Building<Run>;
      if (run.measured) return { statement, of, useless: 'measured before' };
      run.measured = statement;
      run.length_m = length_m;
      return { statement, of, useless: undefined };
    }
    if (of.kind === 'uplink' && rate_bits_per_second !== undefined) {
      const uplink = of.uplink as Building<Uplink>;
      if (uplink.measured_bits_per_second !== undefined) return { statement, of, useless: 'measured before' };
      uplink.measured_bits_per_second = rate_bits_per_second;
      return { statement, of, useless: undefined };
    }
    return { statement, of, useless: 'wrong quantity' };
  }

  #spokenOf(statement: StatementOf<'measured'>): Spoken {
    const { subject } = statement.fact;
    if (subject.kind === 'link') {
      for (const [end, part] of [
        [subject.from, 'first'],
        [subject.to, 'second'],
      ] as const) {
        if (this.#things.has(end.node)) continue;
        this.#names.tellUnknown('subject', end.node, statement, `subject.${part}.thing`, undefined);
      }
      const link = this.#subjects.linkBetween(subject.from, subject.to);
      return link ? { kind: 'link', link } : { kind: 'nothing' };
    }
    if (subject.kind === 'run') {
      const from = this.#names.find(this.#places, subject.from, 'place', statement, 'subject.first.thing');
      const to = this.#names.find(this.#places, subject.to, 'place', statement, 'subject.second.thing');
      const run = this.#subjects.runBetween(from, to);
      return run ? { kind: 'run', run } : { kind: 'nothing' };
    }
    if (subject.kind !== 'name') return { kind: 'nothing' };
    const thing = this.#things.get(subject.name);
    if (thing?.kind === 'uplink') return { kind: 'uplink', uplink: thing };
    const link = this.#subjects.cableNamed(subject.name);
    if (link) return { kind: 'link', link };
    if (thing) return { kind: 'other', name: subject.name };
    this.#names.tellUnknown('subject', subject.name, statement, 'subject.first.thing', undefined);
    return { kind: 'nothing' };
  }
}
