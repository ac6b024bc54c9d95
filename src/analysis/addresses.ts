import {
  type Address,
  flowGroup,
  formatAddress,
  hardwareAddress,
  hostAddress,
  isAdministrativelyScoped,
  isFlooded,
  isMulticast,
  type Prefix,
  parseAddress,
  parsePrefix,
  prefixHolds,
  prefixSize,
} from '../physics/addresses.ts';
import { attempt } from './attempt.ts';
import { add } from './lists.ts';
import type { Addressing, Analysis, Group, Node, NodeAddress, Source } from './model.ts';

/**
 * Addresses of nodes and multicast groups of sources, out of the plan's prefixes.
 *
 * Each name has its own place in the prefix, found from the name alone: its FNV-1a hash (32 bit; Fowler, Noll and Vo,
 * published by its authors) modulo the number of places. Where two names fall on one place, the one that is written
 * first keeps it and the other takes the next that is free. So a new source or node renumbers nothing, unless it is
 * written above another that has the same place. Addresses written in the plan are taken first.
 */
export function addressingOf(analysis: Analysis): Addressing {
  const { subnet, multicast } = analysis.settings.statement?.fact ?? {};
  const nodePrefix = subnet === undefined ? undefined : attempt(() => parsePrefix(subnet));
  const groupPrefix = multicast === undefined ? undefined : attempt(() => parsePrefix(multicast));
  const groupsFit = groupPrefix && isMulticast(groupPrefix.first);
  return {
    nodes: nodeAddresses(analysis, nodePrefix),
    nodePlaces: nodePrefix ? Math.max(1, prefixSize(nodePrefix) - 2) : undefined,
    groups: groupsFit ? groupsOf(analysis, groupPrefix) : [],
    groupPlaces: groupsFit ? placesFor(groupPrefix) : undefined,
    groupPrefixFault: !groupPrefix
      ? undefined
      : !groupsFit
        ? 'no multicast'
        : isAdministrativelyScoped(groupPrefix.first)
          ? undefined
          : 'not administratively scoped',
    subnetFault: subnet !== undefined && !nodePrefix,
    multicastFault: multicast !== undefined && !groupPrefix,
  };
}

/** Nodes that stand on the network and have no address of their own written down. */
function nodeAddresses(analysis: Analysis, prefix: Prefix | undefined): NodeAddress[] {
  const nodes = [...analysis.nodes.values()];
  const stated = new Map<Node, Address>();
  const holders = new Map<Address, Node[]>();
  for (const node of nodes) {
    const text = node.statement.fact.address;
    const address = text === undefined ? undefined : attempt(() => parseAddress(text));
    if (address === undefined) continue;
    stated.set(node, address);
    add(holders, address, node);
  }
  const taken = new Set(holders.keys());
  const count = prefix ? Math.max(1, prefixSize(prefix) - 2) : 0;
  return nodes.flatMap((node): NodeAddress[] => {
    const own = stated.get(node);
    if (own !== undefined) {
      const sharedWith = (holders.get(own) ?? []).filter((other) => other !== node);
      return [
        {
          node,
          address: formatAddress(own),
          stated: true,
          outside: prefix !== undefined && !prefixHolds(prefix, own),
          sharedWith,
        },
      ];
    }
    if (!prefix || !isOnNetwork(node)) return [];
    const address = freePlace(node.name, count, (n) => hostAddress(prefix, n), taken);
    return [
      {
        node,
        address: address === undefined ? undefined : formatAddress(address),
        stated: false,
        outside: false,
        sharedWith: [],
      },
    ];
  });
}

function isOnNetwork(node: Node): boolean {
  return node.kit?.ports.some((port) => port.role === 'network') ?? false;
}

/** One group for each source whose picture rides on the network. */
function groupsOf(analysis: Analysis, prefix: Prefix): Group[] {
  const sources = new Set<Source>(analysis.flows.map((flow) => flow.source));
  const taken = new Set<Address>();
  const count = placesFor(prefix);
  return [...analysis.sources.values()]
    .filter((source) => sources.has(source))
    .map((source): Group => {
      const group = freePlace(source.name, count, (n) => flowGroup(prefix, n), taken);
      return {
        source,
        group: group === undefined ? undefined : formatAddress(group),
        hardwareAddress: group === undefined ? undefined : hardwareAddress(group),
        flooded: group !== undefined && isFlooded(group),
      };
    });
}

/** How many groups of a prefix can be used: those that are flooded or share a hardware address are left out. */
function placesFor(prefix: Prefix): number {
  let [low, high] = [0, prefixSize(prefix)];
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (middle === 0 || flowGroup(prefix, middle) !== undefined) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** A name's own place, or the next that is free; undefined when all are taken. */
function freePlace(
  name: string,
  count: number,
  addressAt: (n: number) => Address | undefined,
  taken: Set<Address>,
): Address | undefined {
  if (count === 0 || taken.size >= count + 1) return undefined;
  const first = hashOf(name) % count;
  for (let step = 0; step < count; step++) {
    const address = addressAt(((first + step) % count) + 1);
    if (address === undefined || taken.has(address)) continue;
    taken.add(address);
    return address;
  }
  return undefined;
}

/** FNV-1a, 32 bit, over the UTF-8 bytes of a name. */
function hashOf(name: string): number {
  let hash = 0x811c9dc5;
  for (const byte of new TextEncoder().encode(name)) hash = Math.imul(hash ^ byte, 0x01000193) >>> 0;
  return hash;
}
