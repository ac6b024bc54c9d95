import { withoutNoise } from '../physics/decimal.ts';
import { continuousLimit_w } from '../physics/mains.ts';
import { attempt } from './attempt.ts';
import { add } from './lists.ts';
import type { Analysis, Circuit, CircuitLoad, Owner, PlacePower, PoweredBy, Powering } from './model.ts';
import { networkPowersOf } from './network-power.ts';

/**
 * Watts on every circuit: what is plugged into it, what its switches supply over the network, and what the circuits draw
 * that it feeds; several circuits of one thing share equally. A continuous load stays at or below 80 % of the breaker
 * (NEC 210.19(A), second-hand; not an IEC rule). Watts at power factor 1.
 */
export function poweringOf(analysis: Analysis): Powering {
  const network = networkPowersOf(analysis);
  const supplied_w = new Map<Owner, number>(network.supplies.map((supply) => [supply.node, supply.supply_w]));
  const own_w = new Map<Circuit, number>();
  const devices = new Map<Circuit, Owner[]>();
  const parts = new Map<Circuit, { name: string; load_w: number }[]>();
  const unpowered: Owner[] = [];
  const placeLoads = new Map<string, number>();
  for (const owner of ownersOf(analysis)) {
    const draws_w = owner.kit?.statement.fact.draws_w ?? 0;
    const watts = draws_w + (supplied_w.get(owner) ?? 0);
    if (owner.place) placeLoads.set(owner.place.name, (placeLoads.get(owner.place.name) ?? 0) + draws_w);
    for (const circuit of owner.poweredBy) {
      const load_w = watts / owner.poweredBy.length;
      own_w.set(circuit, (own_w.get(circuit) ?? 0) + load_w);
      add(devices, circuit, owner);
      add(parts, circuit, { name: owner.name, load_w });
    }
    if (draws_w > 0 && saysNothing(owner) && !network.fedBy.has(owner)) unpowered.push(owner);
  }
  const total_w = withFedCircuits(analysis, own_w);
  for (const circuit of analysis.circuits.values())
    if (circuit.from) add(parts, circuit.from, { name: circuit.name, load_w: total_w.get(circuit)! });
  return {
    network,
    circuits: [...analysis.circuits.values()].map((circuit) =>
      loadOf(
        circuit,
        withoutNoise(total_w.get(circuit) ?? 0),
        devices.get(circuit) ?? [],
        parts.get(circuit) ?? [],
      ),
    ),
    unpowered,
    places: [...analysis.places.values()].flatMap((place): PlacePower[] => {
      const load_w = placeLoads.get(place.name);
      return load_w ? [{ place, load_w }] : [];
    }),
  };
}

/** A circuit that is named but not known is told as such. */
function saysNothing({ statement }: Owner): boolean {
  return !('poweredBy' in statement.fact) || statement.fact.poweredBy.length === 0;
}

/** What feeds a thing; of several circuits the first is named. */
export function poweredBy(owner: Owner, { network }: Powering): PoweredBy {
  const [circuit] = owner.poweredBy;
  if (circuit) return { kind: 'circuit', name: circuit.name };
  const power = network.fedBy.get(owner);
  return power ? { kind: 'network', name: power.supply.text } : { kind: 'none', name: undefined };
}

function ownersOf(analysis: Analysis): Owner[] {
  return [...analysis.nodes.values(), ...analysis.sources.values(), ...analysis.destinations.values()];
}

/** Adds each circuit's load to the one that feeds it, and so on up; circles were cut before. */
function withFedCircuits(analysis: Analysis, own_w: ReadonlyMap<Circuit, number>): Map<Circuit, number> {
  const circuits = [...analysis.circuits.values()];
  const total_w = new Map(circuits.map((circuit) => [circuit, own_w.get(circuit) ?? 0]));
  const fedCount = new Map<Circuit, number>();
  for (const { from } of circuits) if (from) fedCount.set(from, (fedCount.get(from) ?? 0) + 1);
  // From the ends of the distribution up: a circuit is done when all that it feeds is.
  const done = circuits.filter((circuit) => !fedCount.has(circuit));
  for (const circuit of done) {
    const { from } = circuit;
    if (!from) continue;
    total_w.set(from, total_w.get(from)! + total_w.get(circuit)!);
    const left = fedCount.get(from)! - 1;
    fedCount.set(from, left);
    if (left === 0) done.push(from);
  }
  return total_w;
}

function loadOf(
  circuit: Circuit,
  load_w: number,
  devices: readonly Owner[],
  parts: CircuitLoad['parts'],
): CircuitLoad {
  const { current_a, voltage_v } = circuit.statement.fact;
  const limit_w =
    current_a === undefined || voltage_v === undefined
      ? undefined
      : attempt(() => continuousLimit_w(current_a, voltage_v));
  return { circuit, load_w, limit_w, share: limit_w ? load_w / limit_w : undefined, devices, parts };
}
