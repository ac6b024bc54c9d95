import type { CableFact } from '../plan/facts.ts';
import type { StatementOf } from '../plan/plan.ts';
import type { Building } from './building.ts';
import type { Cable, Cycle, Medium } from './model.ts';
import type { NameBook } from './names.ts';

const MEDIA: ReadonlyMap<string, Medium> = new Map([
  ['coax', 'coax'],
  ['pair', 'twisted pair'],
  ['fibre', 'fibre'],
  ['hdmi', 'display'],
  ['usb', 'display'],
  ['audio', 'sound'],
  ['twinax', 'direct attach'],
]);

/** The cables by name, each with what it has from the cable it is `like`. */
export function cablesOf(
  statements: readonly StatementOf<'cable'>[],
  names: NameBook,
  cycles: Cycle[],
): Map<string, Cable> {
  const byName = new Map<string, Building<Cable>>();
  const all: Building<Cable>[] = [];
  for (const statement of statements) {
    const { fact } = statement;
    const cable: Building<Cable> = {
      index: all.length,
      name: fact.name,
      statement,
      medium: MEDIA.get(fact.medium ?? '') ?? 'unknown',
      screened: fact.screened,
      strandedShare: fact.strandedShare,
      losses: fact.losses,
      delay_s_per_m: fact.delay_s_per_m,
      weight_kg_per_m: fact.weight_kg_per_m,
      resistance_ohm_per_m: fact.resistance_ohm_per_m,
      knownAs: [fact.name],
      likeCycle: false,
    };
    if (names.declare('cables', byName, fact.name, cable)) all.push(cable);
  }
  const likes = all.map(({ statement }) => {
    const { like } = statement.fact;
    return like === undefined ? undefined : names.find(byName, like, 'cable', statement, 'likes/0');
  });
  const facts = all.map(({ statement }) => statement.fact);
  for (const cable of all) inherit(cable, likes, facts, cycles);
  return byName;
}

/** Takes from the cables it is like what it does not state itself, the nearest first. */
function inherit(
  cable: Building<Cable>,
  likes: readonly (Building<Cable> | undefined)[],
  facts: readonly CableFact[],
  cycles: Cycle[],
): void {
  const chain = [cable];
  const knownAs = [cable.name];
  for (let like = likes[cable.index]; like !== undefined; like = likes[like.index]) {
    if (chain.includes(like)) {
      cable.likeCycle = true;
      // Told once, by the first cable of the circle.
      const firstOfCircle = Math.min(...chain.slice(chain.indexOf(like)).map(({ index }) => index));
      if (like === cable && firstOfCircle === cable.index) {
        cycles.push({ kind: 'like', statements: chain.map(({ statement }) => statement) });
      }
      break;
    }
    chain.push(like);
    knownAs.push(like.name);
    if (chain.length > MOST_LIKES) break;
    const fact = facts[like.index]!;
    if (cable.medium === 'unknown') cable.medium = MEDIA.get(fact.medium ?? '') ?? 'unknown';
    if (cable.losses.length === 0) cable.losses = fact.losses;
    cable.screened ||= fact.screened;
    cable.strandedShare ??= fact.strandedShare;
    cable.delay_s_per_m ??= fact.delay_s_per_m;
    cable.weight_kg_per_m ??= fact.weight_kg_per_m;
    cable.resistance_ohm_per_m ??= fact.resistance_ohm_per_m;
  }
  cable.knownAs = knownAs;
}

/** A chain of likes is followed so far; a longer one is no description of a cable. */
const MOST_LIKES = 32;
