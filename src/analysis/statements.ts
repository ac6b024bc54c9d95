import type { FactOf } from '../plan/facts.ts';
import type { Plan, Statement, StatementOf } from '../plan/plan.ts';

type Kind = Statement['fact']['kind'];

/** The statements that decide what stands in the house and is plugged where. */
const PLANT_KINDS: readonly Kind[] = [
  'plan',
  'place',
  'run',
  'circuit',
  'kit',
  'cable',
  'interface',
  'node',
  'source',
  'destination',
  'link',
  'uplink',
  'stock',
  'measured',
];

function speaksOfFeed(fact: Statement['fact']): boolean {
  return fact.kind === 'measured' && fact.subject.kind === 'feed';
}

/** A statement that is a cable: a link, or the short form of one in a source or destination. */
export type CableStatement = StatementOf<'link'> | StatementOf<'source'> | StatementOf<'destination'>;

/** A statement that declares a name of the space which everything in use shares. */
export type ThingStatement =
  | CableStatement
  | StatementOf<'node'>
  | StatementOf<'circuit'>
  | StatementOf<'uplink'>;

/** The statements of a plan by what they are, each kind in order. */
export class Statements {
  readonly #byKind = new Map<Kind, Statement[]>();
  /** Links, sources and destinations in one order: each may be a cable. */
  readonly cables: CableStatement[] = [];
  /** Nodes, sources, destinations, links, circuits and uplinks in one order. */
  readonly things: ThingStatement[] = [];

  constructor(plan: Plan) {
    for (const statement of plan.statements) {
      const { kind } = statement.fact;
      const list = this.#byKind.get(kind);
      if (list) list.push(statement);
      else this.#byKind.set(kind, [statement]);
      if (kind === 'link' || kind === 'source' || kind === 'destination') {
        this.cables.push(statement as CableStatement);
        this.things.push(statement as CableStatement);
      } else if (kind === 'node' || kind === 'circuit' || kind === 'uplink') {
        this.things.push(statement as ThingStatement);
      }
    }
  }

  /** Everything that the plant is made of: all but wishes, and what was accepted, proved or measured of feeds. */
  ofPlant(): Statement[] {
    return PLANT_KINDS.flatMap((kind) => {
      const all: readonly Statement[] = this.of(kind);
      return kind === 'measured' ? all.filter(({ fact }) => !speaksOfFeed(fact)) : all;
    });
  }

  of<K extends Kind>(kind: K): readonly Statement<FactOf<K>>[] {
    return (this.#byKind.get(kind) ?? []) as unknown as Statement<FactOf<K>>[];
  }
}
