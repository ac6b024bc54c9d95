import type { TargetFact } from '../plan/facts.ts';
import type { Statement, StatementOf } from '../plan/plan.ts';
import type { Building } from './building.ts';
import type { Case, Feed, KitPort, Node, Plant, Port, Segment, Source, Target, Thing } from './model.ts';
import type { NameBook } from './names.ts';
import { bareSocket } from './ports.ts';
import { lastAhead, type StatementEdit, type Statements } from './statements.ts';
import { targetText } from './subjects.ts';

/** What the show speaks of: segments, feeds, cases, each name looked up. */
export interface Wishes {
  readonly segments: ReadonlyMap<string, Segment>;
  readonly feeds: Building<Feed>[];
  readonly blacks: readonly Black[];
  readonly cases: ReadonlyMap<string, Case>;
}

/** One target of a `black` statement. */
export interface Black {
  readonly statement: StatementOf<'black'>;
  readonly part: string;
  readonly target: Target | undefined;
  readonly targetName: string;
  /** Undefined: in all. */
  readonly segments: readonly Segment[] | undefined;
}

export class WishReader {
  readonly #plant: Plant;
  readonly #names: NameBook;
  readonly #segments = new Map<string, Segment>();
  readonly #bareSockets = new Map<string, Port>();

  constructor(plant: Plant, names: NameBook) {
    this.#plant = plant;
    this.#names = names;
  }

  read(statements: Statements): Wishes {
    for (const statement of statements.of('segment')) this.#readSegment(statement);
    const feeds: Building<Feed>[] = [];
    for (const statement of statements.of('feed')) this.#readFeed(statement, feeds);
    const blacks = statements.of('black').flatMap((statement) => this.#readBlack(statement));
    return { segments: this.#segments, feeds, blacks, cases: this.#readCases(statements) };
  }

  /** Follows an edit of feeds; the others keep their order. */
  followFeeds(
    feeds: Building<Feed>[],
    edit: StatementEdit,
  ): { readonly gone: readonly Feed[]; readonly added: readonly Feed[] } {
    const removed = new Set(edit.removed);
    for (const statement of removed) this.#names.forgetAll(statement);
    const last = lastAhead(edit, ({ fact }) => fact.kind === 'feed' && fact.targets.length > 0);
    const at = last ? feeds.findLastIndex(({ statement }) => statement === last) + 1 : 0;
    let count = 0;
    while (at + count < feeds.length && removed.has(feeds[at + count]!.statement)) count++;
    const read: Building<Feed>[] = [];
    for (const statement of edit.added) {
      if (statement.fact.kind === 'feed') this.#readFeed(statement as StatementOf<'feed'>, read);
    }
    const gone = feeds.splice(at, count, ...read);
    for (let i = at; i < feeds.length; i++) feeds[i]!.index = i;
    return { gone, added: read };
  }

  #readSegment(statement: StatementOf<'segment'>): void {
    const { name, without } = statement.fact;
    this.#names.declare('segments', this.#segments, name, {
      index: this.#segments.size,
      name,
      statement,
      without: this.#things(without, statement, 'without'),
    });
  }

  #readFeed(statement: StatementOf<'feed'>, feeds: Building<Feed>[]): void {
    const { fact } = statement;
    const source = this.#source(fact.source, statement, 'source');
    const insteadOf =
      fact.insteadOf === undefined ? undefined : this.#source(fact.insteadOf, statement, 'insteadOf/0');
    const segments = this.#segmentsNamed(fact.segments, statement);
    const via = fact.via.length === 0 ? noPorts : this.#viaPorts(statement);
    fact.targets.forEach((target, targetIndex) => {
      const targetName = targetText(target);
      feeds.push({
        index: feeds.length,
        name: `${fact.source} -> ${targetName}`,
        statement,
        targetIndex,
        sourceName: fact.source,
        targetName,
        source,
        target: this.#target(target, statement, `targets/${targetIndex}`),
        via,
        redundant: fact.redundant,
        seamless: fact.seamless,
        always: fact.segments.length === 0,
        segments,
        insteadOf,
        repeats: undefined,
        measured: undefined,
        proofs: [],
      });
    });
  }

  #readBlack(statement: StatementOf<'black'>): Black[] {
    const { fact } = statement;
    const segments = fact.segments.length === 0 ? undefined : this.#segmentsNamed(fact.segments, statement);
    return fact.targets.map((target, i) => ({
      statement,
      part: `targets/${i}`,
      target: this.#target(target, statement, `targets/${i}`),
      targetName: targetText(target),
      segments,
    }));
  }

  #readCases(statements: Statements): ReadonlyMap<string, Case> {
    const cases = new Map<string, Case>();
    for (const statement of statements.of('case')) {
      const { name, things } = statement.fact;
      this.#names.declare('cases', cases, name, {
        index: cases.size,
        name,
        statement,
        things: this.#things(things, statement, 'things'),
      });
    }
    return cases;
  }

  #things(wanted: readonly string[], statement: Statement, part: string): Thing[] {
    return wanted.flatMap(
      (name, i) => this.#names.find(this.#plant.things, name, 'thing', statement, `${part}/${i}`) ?? [],
    );
  }

  #source(name: string, statement: Statement, part: string): Source | undefined {
    const found = this.#plant.things.get(name);
    if (found?.kind === 'source') return found;
    this.#names.tellUnknown('source', name, statement, part, found?.statement);
    return undefined;
  }

  #segmentsNamed(wanted: readonly string[], statement: Statement): readonly Segment[] {
    if (wanted.length === 0) return noSegments;
    const found = wanted.flatMap(
      (name, i) => this.#names.find(this.#segments, name, 'segment', statement, `segments/${i}`) ?? [],
    );
    return [...new Set(found)];
  }

  #viaPorts(statement: StatementOf<'feed'>): readonly Port[] {
    return statement.fact.via.flatMap(
      ({ node, port }, i) => this.#port(node, port, statement, `via/${i}.node`, `via/${i}.port`) ?? [],
    );
  }

  #target({ thing, port }: TargetFact, statement: Statement, part: string): Target | undefined {
    if (port !== undefined) return this.#port(thing, port, statement, `${part}.thing`, `${part}.port`);
    const found = this.#plant.things.get(thing);
    if (found?.kind === 'destination') return found;
    this.#names.tellUnknown('target', thing, statement, `${part}.thing`, found?.statement);
    return undefined;
  }

  /** A port of a node; one without a cable is not part of the plant, but it can be wished for. */
  #port(
    name: string,
    port: string,
    statement: Statement,
    nodePart: string,
    portPart: string,
  ): Port | undefined {
    const node = this.#plant.things.get(name);
    if (node?.kind !== 'node') {
      this.#names.tellUnknown('node', name, statement, nodePart, node?.statement);
      return undefined;
    }
    if (!node.kit) return node.loosePorts.find((one) => one.name === port);
    const kitPort = node.kit.portsByName.get(port);
    if (kitPort === undefined) {
      this.#names.tellUnknownPort(node, port, statement, portPart);
      return undefined;
    }
    return node.usedPorts[kitPort.index] ?? this.#bareSocket(node, kitPort);
  }

  #bareSocket(node: Node, kitPort: KitPort): Port {
    const text = `${node.name}.${kitPort.name}`;
    let port = this.#bareSockets.get(text);
    if (!port) {
      port = bareSocket(node, kitPort);
      this.#bareSockets.set(text, port);
    }
    return port;
  }
}

const noPorts: readonly Port[] = [];
const noSegments: readonly Segment[] = [];
