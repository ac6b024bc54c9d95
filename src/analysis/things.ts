import type { Statement, StatementOf } from '../plan/plan.ts';
import type { Building } from './building.ts';
import type { FormatTable } from './formats.ts';
import type { Circuit, Destination, Kit, Node, Place, Source, Thing } from './model.ts';
import type { NameBook } from './names.ts';

/** What nodes, sources and destinations are looked up in while they are made. */
export interface Surroundings {
  readonly names: NameBook;
  readonly places: ReadonlyMap<string, Place>;
  readonly kits: ReadonlyMap<string, Kit>;
  readonly things: Map<string, Thing>;
  readonly formats: FormatTable;
}

/** The nodes, without their ports. */
export function nodesOf(statements: readonly StatementOf<'node'>[], around: Surroundings): Building<Node>[] {
  const nodes: Building<Node>[] = [];
  for (const statement of statements) {
    const { fact } = statement;
    const node: Building<Node> = {
      kind: 'node',
      index: nodes.length,
      name: fact.name,
      statement,
      kit: kitOf(fact.kit, statement, around),
      place: placeOf(fact.place, statement, around),
      poweredBy: none,
      usedPorts: [],
      loosePorts: none,
    };
    if (around.names.declare('things', around.things, fact.name, node)) nodes.push(node);
    else node.index = -1;
  }
  return nodes;
}

/** The sources, not yet plugged in. */
export function sourcesOf(
  statements: readonly StatementOf<'source'>[],
  around: Surroundings,
): Building<Source>[] {
  const sources: Building<Source>[] = [];
  for (const statement of statements) {
    const { fact } = statement;
    const source: Building<Source> = {
      kind: 'source',
      index: sources.length,
      name: fact.name,
      statement,
      kit: kitOf(fact.kit, statement, around),
      place: placeOf(fact.place, statement, around),
      poweredBy: none,
      from: undefined,
      port: undefined,
      link: undefined,
      format: fact.format && around.formats.stated(fact.format),
      encrypted: fact.encrypted,
      sendsByItself: false,
      madeOf: undefined,
      delay: fact.delay,
    };
    if (around.names.declare('things', around.things, fact.name, source)) sources.push(source);
  }
  return sources;
}

/** The destinations, not yet plugged in. */
export function destinationsOf(
  statements: readonly StatementOf<'destination'>[],
  around: Surroundings,
): Building<Destination>[] {
  const destinations: Building<Destination>[] = [];
  for (const statement of statements) {
    const { fact } = statement;
    const destination: Building<Destination> = {
      kind: 'destination',
      index: destinations.length,
      name: fact.name,
      statement,
      kit: kitOf(fact.kit, statement, around),
      place: placeOf(fact.place, statement, around),
      poweredBy: none,
      port: undefined,
      link: undefined,
      takes:
        fact.formats.length === 0
          ? none
          : fact.formats.flatMap((format) => around.formats.stated(format) ?? []),
      receivesByItself: false,
      limit: fact.limit,
      delay: fact.delay,
    };
    if (around.names.declare('things', around.things, fact.name, destination)) destinations.push(destination);
  }
  return destinations;
}

/** What each takes its power from; told when it is no circuit. */
export function plugIntoCircuits(
  things: Iterable<Building<Node> | Building<Source> | Building<Destination>>,
  { names, things: byName }: Surroundings,
): void {
  for (const thing of things) {
    const { statement } = thing;
    const { poweredBy } = statement.fact;
    if (poweredBy.length === 0) continue;
    thing.poweredBy = poweredBy.flatMap(
      (name, i) => circuitNamed(name, byName, names, statement, `poweredBy/${i}`) ?? [],
    );
  }
}

/** The uplinks that streams name. */
export function tellUplinks(destinations: Iterable<Destination>, { names, things }: Surroundings): void {
  for (const { statement } of destinations) {
    statement.fact.streams.forEach(({ uplinks }, i) => {
      uplinks.forEach((name, k) => {
        const found = things.get(name);
        if (found?.kind === 'uplink') return;
        names.tellUnknown('uplink', name, statement, `streams/${i}.uplinks/${k}`, found?.statement);
      });
    });
  }
}

export function circuitNamed(
  name: string,
  things: ReadonlyMap<string, Thing>,
  names: NameBook,
  statement: Statement,
  part: string,
): Building<Circuit> | undefined {
  const found = things.get(name);
  if (found?.kind === 'circuit') return found;
  names.tellUnknown('circuit', name, statement, part, found?.statement);
  return undefined;
}

/** Shared by all that have none, for there are thousands of them. */
const none: readonly never[] = [];

function kitOf(
  name: string | undefined,
  statement: Statement,
  { names, kits }: Surroundings,
): Kit | undefined {
  return name === undefined ? undefined : names.find(kits, name, 'kit', statement, 'kits/0');
}

function placeOf(
  name: string | undefined,
  statement: Statement,
  { names, places }: Surroundings,
): Place | undefined {
  return name === undefined ? undefined : names.find(places, name, 'place', statement, 'places/0');
}
