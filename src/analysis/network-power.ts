import { withoutNoise } from '../physics/decimal.ts';
import { powerClassOf, poweredDevice } from '../physics/power-over-ethernet.ts';
import { attempt } from './attempt.ts';
import { add } from './lists.ts';
import type { Analysis, Chain, NetworkPower, NetworkSupply, Owner, Port, Powering } from './model.ts';

export type NetworkPowers = Powering['network'];

/**
 * What is fed over the network cables: a thing whose kit has a class, that no circuit is stated for, and that hangs on
 * a port of a node which supplies power. Of several such cables the first in order of statements feeds it; a standby,
 * which is not plugged, feeds nothing.
 */
export function networkPowersOf(analysis: Analysis): NetworkPowers {
  const fed = new Map<Owner, NetworkPower>();
  for (const { chain, network, standbyFor } of analysis.links) {
    if (!network || standbyFor || !isCopper(chain)) continue;
    const [from, to] = chain.ends.map(({ port }) => port);
    for (const [supply, device] of [
      [from, to],
      [to, from],
    ]) {
      const power = supply && device && !fed.has(device.owner) && powerOver(chain, supply, device);
      if (power) fed.set(device.owner, power);
    }
  }
  const powers = [...fed.values()];
  return { powers, supplies: suppliesOf(analysis, powers), fedBy: fed };
}

/** Power rides on twisted pair alone; where no cable is stated, it is taken for that. */
function isCopper({ links }: Chain): boolean {
  return links.every(({ cable }) => cable === undefined || cable.medium === 'twisted pair');
}

function isSupply({ owner, role }: Port): boolean {
  return owner.kind === 'node' && role === 'network' && owner.kit?.statement.fact.supplies !== undefined;
}

/** The device draws what its kit states, else all that its class allows; the supply gives that and what the cable keeps. */
function powerOver(chain: Chain, supply: Port, device: Port): NetworkPower | undefined {
  const { owner } = device;
  const poeClass = owner.kit?.statement.fact.poeClass;
  if (poeClass === undefined || owner.poweredBy.length > 0 || !isSupply(supply) || owner === supply.owner) {
    return undefined;
  }
  // A class that does not exist is told with its kit.
  const power = attempt(() => powerClassOf(poeClass));
  if (!power) return undefined;
  const draws_w = owner.kit?.statement.fact.draws_w;
  const device_w = Math.min(draws_w ?? power.device_w, power.device_w);
  const { length_m } = chain;
  const conductor_ohm_per_m = resistance_ohm_per_m(chain);
  const over =
    length_m === undefined
      ? undefined
      : attempt(() => poweredDevice(power, length_m, device_w, conductor_ohm_per_m));
  return {
    link: chain.links[0]!,
    supply,
    device: owner,
    poeClass,
    setAside_w: power.supply_w,
    draws_w,
    allowed_w: power.device_w,
    supply_w: over?.supply_w,
    device_w,
    device_v: over?.device_v,
    conductor_ohm_per_m,
  };
}

/** Of joined cables by their share of the length. */
function resistance_ohm_per_m({ links, length_m }: Chain): number {
  let sum_ohm = 0;
  for (const { cable, length } of links)
    sum_ohm += (cable?.resistance_ohm_per_m ?? 0) * (length.length_m ?? 0);
  return length_m ? sum_ohm / length_m : 0;
}

/** For each node that supplies power: what is set aside by class against the port and against all of it. */
function suppliesOf(analysis: Analysis, powers: readonly NetworkPower[]): NetworkSupply[] {
  const byNode = new Map<Owner, NetworkPower[]>();
  for (const power of powers) add(byNode, power.supply.owner, power);
  return [...analysis.nodes.values()].flatMap((node) => {
    const supplies = node.kit?.statement.fact.supplies;
    if (!supplies) return [];
    const fed = byNode.get(node) ?? [];
    return {
      node,
      fed,
      perPort_w: supplies.perPort_w,
      inAll_w: supplies.inAll_w,
      setAside_w: sum(fed.map((one) => one.setAside_w)),
      supply_w: sum(fed.map((one) => one.supply_w ?? one.setAside_w)),
      portsOver: fed.filter((one) => one.setAside_w > supplies.perPort_w),
    };
  });
}

function sum(values: readonly number[]): number {
  return withoutNoise(values.reduce((total, value) => total + value, 0));
}
