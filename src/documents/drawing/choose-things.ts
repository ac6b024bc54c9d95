import { deliveriesHolding } from '../../analysis/holding.ts';
import type { Analysis, Delivery, Link, Port } from '../../analysis/model.ts';

/** What of a plan is drawn; all of it when nothing is said. */
export interface SceneChoice {
  /** Only what stands in this place, and what is plugged into it. */
  readonly place?: string;
  /** Only what carries this source's picture. */
  readonly source?: string;
  /** Only what carries this feed: `program -> judges`. */
  readonly feed?: string;
}

/** A node, source or destination. */
export type PortOwner = Port['owner'];

/** A link whose two ends are known and stand apart. */
export interface DrawnLink {
  readonly link: Link;
  readonly from: Port;
  readonly to: Port;
}

export interface Chosen {
  readonly links: readonly DrawnLink[];
  readonly owners: ReadonlySet<PortOwner>;
}

/** Every link that can be drawn. */
export function drawableLinks(analysis: Analysis): DrawnLink[] {
  return analysis.links.flatMap((link) => {
    const [from, to] = [link.from.port, link.to.port];
    return from && to && from.owner !== to.owner ? [{ link, from, to }] : [];
  });
}

/** The links that are drawn, and everything that they join or that stands alone. */
export function chooseThings(
  analysis: Analysis,
  drawable: readonly DrawnLink[],
  choice: SceneChoice,
): Chosen {
  const carries = carriers(analysis, choice);
  const isHere = (owner: PortOwner) => choice.place === undefined || owner.place?.name === choice.place;
  const links = drawable.filter(
    ({ link, from, to }) => (isHere(from.owner) || isHere(to.owner)) && (!carries || carries.links.has(link)),
  );
  const joined = new Set(links.flatMap(({ from, to }) => [from.owner, to.owner]));
  const all: PortOwner[] = [
    ...analysis.nodes.values(),
    ...[...analysis.sources.values()].filter((source) => !source.from),
    ...analysis.destinations.values(),
  ];
  const owners = all.filter(
    (owner) => joined.has(owner) || (isHere(owner) && (!carries || carries.owners.has(owner))),
  );
  return { links, owners: new Set(owners) };
}

/** What the chosen pictures pass in any part of the show; undefined when all are drawn. */
function carriers(
  analysis: Analysis,
  { source, feed }: SceneChoice,
): { links: ReadonlySet<Link>; owners: ReadonlySet<PortOwner> } | undefined {
  if (source === undefined && feed === undefined) return undefined;
  const isChosen = (delivery: Delivery) =>
    (source === undefined || delivery.feed.source?.name === source) &&
    (feed === undefined || delivery.feed.name === feed);
  const deliveries = analysis.situations
    .flatMap((situation) => deliveriesHolding(analysis, situation))
    .filter(isChosen);
  const links = new Set<Link>();
  const owners = new Set<PortOwner>();
  for (const { routes, feed } of deliveries) {
    for (const { ports, steps } of routes) {
      for (const port of ports) owners.add(port.owner);
      for (const { link } of steps) links.add(link);
    }
    // Without a way, its ends alone show what is not joined.
    const { source, target } = feed;
    if (source) owners.add(source.from?.owner ?? source);
    if (target) owners.add('kind' in target ? target : target.owner);
  }
  return { links, owners };
}
