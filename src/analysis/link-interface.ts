import type { ReachFact } from '../plan/facts.ts';
import type { Cable, Interface, InterfaceFault } from './model.ts';

/** What stands against each other on one chain of cables. */
export interface Meeting {
  /** Of the two ends and of all joins between; undefined where none is stated. */
  readonly faces: readonly (Interface | undefined)[];
  readonly pinned: Interface | undefined;
  readonly cables: readonly (Cable | undefined)[];
}

/** What can run on a chain of cables, however long it is. */
export interface Choice {
  /** Equally fast ones, that which the ports themselves name first, then by order of what they accept. */
  readonly offered: readonly Interface[];
  readonly fault: InterfaceFault | undefined;
  /** The faster one that the ends have in common, where no cable lists it. */
  readonly slowedFrom: Interface | undefined;
}

/** The fastest interfaces that both ends accept and every cable lists. */
export function choicesOf({ faces, pinned, cables }: Meeting): Choice {
  const named = faces.filter((face) => face !== undefined);
  const [first, ...others] = named;
  const asPinned = pinned ? [pinned] : [];
  if (first === undefined) return { offered: asPinned, fault: undefined, slowedFrom: undefined };
  const common = first.accepts.filter((one) => others.every((face) => face.accepts.includes(one)));
  if (common.length === 0) return faulty(asPinned, { kind: 'nothing in common', between: named });
  if (pinned && !common.includes(pinned)) {
    return faulty(asPinned, { kind: 'pinned one not possible', pinned, common });
  }
  const possible = pinned ? [pinned] : common;
  const laid = [...new Set(cables.filter((cable) => cable !== undefined))];
  const listed = possible.filter((one) => laid.every((cable) => lists(one, cable)));
  const fastest = fastestOf(possible, named);
  const offered = fastestOf(listed, named);
  if (offered[0] && fastest[0]) {
    const isSlowed = fastest[0].rate_bits_per_second > offered[0].rate_bits_per_second;
    return { offered, fault: undefined, slowedFrom: isSlowed ? fastest[0] : undefined };
  }
  const cable = laid.find((one) => !possible.some((face) => lists(face, one))) ?? laid[0];
  return faulty(fastest, cable && { kind: 'not on this cable', common: possible, cable });
}

/**
 * Of equally fast interfaces the first that reaches the length of the chain; where none does, that which reaches
 * furthest. So single-mode fibre gets the optics that are usual for a hall, and the long-range ones beyond that.
 */
export function chooseInterfaceOver(
  { offered }: Choice,
  cables: readonly (Cable | undefined)[],
  length_m: number | undefined,
): Interface | undefined {
  const [first] = offered;
  if (first === undefined || offered.length === 1 || length_m === undefined) return first;
  let furthest = first;
  let furthest_m = -1;
  for (const one of offered) {
    const reach_m = shortestReach_m(one, cables);
    if (reach_m >= length_m) return one;
    if (reach_m <= furthest_m) continue;
    furthest = one;
    furthest_m = reach_m;
  }
  return furthest;
}

/** The same for a single cable. */
export function chooseInterface(
  choice: Choice,
  cable: Cable | undefined,
  length_m: number | undefined,
): Interface | undefined {
  if (choice.offered.length < 2) return choice.offered[0];
  return chooseInterfaceOver(choice, [cable], length_m);
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

function faulty(offered: readonly Interface[], fault: InterfaceFault | undefined): Choice {
  return { offered, fault, slowedFrom: undefined };
}

function fastestOf(candidates: readonly Interface[], named: readonly Interface[]): Interface[] {
  const rate = Math.max(...candidates.map((one) => one.rate_bits_per_second));
  const steps = (one: Interface) => named.reduce((sum, face) => sum + face.accepts.indexOf(one), 0);
  return candidates
    .filter((one) => one.rate_bits_per_second === rate)
    .sort((a, b) => steps(a) - steps(b) || a.index - b.index);
}

function shortestReach_m(face: Interface, cables: readonly (Cable | undefined)[]): number {
  let shortest = Number.MAX_VALUE;
  for (const cable of cables) {
    if (cable) shortest = Math.min(shortest, reachOn(face, cable)?.length_m ?? shortest);
  }
  return shortest;
}
