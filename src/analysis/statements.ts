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

/** What is different between two lists of statements: one stretch in the middle. */
export interface StatementEdit {
  /** All statements as they are now, and how many of them stand ahead of the stretch. */
  readonly statements: readonly Statement[];
  readonly ahead: number;
  readonly removed: readonly Statement[];
  readonly added: readonly Statement[];
}

export function editBetween(before: readonly Statement[], now: readonly Statement[]): StatementEdit {
  const most = Math.min(before.length, now.length);
  let ahead = 0;
  while (ahead < most && before[ahead] === now[ahead]) ahead++;
  let behind = 0;
  while (behind < most - ahead && before.at(-1 - behind) === now.at(-1 - behind)) behind++;
  return {
    statements: now,
    ahead,
    removed: before.slice(ahead, before.length - behind),
    added: now.slice(ahead, now.length - behind),
  };
}

/** The last statement of some sort ahead of an edit. */
export function lastAhead(
  { statements, ahead }: StatementEdit,
  isIt: (statement: Statement) => boolean,
): Statement | undefined {
  for (let i = ahead - 1; i >= 0; i--) if (isIt(statements[i]!)) return statements[i];
  return undefined;
}

export function isOfPlant({ fact }: Statement): boolean {
  return PLANT_KINDS.includes(fact.kind) && !speaksOfFeed(fact);
}

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

  /** Follows an edit. */
  follow(edit: StatementEdit): void {
    for (const kind of new Set([...edit.removed, ...edit.added].map(({ fact }) => fact.kind))) {
      const list = this.#byKind.get(kind) ?? [];
      this.#byKind.set(kind, list);
      const isOfKind = ({ fact }: Statement) => fact.kind === kind;
      const gone = edit.removed.filter(isOfKind);
      const last = lastAhead(edit, isOfKind);
      list.splice(last ? list.lastIndexOf(last) + 1 : 0, gone.length, ...edit.added.filter(isOfKind));
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
