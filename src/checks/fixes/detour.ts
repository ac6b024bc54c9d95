/** Putting a picture on another link between the same two nodes. */
import type { Analysis, Flow, Link, Port, Traffic } from '../../analysis/model.ts';
import type { Statement } from '../../plan/plan.ts';
import type { Fix } from '../finding.ts';
import { beside, worstLoad } from '../traffic-words.ts';
import { linkText, quoted } from '../words.ts';

/** Moves the first picture that fits onto a link beside this one that has room for it. */
export function detourFixes(analysis: Analysis, traffic: Traffic): readonly Fix[] {
  const { link, worst } = traffic;
  const { flows } = worstLoad(traffic);
  for (const other of beside(link)) {
    const room = roomOn(analysis, other, link, worst.direction);
    // The last in order of statements first: it is the one that was added.
    for (const flow of [...flows].reverse()) {
      if (flow.load_bits_per_second > room) continue;
      const fix = moveFix(analysis, flow, link, other, worst.direction);
      if (fix) return [fix];
    }
  }
  return [];
}

/** What still goes onto a link the same way, up to its headroom. */
function roomOn(
  { traffic, settings }: Analysis,
  other: Link,
  link: Link,
  direction: 'forward' | 'backward',
): number {
  const capacity = other.chain.capacity_bits_per_second ?? 0;
  const way = sameWay(other, link) ? direction : direction === 'forward' ? 'backward' : 'forward';
  const of = traffic[other.index];
  if (!of) return 0;
  const most = Math.max(...[of.base, ...of.differing].map((load) => load[way].load_bits_per_second));
  return capacity * (1 - settings.headroomShare) - most;
}

function sameWay(other: Link, link: Link): boolean {
  return other.from.port?.owner === link.from.port?.owner;
}

/** `via` the other link's entry, on every feed whose picture rides in this flow over the link. */
function moveFix(
  { deliveries }: Analysis,
  flow: Flow,
  link: Link,
  other: Link,
  direction: 'forward' | 'backward',
): Fix | undefined {
  const from = direction === 'forward' ? link.from : link.to;
  const entry = [other.from, other.to].find(({ port }) => port?.owner === from.port?.owner)?.port;
  if (!entry) return undefined;
  const statements = new Map<Statement, readonly Port[]>();
  for (const { routes, feed } of deliveries) {
    const rides = routes.some(({ steps }) => steps.some((step) => step.flow === flow && step.link === link));
    if (rides) statements.set(feed.statement, feed.via);
  }
  // Where a feed is pinned already, a person has to say in which order.
  if (statements.size === 0 || [...statements.values()].some((via) => via.length > 0)) return undefined;
  return {
    title: `Put ${quoted(flow.source.name)} on ${linkText(other)}`,
    edits: [...statements.keys()].map((statement) => ({
      kind: 'append',
      statement,
      text: `via ${entry.text}`,
    })),
  };
}
