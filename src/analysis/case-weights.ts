import { withoutNoise } from '../physics/decimal.ts';
import type { Analysis, CableStock, CaseWeight, Packing, Thing } from './model.ts';

/** A case that one person lifts stays under about this (common practice, no source). */
export const ONE_PERSON_KG = 23;

/** Above this a limit is more likely a slip: no crew moves such a case without a machine (common practice, no source). */
export const CREW_KG = 200;

/**
 * What each case weighs: itself, the kit in it, and the cables in it by the weight of a metre of the piece that is taken.
 * What has no known weight is listed. Nodes, things with kit and cables to be pulled that are in no case are told.
 */
export function packingOf(analysis: Analysis, { pieces }: CableStock): Packing {
  const pieceOf = new Map(pieces.map((piece) => [piece.link, piece.piece_m ?? piece.needed_m]));
  const packed = new Set<Thing>();
  const cases = [...analysis.cases.values()].map((one): CaseWeight => {
    const { weight_kg, limit_kg, loose } = one.statement.fact;
    const unknown: string[] = weight_kg === undefined ? [`the empty case`] : [];
    let total = weight_kg ?? 0;
    // What stands twice travels once, and cables of one sheath are one piece.
    for (const thing of new Set(one.things.map((each) => (each.kind === 'link' ? each.sheath : each)))) {
      packed.add(thing);
      const weight = weightOf(thing, pieceOf);
      if (weight === undefined) unknown.push(thing.name);
      else total += weight;
    }
    return { case: one, weight_kg: withoutNoise(total), limit_kg, unknown: [...unknown, ...loose] };
  });
  const travels: Thing[] = [
    ...analysis.nodes.values(),
    ...[...analysis.sources.values(), ...analysis.destinations.values()].filter((one) => one.kit),
    ...analysis.links.filter((link) => link.named && !link.installed && link.sheath === link),
  ];
  return { cases, unpacked: cases.length === 0 ? [] : travels.filter((thing) => !packed.has(thing)) };
}

export function weightOf(thing: Thing, pieceOf: ReadonlyMap<Thing, number | undefined>): number | undefined {
  if (thing.kind === 'link') {
    const length_m = pieceOf.get(thing) ?? thing.length.length_m;
    const per_m = thing.cable?.weight_kg_per_m;
    return length_m === undefined || per_m === undefined ? undefined : length_m * per_m;
  }
  return 'kit' in thing ? thing.kit?.statement.fact.weight_kg : undefined;
}
