import { type Building, nothing } from './building.ts';
import { cablesOf } from './cables.ts';
import { CarriedKinds } from './carried.ts';
import { ChainMaker } from './chains.ts';
import { circlesOf } from './circles.ts';
import { FormatTable } from './formats.ts';
import { interfacesOf } from './interfaces.ts';
import { kitsOf } from './kits.ts';
import { Lengths } from './lengths.ts';
import { LinkMaker, type RawLink } from './links.ts';
import { add } from './lists.ts';
import { PlantMeasurements } from './measured.ts';
import type { Circuit, Cycle, Link, Plant, Port, PortTaken, Source, StockPiece, Thing } from './model.ts';
import { NameBook } from './names.ts';
import { placesOf, runsOf } from './places.ts';
import { PortTable, tellPortsOfNodes } from './ports.ts';
import { settingsOf } from './settings.ts';
import type { Statements } from './statements.ts';
import { Subjects } from './subjects.ts';
import { circuitNamed, type Surroundings, ThingMaker } from './things.ts';

/** The plant, and what the show goes on with. */
export interface PlantWorks {
  readonly plant: Plant;
  readonly names: NameBook;
  readonly formats: FormatTable;
  readonly kinds: CarriedKinds;
  readonly subjects: Subjects;
  readonly measurements: PlantMeasurements;
  /** Another one once a run is longer or shorter. */
  lengths: Lengths;
  readonly chainMaker: ChainMaker;
  /** The other cables in the sheath of a link. */
  readonly inSheathOf: (sheath: Link) => readonly RawLink[];
}

/** Puts together what stands in the house. Depends on no feed, segment or other wish. */
export function plantOf(statements: Statements): PlantWorks {
  const names = new NameBook();
  const cycles: Cycle[] = [];
  const settings = settingsOf(statements.of('plan'));
  const formats = new FormatTable(settings.tagged, settings.blanking);
  const kinds = new CarriedKinds(settings.packing);

  const interfaces = interfacesOf(statements.of('interface'), names, cycles);
  const cables = cablesOf(statements.of('cable'), names, cycles);
  const kits = kitsOf(statements.of('kit'), interfaces, kinds, formats, names);
  const places = placesOf(statements.of('place'), names);
  const runs = runsOf(statements.of('run'), places, names);
  tellReaches(statements, cables, names);

  const things = new Map<string, Thing>();
  const ports = new PortTable(names, formats);
  const linkMaker = new LinkMaker({ names, things, cables, interfaces, ports });
  const around = { names, places, kits, things, formats };
  const made = new ThingMaker(statements, around, (statement) => linkMaker.reserve(statement));
  const { nodes, sources, destinations, circuits, uplinks } = made;
  feedCircuits(circuits, around, cycles);
  tellPortsOfNodes(nodes, names);
  const links = linkMaker.make(statements.cables, cycles);
  composeSources(sources, things, names);
  ports.tie();

  const subjects = new Subjects(things, runs);
  const measurements = new PlantMeasurements(subjects, things, places, names);
  measurements.take(statements.of('measured'));
  const lengths = new Lengths(places, runs, settings, measurements.links, names);
  lengths.tellPlaces(links);
  lengths.measure(links);
  const chainMaker = new ChainMaker(links);

  const plant: Plant = {
    settings,
    places,
    runs,
    circuits: byName(circuits),
    uplinks: byName(uplinks),
    interfaces,
    cables,
    kits,
    carriedKinds: kinds.all,
    nodes: byName(nodes),
    sources: byName(sources),
    destinations: byName(destinations),
    things,
    links,
    chains: chainMaker.chains,
    ports: ports.ports,
    portsTaken: portsTaken(ports.ports),
    stock: stockOf(statements, cables, names),
    cycles,
  };
  return {
    plant,
    names,
    formats,
    kinds,
    subjects,
    measurements,
    lengths,
    chainMaker,
    inSheathOf: sheathsOf(links),
  };
}

function sheathsOf(links: readonly RawLink[]): PlantWorks['inSheathOf'] {
  const sheaths = new Map<Link, RawLink[]>();
  for (const link of links) if (link.sheath !== link) add(sheaths, link.sheath, link);
  return (sheath) => sheaths.get(sheath) ?? nothing;
}

function feedCircuits(circuits: readonly Building<Circuit>[], around: Surroundings, cycles: Cycle[]): void {
  for (const circuit of circuits) {
    const { statement } = circuit;
    const { from } = statement.fact;
    if (from !== undefined) circuit.from = circuitNamed(from, around, statement, 'supplies', 0);
  }
  for (const circle of circlesOf(circuits, (circuit) => circuit.from)) {
    cycles.push({ kind: 'from', statements: circle.map(({ statement }) => statement) });
    for (const circuit of circle) {
      (circuit as Building<Circuit>).fromCycle = true;
      (circuit as Building<Circuit>).from = undefined;
    }
  }
}

/** Which sources a source says it is made of. */
function composeSources(
  sources: readonly Building<Source>[],
  things: ReadonlyMap<string, Thing>,
  names: NameBook,
): void {
  for (const source of sources) {
    const { statement } = source;
    source.madeOf = statement.fact.madeOf?.flatMap((name, i) => {
      const found = things.get(name);
      if (found?.kind === 'source') return found;
      names.tellUnknown('source', name, statement, `madeOf/${i}`, found?.statement);
      return [];
    });
  }
}

/** The cables for which interfaces state a reach; the shipped library speaks only of its own. */
function tellReaches(statements: Statements, cables: Plant['cables'], names: NameBook): void {
  for (const statement of statements.of('interface')) {
    statement.fact.reaches.forEach(({ cable }, i) => {
      if (!cables.has(cable)) names.tellUnknown('cable', cable, statement, `reaches/${i}.cable`, undefined);
    });
  }
}

/** A standby may wait at the port of the link that it stands by for; every other second cable is one too many. */
function portsTaken(ports: readonly Port[]): PortTaken[] {
  const taken: PortTaken[] = [];
  for (const port of ports) {
    if (port.links.length < 2) continue;
    const kept = port.links.filter((link) => !waitsAt(link, port));
    if (kept.length > 1) taken.push({ port, links: kept });
  }
  return taken;
}

function waitsAt(link: Link, port: Port): boolean {
  for (let main = link.standbyFor; main !== undefined; main = main.standbyFor) {
    if (main.from.port === port || main.to.port === port) return true;
  }
  return false;
}

function stockOf(statements: Statements, cables: Plant['cables'], names: NameBook): StockPiece[] {
  return statements.of('stock').map((statement) => ({
    statement,
    cable: names.find(cables, statement.fact.cable, 'cable', statement, 'cable'),
  }));
}

function byName<T extends { readonly name: string }>(things: readonly T[]): Map<string, T> {
  const map = new Map<string, T>();
  for (const thing of things) map.set(thing.name, thing);
  return map;
}
