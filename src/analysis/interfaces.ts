import { usableRate_bits_per_second } from '../physics/display-interface.ts';
import type { InterfaceFact } from '../plan/facts.ts';
import type { StatementOf } from '../plan/plan.ts';
import { append, type Building } from './building.ts';
import type { Cycle, Interface, Signal } from './model.ts';
import type { NameBook } from './names.ts';

/** Bits that a display link sends for each character: ten on each of three lanes. */
const BITS_PER_CHARACTER = 30;

const SIGNALS: ReadonlyMap<string, Signal> = new Map([
  ['sdi', 'sdi'],
  ['hdmi', 'display'],
  ['usb', 'display'],
  ['ethernet', 'network'],
  ['audio', 'sound'],
]);

/** The interfaces by name, with everything that each accepts. */
export function interfacesOf(
  statements: readonly StatementOf<'interface'>[],
  names: NameBook,
  cycles: Cycle[],
): Map<string, Interface> {
  const byName = new Map<string, Interface>();
  const all: Building<Interface>[] = [];
  for (const statement of statements) {
    const { fact } = statement;
    const one: Building<Interface> = {
      index: all.length,
      name: fact.name,
      statement,
      signal: SIGNALS.get(fact.signal ?? '') ?? 'unknown',
      rate_bits_per_second: speedOf(fact),
      accepts: [],
    };
    if (names.declare('interfaces', byName, fact.name, one)) all.push(one);
  }
  const direct = all.map(({ statement }) =>
    statement.fact.accepts.flatMap(
      (name, i) => names.find(byName, name, 'interface', statement, `accepts/${i}`) ?? [],
    ),
  );
  tellCircles(all, direct, cycles);
  for (const one of all) one.accepts = closure(one, direct);
  return byName;
}

/** By which the faster of two is told. */
function speedOf(fact: InterfaceFact): number {
  const clock = (fact.clock_hz ?? 0) * BITS_PER_CHARACTER;
  let lanes = 0;
  if (fact.lanes !== undefined) {
    try {
      lanes = usableRate_bits_per_second(fact.lanes.count, fact.lanes.rate_bits_per_second);
    } catch {
      // Lanes that cannot be are told with the statement.
    }
  }
  return Math.max(fact.rate_bits_per_second ?? 0, clock, lanes);
}

/** Itself, what it accepts, what that accepts, and so on, each once, the nearest first. */
function closure(start: Interface, direct: readonly (readonly Interface[])[]): Interface[] {
  const reached = [start];
  const seen = new Set(reached);
  for (const one of reached) {
    for (const next of direct[one.index]!) {
      if (seen.has(next)) continue;
      seen.add(next);
      reached.push(next);
    }
  }
  return reached;
}

/** Interfaces that accept each other in a circle: it does no harm, but the plan says nothing by it. */
function tellCircles(
  all: readonly Interface[],
  direct: readonly (readonly Interface[])[],
  cycles: Cycle[],
): void {
  const state = new Uint8Array(all.length);
  for (const start of all) {
    if (state[start.index] !== 0) continue;
    const path = [start];
    const next = [0];
    state[start.index] = 1;
    while (path.length > 0) {
      const one = path[path.length - 1]!;
      const child = direct[one.index]![next[next.length - 1]!++];
      if (child === undefined) {
        state[one.index] = 2;
        path.pop();
        next.pop();
      } else if (state[child.index] === 0) {
        state[child.index] = 1;
        path.push(child);
        next.push(0);
      } else if (state[child.index] === 1) {
        const round = path.slice(path.indexOf(child));
        append(cycles, { kind: 'accepts', statements: round.map(({ statement }) => statement) });
      }
    }
  }
}
