import { attempt } from '../../analysis/attempt.ts';
import type { Analysis, Link, Thing } from '../../analysis/model.ts';
import type { Working } from '../../physics/working.ts';
import { delayWorkings } from './delay-workings.ts';
import { linkWorkings } from './link-workings.ts';
import { reachWorkings } from './reach-workings.ts';
import { sourceWorkings } from './source-workings.ts';
import {
  circuitWorkings,
  destinationWorkings,
  groupWorkings,
  networkPowerWorkings,
  uplinkWorkings,
} from './supply-workings.ts';

/**
 * How the figures of what has this name were got.
 *
 * @param name A link, source, destination, node, circuit or uplink, or a feed as it is written: `program -> judges`.
 * @returns undefined when nothing has that name; an empty list when it has no figures.
 */
export function workingsOf(analysis: Analysis, name: string): Working[] | undefined {
  const thing = analysis.things.get(name) ?? analysis.links.find((link) => link.name === name);
  if (thing) return thingWorkings(analysis, thing);
  const deliveries = analysis.deliveries.filter(({ feed }) => feed.name === name);
  return deliveries.length > 0 ? deliveries.flatMap(delayWorkings) : undefined;
}

/** Every name that `workingsOf` knows. */
export function explainedNames({ things, links, deliveries }: Analysis): Set<string> {
  return new Set([
    ...things.keys(),
    ...links.map((link) => link.name),
    ...deliveries.map(({ feed }) => feed.name),
  ]);
}

function thingWorkings(analysis: Analysis, thing: Thing): Working[] {
  const own = known(() => ownWorkings(analysis, thing));
  const links = linksOf(thing).flatMap((link) => [
    ...known(() => linkWorkings(analysis, link)),
    ...known(() => reachWorkings(analysis, link)),
  ]);
  if (thing.kind !== 'destination') return [...own, ...links];
  return [
    ...analysis.deliveries.filter(({ feed }) => feed.target === thing).flatMap(delayWorkings),
    ...own,
    ...links,
  ];
}

/** Without those of its cables and of the feeds that end there. */
function ownWorkings(analysis: Analysis, thing: Thing): Working[] {
  switch (thing.kind) {
    case 'source':
      return [
        ...known(() => sourceWorkings(analysis, thing)),
        ...known(() => groupWorkings(analysis, thing)),
        ...known(() => networkPowerWorkings(analysis, thing)),
      ];
    case 'destination':
      return [
        ...known(() => destinationWorkings(analysis, thing)),
        ...known(() => networkPowerWorkings(analysis, thing)),
      ];
    case 'node':
      return networkPowerWorkings(analysis, thing);
    case 'circuit':
      return circuitWorkings(analysis, thing);
    case 'uplink':
      return uplinkWorkings(analysis, thing);
    default:
      return [];
  }
}

/** The cable that it is, or is plugged in by; of a node its network links. */
function linksOf(thing: Thing): readonly Link[] {
  if (thing.kind === 'link') return [thing];
  if (thing.kind === 'source' || thing.kind === 'destination') return thing.link ? [thing.link] : [];
  if (thing.kind !== 'node') return [];
  return thing.usedPorts.flatMap((port) => port?.links.filter((link) => link.network) ?? []);
}

/** The arithmetic refuses nonsense by throwing: then there is no figure, and no working of it. */
function known(explain: () => Working[]): Working[] {
  return attempt(explain) ?? [];
}
