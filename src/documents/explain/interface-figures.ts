import { reachOn } from '../../analysis/link-interface.ts';
import type { Analysis, Cable, Interface } from '../../analysis/model.ts';
import type { Provenance, ReachFact } from '../../plan/facts.ts';

/** How far an interface goes over one cable, as stated. */
export interface StatedReach {
  readonly interface: Interface;
  readonly cable: Cable;
  readonly fact: ReachFact;
}

/** The cables that an interface states a reach for, in the order of the library. */
export function reachesOf({ cables }: Analysis, face: Interface): StatedReach[] {
  return [...cables.values()].flatMap((cable) => statedReach(face, cable));
}

/** The interfaces that state a reach over a cable. */
export function reachesOver({ interfaces }: Analysis, cable: Cable): StatedReach[] {
  return [...interfaces.values()].flatMap((face) => statedReach(face, cable));
}

function statedReach(face: Interface, cable: Cable): StatedReach[] {
  const fact = reachOn(face, cable);
  return fact ? [{ interface: face, cable, fact }] : [];
}

/** Where a stated value comes from, in words. */
export function provenanceText({ source, fromMemory }: Provenance): string {
  const said = source ?? 'no source is stated';
  return fromMemory ? `from memory, verify before relying on it: ${said}` : said;
}
