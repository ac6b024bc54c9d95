import { equalFacts } from '../plan/equal-facts.ts';
import type { Statement } from '../plan/plan.ts';
import type { Building } from './building.ts';
import { Lengths } from './lengths.ts';
import type { RawLink } from './links.ts';
import { swap } from './lists.ts';
import type { Chain, Destination, Link, Run, Source, Uplink } from './model.ts';
import type { PlantWorks } from './plant.ts';
import type { CableStatement } from './statements.ts';

/** What of a plant is not what it was, for the stages that read it. */
export interface PlantChanges {
  readonly replaced: readonly Replacement[];
  /** Links of another length, over another cable or on another chain. */
  readonly links: Set<Link>;
  readonly chains: Set<Chain>;
  /** Sources whose picture or delay is another. */
  readonly sources: Set<Source>;
  /** Destinations that take other pictures, or sooner. */
  readonly destinations: Set<Destination>;
}

/** One statement in the place of another of its kind. */
export interface Replacement {
  readonly before: Statement;
  readonly now: Statement;
}

const CABLE = ['cable', 'length_m', 'installed', 'connections', 'splices'];

/**
 * What may change in a statement while everything keeps its name, its place and its sockets, by kind. All else, and
 * everything in other kinds, is another plant.
 */
const FREE: { readonly [K in Statement['fact']['kind']]?: readonly string[] } = {
  run: ['length_m', 'temperature_c', 'route'],
  circuit: ['current_a', 'voltage_v'],
  node: ['firmware', 'address'],
  source: [...CABLE, 'format', 'delay', 'encrypted'],
  destination: [...CABLE, 'formats', 'limit', 'delay', 'sound', 'records_bits_per_second'],
  link: [...CABLE, 'interface'],
  uplink: ['rate_bits_per_second'],
  stock: ['count', 'length_m', 'cost'],
};

/**
 * Follows an edit of the plant where that leaves everything plugged as it is: the things stay, what changes in them is
 * set. A chain that changes becomes another object.
 *
 * @returns undefined, and nothing is changed, where the plant has to be put together anew.
 */
export function followInPlant(
  works: PlantWorks,
  removed: readonly Statement[],
  added: readonly Statement[],
): PlantChanges | undefined {
  const replacements = pairsOf(removed, added);
  if (!replacements?.every((one) => isLocal(one) && thingOf(works, one.before))) return undefined;
  const edit = new PlantEdit(works, replacements);
  for (const one of replacements) edit.replace(one);
  edit.finish();
  return edit.changes;
}

function pairsOf(removed: readonly Statement[], added: readonly Statement[]): Replacement[] | undefined {
  if (removed.length !== added.length) return undefined;
  return removed.flatMap((before, i) => (before === added[i] ? [] : { before, now: added[i]! }));
}

function isLocal({ before, now }: Replacement): boolean {
  const free = FREE[before.fact.kind];
  if (!free || before.fact.kind !== now.fact.kind) return false;
  const [a, b] = [before.fact, now.fact] as unknown as [Record<string, unknown>, Record<string, unknown>];
  return [...Object.keys(a), ...Object.keys(b)].every(
    (key) => free.includes(key) || equalFacts(a[key], b[key]),
  );
}

/** What a statement has made; undefined for one that does not count because its name was taken. */
function thingOf(
  { plant, subjects }: PlantWorks,
  statement: Statement,
): { statement: Statement } | undefined {
  const isIts = (thing: { readonly statement: Statement }) => thing.statement === statement;
  const { fact } = statement;
  switch (fact.kind) {
    case 'run':
      return plant.runs.find(isIts);
    case 'stock':
      return plant.stock.find(isIts);
    case 'link': {
      const named = fact.name === undefined ? undefined : plant.things.get(fact.name);
      const link = named ?? subjects.linkBetween(fact.from, fact.to);
      return link && isIts(link) ? link : plant.links.find(isIts);
    }
    default: {
      const thing = 'name' in fact && fact.name !== undefined ? plant.things.get(fact.name) : undefined;
      return thing && isIts(thing) ? thing : undefined;
    }
  }
}

