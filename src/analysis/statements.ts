import type { FactOf } from '../plan/facts.ts';
import type { Plan, Statement, StatementOf } from '../plan/plan.ts';

type Kind = Statement['fact']['kind'];

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

  of<K extends Kind>(kind: K): readonly Statement<FactOf<K>>[] {
    return (this.#byKind.get(kind) ?? []) as unknown as Statement<FactOf<K>>[];
  }
}
