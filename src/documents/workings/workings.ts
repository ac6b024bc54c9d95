import type { Analysis, Node, Thing } from '../../analysis/model.ts';
import type { Working } from '../../physics/working.ts';
import { delayWorkings } from './delay-workings.ts';
import { linkWorkings } from './link-workings.ts';
import { sourceWorkings } from './source-workings.ts';

/**
 * How the figures of what has this name were got.
 *
 * @param name A link, source, destination or node, or a feed as it is written: `program -> judges`.
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
  switch (thing.kind) {
    case 'link':
      return linkWorkings(analysis, thing);
    case 'source':
      return [...sourceWorkings(analysis, thing), ...(thing.link ? linkWorkings(analysis, thing.link) : [])];
    case 'destination':
      return [
        ...analysis.deliveries.filter(({ feed }) => feed.target === thing).flatMap(delayWorkings),
        ...(thing.link ? linkWorkings(analysis, thing.link) : []),
      ];
    case 'node':
      return networkLinksOf(thing).flatMap((link) => linkWorkings(analysis, link));
    default:
      return [];
  }
}

function networkLinksOf({ usedPorts }: Node) {
  return usedPorts.flatMap((port) => port?.links.filter((link) => link.network) ?? []);
}
