/** What a hover says of losses: what goes dark without a thing, and whether a redundant feed survives. */
import { failuresOf, redundanciesOf } from '../../analysis/failures.ts';
import type { Analysis, Delivery, Failure, Feed, Link, Node, Redundancy, Run } from '../../analysis/model.ts';
import { bold, code, plain } from './markdown.ts';

/** What happens when a link, a node or a run is lost: a line without segments, and one for each that differs. */
export function lossLines(analysis: Analysis, thing: Link | Node | Run): string[] {
  const lost = thing.kind === 'link' ? thing.sheath : thing;
  return failuresOf(analysis)
    .filter((failure) => failure.lost === lost)
    .map((failure) => {
      const when = failure.segment ? ` in ${bold(failure.segment.name)}` : '';
      return `If it fails${when}: ${effectOf(failure)}`;
    });
}

function effectOf({ dark, kept, afterReplugging, standbys, overloaded }: Failure): string {
  const replugged = new Set(afterReplugging);
  const others = kept.filter((delivery) => !replugged.has(delivery));
  return [
    dark.length > 0 && `**${dark.length === 1 ? 'goes' : 'go'} dark:** ${targets(dark)}`,
    others.length > 0 && `another way for ${targets(others)}`,
    replugged.size > 0 && `back once ${names(standbys)} is plugged: ${targets(afterReplugging)}`,
    overloaded.length > 0 && `**too full then:** ${names(overloaded)}`,
  ]
    .filter((part) => part)
    .join('; ');
}

/** Whether each redundant feed of these survives every single loss. */
export function redundantLines(analysis: Analysis, feeds: readonly Feed[]): string[] {
  return redundanciesOf(analysis)
    .filter(({ delivery }) => feeds.includes(delivery.feed))
    .map((redundancy) => {
      const { feed } = redundancy.delivery;
      const when = redundancy.segment ? ` in ${bold(redundancy.segment.name)}` : '';
      return `${code(feed.sourceName)} → ${code(feed.targetName)}${when} ${survival(redundancy)}`;
    });
}

function survival({ brokenBy, weakenedBy, standbys }: Redundancy): string {
  const breaks = [...brokenBy, ...weakenedBy];
  if (breaks.length > 0) return `**does not survive** the loss of ${names(breaks.map(({ lost }) => lost))}`;
  return standbys.length > 0
    ? `survives any single loss after re-plugging ${names(standbys)}`
    : 'survives any single loss';
}

/** One screen shows one picture, so the screens say which feeds. */
function targets(deliveries: readonly Delivery[]): string {
  const shown = deliveries.slice(0, 8).map(({ feed }) => plain(feed.targetName));
  const more = deliveries.length - shown.length;
  return `${shown.join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
}

function names(things: readonly { readonly name: string }[]): string {
  return things.map(({ name }) => code(name)).join(', ');
}
