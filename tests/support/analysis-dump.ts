/** Everything that can be seen of an analysis, a line a thing, to compare two analyses. */
import type { Analysis } from '../../src/analysis/model.ts';
import type { Statement } from '../../src/plan/plan.ts';

type Thing = Readonly<Record<string, unknown>>;

/** Things that are told by their name wherever others point at them, and in full in their own list. */
export function dumpAnalysis(analysis: Analysis): string[] {
  const orders = new Map(analysis.plan.statements.map((statement, i) => [statement, i]));
  const lines: string[] = [];
  const { plan, ...figures } = analysis;
  lines.push(`files ${plan.files.join()}`);
  for (const [list, value] of Object.entries(figures)) {
    for (const [key, item] of entriesOf(value)) lines.push(`${list} ${key} ${told(item, orders, true)}`);
  }
  return lines;
}

function entriesOf(value: unknown): [string, unknown][] {
  if (value instanceof Map) return [...value].map(([key, item]) => [String(key), item]);
  if (Array.isArray(value)) return value.map((item, i) => [String(i), item]);
  return [['', value]];
}

function told(value: unknown, orders: ReadonlyMap<Statement, number>, isFull: boolean): string {
  if (typeof value !== 'object' || value === null)
    return typeof value === 'string' ? JSON.stringify(value) : String(value);
  if (Array.isArray(value)) return `[${Array.from(value, (item) => told(item, orders, false)).join(' ')}]`;
  if (value instanceof Set || value instanceof Map) {
    const items = [...value].map((item) => told(item, orders, false));
    return `{${items.sort().join(' ')}}`;
  }
  const thing = value as Thing;
  if ('fact' in thing) return `statement ${orders.get(thing as unknown as Statement) ?? 'of nowhere'}`;
  const name = isFull ? undefined : nameOf(thing);
  if (name !== undefined) return name;
  const fields = Object.keys(thing)
    .filter((key) => thing[key] !== undefined && !passing.has(key))
    .sort()
    .map((key) => `${key}=${told(thing[key], orders, false)}`);
  return `(${fields.join(', ')})`;
}

/** What only the making of a link needs. */
const passing = new Set(['shares']);

/** `port 3 box_d.net1`; undefined for a thing that has no list of its own. */
function nameOf(thing: Thing): string | undefined {
  const sort = Object.entries(marks).find(([, marks]) => marks.every((mark) => mark in thing))?.[0];
  return sort && `${sort} ${thing.index} ${thing.name ?? thing.text ?? ''}`;
}

/** What each sort of thing is told by. */
const marks: Readonly<Record<string, readonly string[]>> = {
  port: ['index', 'kitPort', 'links'],
  chain: ['index', 'reversed', 'ends'],
  feed: ['index', 'targetIndex'],
  delivery: ['index', 'routes', 'because'],
  flow: ['index', 'entry', 'copy'],
  segment: ['index', 'without'],
  kit: ['index', 'portsByName'],
  socket: ['index', 'role', 'follows'],
  thing: ['index', 'kind', 'statement'],
  named: ['index', 'name', 'statement'],
  carried: ['index', 'carriage'],
};
