/** Loads of links, in the words that overload and headroom share. */
import type { DirectionLoad, Link, Traffic } from '../analysis/model.ts';
import { formatRate, formatShare } from '../physics/display.ts';
import { counted, inSegments, linkStart, listed, shown } from './words.ts';

/** The direction of a link that carries most, in the segment in which it does. */
export function worstLoad({ base, differing, worst }: Traffic): DirectionLoad {
  const load = worst.segment ? differing.find(({ segment }) => segment === worst.segment) : base;
  return (load ?? base)[worst.direction];
}

/** `trunk carries 10.74 Gb/s of 10 Gb/s (107.4 %) from a.net1 to b.net1: 4 pictures (…)`. */
export function loadText(traffic: Traffic): string {
  const { link, worst } = traffic;
  const { load_bits_per_second: load, share, flows } = worstLoad(traffic);
  const capacity = link.chain.capacity_bits_per_second ?? 0;
  const [from, to] = worst.direction === 'forward' ? [link.from, link.to] : [link.to, link.from];
  const part = share === undefined ? '' : ` (${formatShare(share)})`;
  const carried = flows.every(({ format }) => format?.kind !== 'sound') ? 'picture' : 'signal';
  const names = listed(flows.map(({ source }) => source.name));
  return `${linkStart(link)} carries ${formatRate(load, capacity)} of ${formatRate(capacity)}${part} from ${shown(from.text)} to ${shown(to.text)}${inSegments([worst.segment])}: ${counted(flows.length, carried)} (${names})`;
}

/** A link without a name is spoken of by its ends; so is the finding. */
export function worstSegment({ worst }: Traffic): string | null {
  return worst.segment?.name ?? null;
}

/** Other network links between the same two nodes that are no standbys: where a picture could go instead. */
export function beside(link: Link): Link[] {
  const here = link.from.port?.owner;
  const there = link.to.port?.owner;
  if (here?.kind !== 'node' || there?.kind !== 'node') return [];
  const found = new Set<Link>();
  for (const port of here.usedPorts) {
    for (const other of port?.links ?? []) {
      const ends = [other.from.port?.owner, other.to.port?.owner];
      const same = ends.includes(here) && ends.includes(there);
      if (same && other !== link && other.network && !other.standbyFor) found.add(other);
    }
  }
  return [...found];
}
