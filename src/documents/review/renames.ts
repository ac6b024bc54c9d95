import type { Space } from '../../analysis/model.ts';
import type { Fact } from '../../plan/facts.ts';

/** Which property of a fact holds names, and of which space. Everything else in a fact is words and figures. */
const spaceOf: ReadonlyMap<string, Space> = new Map([
  ['place', 'places'],
  ['by', 'places'],
  ['kit', 'kits'],
  ['cable', 'cables'],
  ['like', 'cables'],
  ['interface', 'interfaces'],
  ['accepts', 'interfaces'],
  ['segments', 'segments'],
  ['poweredBy', 'things'],
  ['standbyFor', 'things'],
  ['shares', 'things'],
  ['madeOf', 'things'],
  ['insteadOf', 'things'],
  ['without', 'things'],
  ['things', 'things'],
  ['thing', 'things'],
  ['uplinks', 'things'],
]);

const spaces: readonly Space[] = ['things', 'places', 'kits', 'cables', 'interfaces', 'segments', 'cases'];

/** What the things of the old plan are called in the new one. A name that nothing speaks of stays as it is. */
export class Renames {
  readonly #names = new Map<Space, Map<string, string>>(spaces.map((space) => [space, new Map()]));
  /** For each node, by its old name, its ports that have another name now. */
  readonly #ports = new Map<string, ReadonlyMap<string, string>>();

  /** Says that a thing of the old plan goes on, under this name. */
  add(space: Space, old: string, fresh: string): void {
    this.#names.get(space)!.set(old, fresh);
  }

  /** Says which ports of a node have another name now. */
  addPorts(node: string, ports: ReadonlyMap<string, string>): void {
    if (ports.size > 0) this.#ports.set(node, ports);
  }

  of(space: Space, old: string): string {
    return this.#names.get(space)!.get(old) ?? old;
  }

  port(node: string, port: string): string {
    return this.#ports.get(node)?.get(port) ?? port;
  }

  /** `box.in1`, or the name of a source or destination. */
  socket(text: string): string {
    const dot = text.indexOf('.');
    if (dot < 0) return this.of('things', text);
    const node = text.slice(0, dot);
    return `${this.of('things', node)}.${this.port(node, text.slice(dot + 1))}`;
  }

  /** What a finding is about: a name of any kind, a socket, or two of them with an arrow between. */
  subject(text: string): string {
    const [, first, arrow, second] = /^(.*?) (->|<->) (.*)$/.exec(text) ?? [];
    if (first === undefined || second === undefined) return this.#anywhere(text);
    if (arrow === '<->') return `${this.of('places', first)} <-> ${this.of('places', second)}`;
    return `${this.socket(first)} -> ${this.socket(second)}`;
  }

  /** The space in which the old plan has the name decides; a name of several is one of the things of the show. */
  #anywhere(text: string): string {
    if (text.includes('.')) return this.socket(text);
    for (const names of this.#names.values()) {
      const fresh = names.get(text);
      if (fresh !== undefined) return fresh;
    }
    return text;
  }

  /** A fact of the old plan in the names of the new one; its own name too. */
  fact<F extends Fact>(fact: F): F {
    const renamed = this.#value(fact, '', fact) as F & { name?: string };
    const space = spaceOfKind(fact.kind);
    if (!space || renamed.name === undefined) return renamed;
    return { ...renamed, name: this.of(space, renamed.name) };
  }

  #value(value: unknown, key: string, fact: Fact): unknown {
    if (typeof value === 'string') return this.#text(value, key, fact);
    if (Array.isArray(value)) return value.map((item) => this.#value(item, key, fact));
    if (typeof value !== 'object' || value === null) return value;
    if (isEnd(value)) {
      return { node: this.of('things', value.node), port: this.port(value.node, value.port) };
    }
    const entries = Object.entries(value).map(([name, part]) => [
      name,
      name === 'port' ? this.#portOf(value, part, fact) : this.#value(part, name, fact),
    ]);
    return Object.fromEntries(entries);
  }

  /** The port of a target (`thing`), or of the node that the fact itself is of (`labels`, `gives`). */
  #portOf(holder: object, port: unknown, fact: Fact): unknown {
    if (typeof port !== 'string') return port;
    if ('thing' in holder) return this.port(String(holder.thing), port);
    return fact.kind === 'node' ? this.port(fact.name, port) : port;
  }

  #text(text: string, key: string, fact: Fact): string {
    const space = spaceOf.get(key);
    if (space) return this.of(space, text);
    if (key === 'from' || key === 'to') {
      if (fact.kind === 'circuit') return this.of('things', text);
      return this.of('places', text);
    }
    if (key === 'source' && (fact.kind === 'feed' || 'subject' in fact || fact.kind === 'proved'))
      return this.of('things', text);
    return key === 'name' && 'subject' in fact ? this.#anywhere(text) : text;
  }
}

function isEnd(value: object): value is { node: string; port: string } {
  return 'node' in value && 'port' in value;
}

/** The space that the name of such a statement belongs to. */
export function spaceOfKind(kind: Fact['kind']): Space | undefined {
  switch (kind) {
    case 'place':
      return 'places';
    case 'kit':
      return 'kits';
    case 'cable':
      return 'cables';
    case 'interface':
      return 'interfaces';
    case 'segment':
      return 'segments';
    case 'case':
      return 'cases';
    case 'circuit':
    case 'node':
    case 'source':
    case 'destination':
    case 'link':
    case 'uplink':
      return 'things';
    default:
      return undefined;
  }
}
