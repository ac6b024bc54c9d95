import { attempt } from '../../analysis/attempt.ts';
import { reachOn } from '../../analysis/link-interface.ts';
import type { Analysis, Cable, Interface } from '../../analysis/model.ts';
import type { Working } from '../../physics/working.ts';
import type { Provenance } from '../../plan/facts.ts';
import { coaxReach, isJudgedByLoss } from '../workings/coax-workings.ts';

/** How far an interface goes over one cable. */
export interface ReachOnCable extends Provenance {
  readonly interface: Interface;
  readonly cable: Cable;
  readonly length_m: number;
  readonly good_m: number | undefined;
  readonly loss_db: number | undefined;
  /** Undefined when the reach is stated; else it follows from what the cable loses. */
  readonly working: Working | undefined;
}

/** The cables that an interface goes over, in the order of the library. */
export function reachesOf({ cables }: Analysis, face: Interface): ReachOnCable[] {
  return [...cables.values()].flatMap((cable) => reachOnCable(face, cable));
}

/** The interfaces that go over a cable. */
export function reachesOver({ interfaces }: Analysis, cable: Cable): ReachOnCable[] {
  return [...interfaces.values()].flatMap((face) => reachOnCable(face, cable));
}

function reachOnCable(face: Interface, cable: Cable): ReachOnCable[] {
  if (isJudgedByLoss(face, cable)) return attempt(() => [reachByLoss(face, cable)]) ?? [];
  const fact = reachOn(face, cable);
  if (!fact) return [];
  const { length_m, good_m, loss_db, fromMemory, source } = fact;
  const reach = { interface: face, cable, length_m, good_m, loss_db, fromMemory, working: undefined };
  return [source === undefined ? reach : { ...reach, source }];
}

function reachByLoss(face: Interface, cable: Cable): ReachOnCable {
  const { value, working } = coaxReach(face, cable);
  return {
    interface: face,
    cable,
    length_m: value,
    good_m: undefined,
    loss_db: undefined,
    fromMemory: [...cable.losses, ...face.statement.fact.budgets].some((one) => one.fromMemory),
    source: 'what it loses, within what the receiver makes good',
    working,
  };
}

/** Where a stated value comes from, in words. */
export function provenanceText({ source, fromMemory }: Provenance): string {
  const said = source ?? 'no source is stated';
  return fromMemory ? `from memory, verify before relying on it: ${said}` : said;
}
