import type { ReachFact } from '../plan/facts.ts';
import type { Cable, Interface, InterfaceFault } from './model.ts';

/** What stands against each other on one chain of cables. */
export interface Meeting {
  /** Of the two ends and of all joins between; undefined where none is stated. */
  readonly faces: readonly (Interface | undefined)[];
  readonly pinned: Interface | undefined;
  readonly cables: readonly (Cable | undefined)[];
}

export interface Choice {
  readonly interface: Interface | undefined;
  readonly fault: InterfaceFault | undefined;
  /** The faster one that the ends have in common, where no cable lists it. */
  readonly slowedFrom: Interface | undefined;
}

/**
 * Chooses what runs on a cable: the fastest interface that both ends accept and the cable lists. Of equally fast ones
 * that which reaches furthest on this cable, then the one that the ports themselves name, then by order of statements.
 */
export function chooseInterface({ faces, pinned, cables }: Meeting): Choice {
  const named = faces.filter((face) => face !== undefined);
  const [first, ...others] = named;
  if (first === undefined) return { interface: pinned, fault: undefined, slowedFrom: undefined };
  const common = first.accepts.filter((one) => others.every((face) => face.accepts.includes(one)));
  if (common.length === 0) {
    return faulty(pinned, { kind: 'nothing in common', between: named });
  }
  const laid = [...new Set(cables.filter((cable) => cable !== undefined))];
  const offered = pinned ? common.filter((one) => one === pinned) : common;
  const fastest = bestOf(offered, laid, named);
  if (pinned && fastest === undefined) {
    return faulty(pinned, { kind: 'pinned one not possible', pinned, common });
  }
  const listed = offered.filter((one) => laid.every((cable) => lists(one, cable)));
  const best = bestOf(listed, laid, named);
  if (best) {
    const slowed = !pinned && fastest && fastest.rate_bits_per_second > best.rate_bits_per_second;
    return { interface: best, fault: undefined, slowedFrom: slowed ? fastest : undefined };
  }
  const cable = laid.find((one) => !offered.some((face) => lists(face, one))) ?? laid[0];
  return faulty(fastest, cable && { kind: 'not on this cable', common: offered, cable });
}

function faulty(face: Interface | undefined, fault: InterfaceFault | undefined): Choice {
  return { interface: face, fault, slowedFrom: undefined };
}

/** Whether an interface can run on a cable at all, however short. */
export function lists(face: Interface, cable: Cable): boolean {
  if (reachOn(face, cable) !== undefined) return true;
  return cable.medium === 'coax' && face.statement.fact.budgets.length > 0;
}

/** The reach that an interface states for a cable, or for the nearest one that it is like. */
export function reachOn(face: Interface, cable: Cable): ReachFact | undefined {
  const { reaches } = face.statement.fact;
  if (reaches.length === 0) return undefined;
  for (const name of cable.knownAs) {
    const reach = reaches.find((one) => one.cable === name);
    if (reach) return reach;
  }
  return undefined;
}

function bestOf(
  candidates: readonly Interface[],
  cables: readonly Cable[],
  named: readonly Interface[],
): Interface | undefined {
  let best: Interface | undefined;
  for (const one of candidates) {
    if (best === undefined || isBetter(one, best, cables, named)) best = one;
  }
  return best;
}

function isBetter(
  one: Interface,
  best: Interface,
  cables: readonly Cable[],
  named: readonly Interface[],
): boolean {
  const faster = one.rate_bits_per_second - best.rate_bits_per_second;
  if (faster !== 0) return faster > 0;
  const further = shortestReach_m(one, cables) - shortestReach_m(best, cables);
  if (further !== 0) return further > 0;
  const nearer = stepsFrom(named, one) - stepsFrom(named, best);
  return nearer !== 0 ? nearer < 0 : one.index < best.index;
}

function shortestReach_m(face: Interface, cables: readonly Cable[]): number {
  let shortest = Number.MAX_VALUE;
  for (const cable of cables) shortest = Math.min(shortest, reachOn(face, cable)?.length_m ?? shortest);
  return shortest;
}

function stepsFrom(named: readonly Interface[], one: Interface): number {
  return named.reduce((sum, face) => sum + face.accepts.indexOf(one), 0);
}
