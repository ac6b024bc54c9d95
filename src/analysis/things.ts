import type { Statement, StatementOf } from '../plan/plan.ts';
import { type Building, grown, nothing } from './building.ts';
import type { FormatTable } from './formats.ts';
import type { Circuit, Destination, Kit, Node, Place, Source, Thing, Uplink } from './model.ts';
import type { NameBook } from './names.ts';
import type { Statements } from './statements.ts';

/** What things are looked up in while they are made. */
export interface Surroundings {
  readonly names: NameBook;
  readonly places: ReadonlyMap<string, Place>;
  readonly kits: ReadonlyMap<string, Kit>;
  readonly things: Map<string, Thing>;
  readonly formats: FormatTable;
}

/**
 * Everything of the shared space of names, in one order: of several of one name the first statement counts, whatever
 * it declares. Not yet plugged in; the links are left to be made.
 */
export class ThingMaker {
  readonly nodes: Building<Node>[] = [];
  readonly sources: Building<Source>[] = [];
  readonly destinations: Building<Destination>[] = [];
  readonly circuits: Building<Circuit>[] = [];
  readonly uplinks: Building<Uplink>[] = [];
  readonly #around: Surroundings;

  /** @param reserve Enters the name of a link, which is made later. */
  constructor(
    statements: Statements,
    around: Surroundings,
    reserve: (statement: StatementOf<'link'>) => void,
  ) {
    this.#around = around;
    for (const statement of statements.things) {
      switch (statement.fact.kind) {
        case 'node':
          this.#addNode(statement as StatementOf<'node'>);
          break;
        case 'source':
          this.#addSource(statement as StatementOf<'source'>);
          break;
        case 'destination':
          this.#addDestination(statement as StatementOf<'destination'>);
          break;
        case 'circuit':
          this.#addCircuit(statement as StatementOf<'circuit'>);
          break;
        case 'uplink':
          this.#addUplink(statement as StatementOf<'uplink'>);
          break;
        default:
          reserve(statement as StatementOf<'link'>);
      }
    }
    // Power may come from a circuit that is written below.
    for (const some of [this.nodes, this.sources, this.destinations]) plugIntoCircuits(some, around);
    tellUplinks(this.destinations, around);
  }

  #addNode(statement: StatementOf<'node'>): void {
    const { fact } = statement;
    const node: Building<Node> = {
      kind: 'node',
      index: this.nodes.length,
      name: fact.name,
      statement,
      kit: undefined,
      place: undefined,
      poweredBy: nothing,
      usedPorts: [],
      loosePorts: nothing,
    };
    if (!this.#declare(node)) return;
    node.kit = this.#kit(fact.kit, statement);
    node.place = this.#place(fact.place, statement);
    this.nodes.push(node);
  }

  #addSource(statement: StatementOf<'source'>): void {
    const { fact } = statement;
    const source: Building<Source> = {
      kind: 'source',
      index: this.sources.length,
      name: fact.name,
      statement,
      kit: undefined,
      place: undefined,
      poweredBy: nothing,
      from: undefined,
      port: undefined,
      link: undefined,
      format: fact.format && this.#around.formats.stated(fact.format),
      encrypted: fact.encrypted,
      sendsByItself: false,
      madeOf: undefined,
      delay: fact.delay,
    };
    if (!this.#declare(source)) return;
    source.kit = this.#kit(fact.kit, statement);
    source.place = this.#place(fact.place, statement);
    this.sources.push(source);
  }

  #addDestination(statement: StatementOf<'destination'>): void {
    const { fact } = statement;
    const destination: Building<Destination> = {
      kind: 'destination',
      index: this.destinations.length,
      name: fact.name,
      statement,
      kit: undefined,
      place: undefined,
      poweredBy: nothing,
      port: undefined,
      link: undefined,
      takes: this.#around.formats.allStated(fact.formats),
      receivesByItself: false,
      limit: fact.limit,
      delay: fact.delay,
    };
    if (!this.#declare(destination)) return;
    destination.kit = this.#kit(fact.kit, statement);
    destination.place = this.#place(fact.place, statement);
    this.destinations.push(destination);
  }

  #addCircuit(statement: StatementOf<'circuit'>): void {
    const circuit: Building<Circuit> = {
      kind: 'circuit',
      index: this.circuits.length,
      name: statement.fact.name,
      statement,
      place: undefined,
      from: undefined,
      fromCycle: false,
    };
    if (!this.#declare(circuit)) return;
    circuit.place = this.#place(statement.fact.place, statement);
    this.circuits.push(circuit);
  }

  #addUplink(statement: StatementOf<'uplink'>): void {
    const uplink: Building<Uplink> = {
      kind: 'uplink',
      index: this.uplinks.length,
      name: statement.fact.name,
      statement,
      place: undefined,
      stated_bits_per_second: statement.fact.rate_bits_per_second,
      measured_bits_per_second: undefined,
    };
    if (!this.#declare(uplink)) return;
    uplink.place = this.#place(statement.fact.place, statement);
    this.uplinks.push(uplink);
  }

  /** False when the name is taken: then nothing else of the statement is read. */
  #declare(thing: Thing): boolean {
    const { names, things } = this.#around;
    return names.declare('things', things, thing.name, thing);
  }

  #kit(name: string | undefined, statement: Statement): Kit | undefined {
    const { names, kits } = this.#around;
    return name === undefined ? undefined : names.find(kits, name, 'kit', statement, 'kits/0');
  }

  #place(name: string | undefined, statement: Statement): Place | undefined {
    const { names, places } = this.#around;
    return name === undefined ? undefined : names.find(places, name, 'place', statement, 'places/0');
  }
}

/** What each takes its power from; told when it is no circuit. */
function plugIntoCircuits(
  devices: Iterable<Building<Node> | Building<Source> | Building<Destination>>,
  around: Surroundings,
): void {
  for (const device of devices) {
    const { statement } = device;
    const { poweredBy } = statement.fact;
    if (poweredBy.length === 0) continue;
    let circuits: readonly Circuit[] = nothing;
    for (let i = 0; i < poweredBy.length; i++) {
      const circuit = circuitNamed(poweredBy[i]!, around, statement, 'poweredBy', i);
      if (circuit) circuits = grown(circuits, circuit);
    }
    device.poweredBy = circuits;
  }
}

/** The uplinks that streams name; told when they are none. */
function tellUplinks(destinations: Iterable<Destination>, { names, things }: Surroundings): void {
  for (const { statement } of destinations) {
    const { streams } = statement.fact;
    if (streams.length === 0) continue;
    streams.forEach(({ uplinks }, i) => {
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
  { names, things }: Pick<Surroundings, 'names' | 'things'>,
  statement: Statement,
  clause: string,
  item: number,
): Building<Circuit> | undefined {
  const found = things.get(name);
  if (found?.kind === 'circuit') return found;
  names.tellUnknown('circuit', name, statement, `${clause}/${item}`, found?.statement);
  return undefined;
}
