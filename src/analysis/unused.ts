import type { Destination, Feed, Node, Plant, Source } from './model.ts';

export interface Unused {
  readonly unfedDestinations: readonly Destination[];
  readonly unusedSources: readonly Source[];
  readonly unusedNodes: readonly Node[];
}

/** What is in the plan without a part in it: no feed, or no cable. */
export function unusedOf(plant: Plant, feeds: readonly Feed[]): Unused {
  const used = new Set<unknown>();
  for (const { source, target } of feeds) used.add(source).add(target);
  for (const source of plant.sources.values()) for (const member of source.madeOf ?? []) used.add(member);
  return {
    unfedDestinations: [...plant.destinations.values()].filter((destination) => !used.has(destination)),
    unusedSources: [...plant.sources.values()].filter((source) => !used.has(source)),
    unusedNodes: [...plant.nodes.values()].filter(isBare),
  };
}

/** Nothing is plugged into it and nothing comes out of it. */
function isBare({ usedPorts, loosePorts }: Node): boolean {
  // A source that begins at one of its outputs makes that port one that is spoken of.
  return usedPorts.every((port) => port === undefined) && loosePorts.length === 0;
}
