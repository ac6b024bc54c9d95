import { powerClassOf, poweredDevice } from '../physics/power-over-ethernet.ts';
import { attempt } from './attempt.ts';
import type { Analysis, Link, NetworkPower, NetworkSupply, Node, Port } from './model.ts';

export interface NetworkPowers {
  readonly powers: readonly NetworkPower[];
  readonly supplies: readonly NetworkSupply[];
}

/**
 * What is fed over the network cables: a thing whose kit has a class, that no circuit is stated for, and that hangs on
 * a port of a node which supplies power. Of several such cables the first in order of statements feeds it.
 */
export function networkPowersOf(analysis: Analysis): NetworkPowers {
  const fed = new Map<Port['owner'], NetworkPower>();
  for (const link of analysis.links) {
    if (!link.network || link.cable?.medium === 'fibre') continue;
    for (const [supply, device] of [
      [link.from.port, link.to.port],
      [link.to.port, link.from.port],
    ] as const) {
      if (!supply || !device || fed.has(device.owner) || device.owner.poweredBy.length > 0) continue;
      if (!isSupply(supply) || device.owner.kit?.statement.fact.poeClass === undefined) continue;
      if (isSupply(device) && device.owner === supply.owner) continue;
      fed.set(device.owner, powerOver(link, supply, device, device.owner.kit.statement.fact.poeClass));
    }
  }
  const powers = [...fed.values()];
  return { powers, supplies: suppliesOf(analysis, powers) };
}

function isSupply({ owner, role }: Port): boolean {
  return owner.kind === 'node' && role === 'network' && owner.kit?.statement.fact.supplies !== undefined;
}

/** The device draws what its kit states, else all that its class allows; the supply gives that and what the cable keeps. */
function powerOver(link: Link, supply: Port, device: Port, poeClass: number): NetworkPower {
  const power = powerClassOf(poeClass);
  const draws_w = device.owner.kit?.statement.fact.draws_w;
  const device_w = Math.min(draws_w ?? power.device_w, power.device_w);
  const length_m = link.length.length_m;
  const over =
    length_m === undefined
      ? undefined
      : attempt(() => poweredDevice(power, length_m, device_w, link.cable?.resistance_ohm_per_m));
  return {
    link,
    supply,
    device: device.owner,
    poeClass,
    setAside_w: power.supply_w,
    draws_w,
    allowed_w: power.device_w,
    supply_w: over?.supply_w,
    device_w,
    device_v: over?.device_v,
  };
}

/** For each node that supplies power: what is set aside by class against the port and against all of it. */
function suppliesOf(analysis: Analysis, powers: readonly NetworkPower[]): NetworkSupply[] {
  const byNode = new Map<Node, NetworkPower[]>();
  for (const node of analysis.nodes.values()) if (node.kit?.statement.fact.supplies) byNode.set(node, []);
  for (const power of powers) byNode.get(power.supply.owner as Node)?.push(power);
  return [...byNode].map(([node, fed]) => {
    const { perPort_w, inAll_w } = node.kit!.statement.fact.supplies!;
    return {
      node,
      fed,
      perPort_w,
      inAll_w,
      setAside_w: sum(fed.map((one) => one.setAside_w)),
      supply_w: sum(fed.map((one) => one.supply_w ?? one.setAside_w)),
      portsOver: fed.filter((one) => one.setAside_w > perPort_w),
    };
  });
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
