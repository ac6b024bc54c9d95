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
  return [...cables.values()].flatMap((cable) => reachOn(face, cable) ?? []);
}

/** The interfaces that state a reach over a cable. */
export function reachesOver({ interfaces }: Analysis, cable: Cable): StatedReach[] {
  return [...interfaces.values()].flatMap((face) => reachOn(face, cable) ?? []);
}

/** An interface may list a cable by itself or by one that it is like; the nearest counts. */
function reachOn(face: Interface, cable: Cable): StatedReach | undefined {
  for (const name of cable.knownAs) {
    const fact = face.statement.fact.reaches.find((reach) => reach.cable === name);
    if (fact) return { interface: face, cable, fact };
  }
  return undefined;
}

/** Where a stated value comes from, in words. */
export function provenanceText({ source, fromMemory }: Provenance): string {
  const said = source ?? 'no source is stated';
  return fromMemory ? `from memory, verify before relying on it: ${said}` : said;
}
