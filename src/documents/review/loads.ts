import type { Analysis, Link, Load, Source, Traffic } from '../../analysis/model.ts';
import type { Comparison, LinkPair } from './comparison.ts';
import type { LoadChange, LoadState, Named } from './review.ts';
import { placeOf } from './thing-changes.ts';

type Direction = 'forward' | 'backward';

/** Network links whose load changes in a direction, at their worst over all segments; the fullest first. */
export function loadChangesOf(comparison: Comparison): LoadChange[] {
  const changes = comparison.links.flatMap((pair) =>
    (['forward', 'backward'] as const).flatMap((direction) => changeOf(comparison, pair, direction) ?? []),
  );
  return changes.sort((a, b) => shareOf(b) - shareOf(a));
}

function shareOf({ after }: LoadChange): number {
  return after?.share ?? -1;
}

function changeOf(
  comparison: Comparison,
  { before, after }: LinkPair,
  direction: Direction,
): LoadChange | undefined {
  const link = after ?? before!;
  if (!link.network || (direction === 'backward' && !link.bothWays)) return undefined;
  const oldDirection = before && after && isTurned(comparison, before, after) ? other(direction) : direction;
  const was = before?.network ? stateOf(comparison.was, before, oldDirection) : undefined;
  const is = after?.network ? stateOf(comparison.is, after, direction) : undefined;
  if (was?.load_bits_per_second === is?.load_bits_per_second && was?.share === is?.share) return undefined;
  // A spare that comes or goes is told once, not for both directions.
  if (direction === 'backward' && !was?.load_bits_per_second && !is?.load_bits_per_second) return undefined;
  const [from, to] = direction === 'forward' ? [link.from, link.to] : [link.to, link.from];
  const titles = after ? comparison.titles.is : comparison.titles.was;
  const rode = before ? ridersOf(comparison.was.traffic[before.index], oldDirection) : [];
  const rides = after ? ridersOf(comparison.is.traffic[after.index], direction) : [];
  const old = new Map(
    rode.map((source) => [comparison.oldSource(source).name, comparison.oldSource(source)]),
  );
  const fresh = new Map(rides.map((source) => [source.name, comparison.source(source)]));
  return {
    change: !was ? 'added' : !is ? 'removed' : isMore(was, is) ? 'raised' : 'lowered',
    ...(after ? comparison.link(after) : comparison.oldLink(link)),
    direction,
    from: titles.end(from),
    to: titles.end(to),
    before: was && { ...was, segment: comparison.oldSegment(was.segment) },
    after: is && { ...is, segment: comparison.segment(is.segment) },
    gains: without(fresh, old),
    loses: without(old, fresh),
    place: placeOf(link.statement, after ? 'new' : 'old'),
  };
}

function without(these: ReadonlyMap<string, Named>, those: ReadonlyMap<string, Named>): Named[] {
  return [...these.values()].filter(({ name }) => !those.has(name));
}

function isMore(was: { load_bits_per_second: number; share: number | undefined }, is: typeof was): boolean {
  const more = (is.share ?? 0) - (was.share ?? 0);
  return more === 0 ? is.load_bits_per_second > was.load_bits_per_second : more > 0;
}

/** The same cable, written from its other end. */
function isTurned({ renames }: Comparison, before: Link, after: Link): boolean {
  const [from, to] = [renames.socket(before.from.text), renames.socket(before.to.text)];
  return from !== after.from.text && (from === after.to.text || to === after.from.text);
}

function other(direction: Direction): Direction {
  return direction === 'forward' ? 'backward' : 'forward';
}

type OwnState = Omit<LoadState, 'segment'> & { readonly segment: Load['segment'] };

function stateOf({ traffic }: Analysis, link: Link, direction: Direction): OwnState | undefined {
  const loads = traffic[link.index];
  if (!loads) return undefined;
  let worst = loads.base;
  for (const load of loads.differing) {
    if (load[direction].load_bits_per_second > worst[direction].load_bits_per_second) worst = load;
  }
  const { load_bits_per_second, share } = worst[direction];
  const { capacity_bits_per_second } = link.chain;
  return { load_bits_per_second, share, capacity_bits_per_second, segment: worst.segment };
}

/** Every source whose picture goes that way in any segment. */
function ridersOf(traffic: Traffic | undefined, direction: Direction): Source[] {
  const loads = traffic ? [traffic.base, ...traffic.differing] : [];
  return [...new Set(loads.flatMap((load) => load[direction].flows.map(({ source }) => source)))];
}
