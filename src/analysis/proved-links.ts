import type { Analysis, Link } from './model.ts';

/** The cables that a proved picture came through: they are pulled and plugged. Both ways of a seamless feed count. */
export function provedLinksOf({ deliveries }: Analysis): Set<Link> {
  const links = new Set<Link>();
  for (const { feed, segment, routes } of deliveries) {
    // What was proved was seen where the feed usually goes, not on a way that a segment gives it.
    if (feed.proofs.length === 0 || (feed.always && segment !== undefined)) continue;
    for (const { steps } of routes) for (const { link } of steps) links.add(link);
  }
  return links;
}