class PlantEdit {
  readonly changes: PlantChanges;
  readonly #works: PlantWorks;
  /** Whose cable or length may be another. */
  readonly #links = new Set<RawLink>();
  #runsChanged = false;

  constructor(works: PlantWorks, replaced: readonly Replacement[]) {
    this.#works = works;
    this.changes = {
      replaced,
      links: new Set(),
      chains: new Set(),
      sources: new Set(),
      destinations: new Set(),
    };
  }

  replace({ before, now }: Replacement): void {
    const { plant, names } = this.#works;
    const thing = thingOf(this.#works, before)!;
    names.replace(before, now);
    for (const { statements } of plant.cycles) swap(statements as Statement[], before, now);
    thing.statement = now;
    const { fact } = now;
    if (fact.kind === 'run') this.#setRun(thing as Building<Run>);
    else if (fact.kind === 'uplink')
      (thing as Building<Uplink>).stated_bits_per_second = fact.rate_bits_per_second;
    else if (fact.kind === 'link')
      this.#setCable(thing as RawLink, before as CableStatement, now as CableStatement);
    else if (fact.kind === 'source' || fact.kind === 'destination') {
      const end = thing as Building<Source> | Building<Destination>;
      if (end.kind === 'source') this.#setSource(end);
      else this.#setDestination(end);
      if (end.link) this.#setCable(end.link as RawLink, before as CableStatement, now as CableStatement);
    }
  }

  /** Lengths and chains, once every statement is in its place. */
  finish(): void {
    const works = this.#works;
    const links = works.plant.links as readonly RawLink[];
    let toMeasure = links;
    if (this.#runsChanged) {
      const { places, runs, settings } = works.plant;
      works.lengths = new Lengths(places, runs, settings, works.measurements.links, works.names);
    } else {
      const sheaths = new Set([...this.#links].map(({ sheath }) => sheath));
      toMeasure = [...sheaths].flatMap((sheath) => [sheath as RawLink, ...works.inSheathOf(sheath)]);
    }
    for (const link of works.lengths.measureAgain(toMeasure)) this.#links.add(link);
    for (const chain of new Set([...this.#links].map((link) => link.chain))) {
      const now = works.chainMaker.decideAgain(chain);
      this.changes.chains.add(now);
      for (const link of now.links) this.changes.links.add(link);
    }
  }

  #setRun(run: Building<Run>): void {
    const { length_m, temperature_c } = run.statement.fact;
    run.planned_m = length_m;
    run.length_m = run.measured ? run.measured.fact.length_m : length_m;
    run.temperature_c = temperature_c;
    this.#runsChanged = true;
  }

  #setSource(source: Building<Source>): void {
    const { format, delay, encrypted } = source.statement.fact;
    source.format = format && this.#works.formats.stated(format);
    source.delay = delay;
    source.encrypted = encrypted;
    this.changes.sources.add(source);
  }

  #setDestination(destination: Building<Destination>): void {
    const { formats, limit, delay } = destination.statement.fact;
    destination.takes = this.#works.formats.allStated(formats);
    destination.limit = limit;
    destination.delay = delay;
    this.changes.destinations.add(destination);
  }

  #setCable(link: RawLink, before: CableStatement, statement: CableStatement): void {
    const { names, plant } = this.#works;
    link.statement = statement;
    const { cable, installed, connections, splices, interface: pinned } = statement.fact;
    link.installed = installed;
    link.connections = connections;
    link.splices = splices;
    this.#links.add(link);
    if (cable !== before.fact.cable) {
      if (before.fact.cable !== undefined) names.forget('cable', before.fact.cable, statement, 'cables/0');
      link.cable =
        cable === undefined ? undefined : names.find(plant.cables, cable, 'cable', statement, 'cables/0');
    }
    if (statement.fact.kind !== 'link' || pinned === before.fact.interface) return;
    if (before.fact.interface !== undefined)
      names.forget('interface', before.fact.interface, statement, 'interfaces/0');
    link.pinned =
      pinned === undefined
        ? undefined
        : names.find(plant.interfaces, pinned, 'interface', statement, 'interfaces/0');
  }
}
