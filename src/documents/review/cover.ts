import { failuresOf } from '../../analysis/failures.ts';
import type { Delivery, Failure, Link } from '../../analysis/model.ts';
import type { Comparison } from './comparison.ts';
import { type CoverChange, coverStates, type Named } from './review.ts';
import { placeOf } from './thing-changes.ts';

/**
 * Pictures that a failure hurts more than before, or less. Two things count: the loss of something that was there before
 * does more or less now; and the worst that any cable or run of the network can do to a picture is worse now, or better.
 * So a picture that gets another cable on its way is not told, but one whose spare is gone is.
 */
export function coverChangesOf(comparison: Comparison): CoverChange[] {
  const [was, is] = [coversOf(comparison, 'was'), coversOf(comparison, 'is')];
  const changes: CoverChange[] = [];
  for (const [key, { feed, segment }] of new Map([...is.covers, ...was.covers])) {
    if (!is.covers.has(key) && segment === null) continue;
    const [before, after] = [effective(was, feed, segment), effective(is, feed, segment)];
    if (before && after) changes.push(...changesOf(before, after));
  }
  return withoutRepeats(changes).sort((a, b) => rankOf(b) - rankOf(a));
}

/** 0, 1 or 2: index of `coverStates`. */
type Level = number;

interface Exposure {
  readonly lost: Named;
  readonly level: Level;
  /** A cable or run of the network: what a spare is laid for. */
  readonly network: boolean;
}

/** What each single loss does to one picture in one part of the show. */
interface Cover {
  readonly feed: string;
  readonly title: string;
  readonly segment: Named | null;
  readonly delivery: Delivery;
  /** By kind and name of what is lost, in the names of the new plan. */
  readonly exposures: Map<string, Exposure>;
}

interface Covers {
  /** By feed and segment. */
  readonly covers: Map<string, Cover>;
  /** For each segment the losses that do something else there than without segments. */
  readonly listed: Map<string, Set<string>>;
}

function coversOf(comparison: Comparison, side: 'was' | 'is'): Covers {
  const covers = new Map<string, Cover>();
  const listed = new Map<string, Set<string>>();
  for (const failure of failuresOf(comparison[side])) {
    const lost = lostOf(comparison, side, failure);
    const loss = `${failure.kind} ${lost.name}`;
    const segment = segmentOf(comparison, side, failure);
    if (segment) listed.set(segment.name, (listed.get(segment.name) ?? new Set()).add(loss));
    const replugged = new Set(failure.afterReplugging);
    const links = new Set(failure.kind === 'node' ? [] : failure.links.filter((link) => link.network));
    const tell = (delivery: Delivery, level: Level) =>
      coverOf(covers, comparison, side, segment, delivery).exposures.set(loss, {
        lost,
        level,
        network: takesAny(delivery, links),
      });
    for (const delivery of failure.dark) tell(delivery, 2);
    for (const delivery of failure.kept) tell(delivery, replugged.has(delivery) ? 1 : 0);
  }
  return { covers, listed };
}

/** What holds in a segment: its own losses, and those of the plan without segments that do the same there. */
function effective({ covers, listed }: Covers, feed: string, segment: Named | null): Cover | undefined {
  const base = covers.get(keyOf(feed, undefined));
  if (segment === null) return base;
  const own = covers.get(keyOf(feed, segment.name));
  if (!own && !base) return undefined;
  const here = listed.get(segment.name);
  const exposures = new Map([...(base?.exposures ?? [])].filter(([loss]) => !here?.has(loss)));
  for (const [loss, exposure] of own?.exposures ?? []) exposures.set(loss, exposure);
  return { ...(own ?? base!), segment, exposures };
}

/** A spare that lies in a run is no reason to say that the run carries a picture. */
function takesAny({ routes }: Delivery, links: ReadonlySet<Link>): boolean {
  return links.size > 0 && routes.some(({ steps }) => steps.some(({ link }) => links.has(link)));
}

function segmentOf(comparison: Comparison, side: 'was' | 'is', { segment }: Failure): Named | null {
  return side === 'was' ? comparison.oldSegment(segment) : comparison.segment(segment);
}

function coverOf(
  covers: Map<string, Cover>,
  comparison: Comparison,
  side: 'was' | 'is',
  segment: Named | null,
  delivery: Delivery,
): Cover {
  const { sourceName, targetName, source, target } = delivery.feed;
  const { renames, titles } = comparison;
  const old = side === 'was';
  const feed = old
    ? `${renames.of('things', sourceName)} -> ${renames.socket(targetName)}`
    : `${sourceName} -> ${targetName}`;
  const key = keyOf(feed, segment?.name);
  let cover = covers.get(key);
  if (!cover) {
    const picture = source ? titles[side].of(source) : sourceName;
    const title = `${picture} on ${target ? titles[side].target(target) : targetName}`;
    cover = { feed, title, segment, delivery, exposures: new Map() };
    covers.set(key, cover);
  }
  return cover;
}

function keyOf(feed: string, segment: string | undefined): string {
  return `${feed}\n${segment ?? ''}`;
}

function lostOf(comparison: Comparison, side: 'was' | 'is', { kind, lost }: Failure): Named {
  const old = side === 'was';
  const titles = comparison.titles[side];
  if (lost.kind === 'link') return old ? comparison.oldLink(lost) : comparison.link(lost);
  if (kind === 'run' && lost.kind === 'run') {
    const ends = lost.name
      .split(' <-> ')
      .map((place) => (old ? comparison.renames.of('places', place) : place));
    return { name: ends.sort().join(' <-> '), title: `the run ${titles.run(lost)}` };
  }
  const name = old ? comparison.renames.of('things', lost.name) : lost.name;
  return { name, title: 'statement' in lost && lost.kind === 'node' ? titles.of(lost) : lost.name };
}

function changesOf(before: Cover, after: Cover): CoverChange[] {
  const [worstBefore, worstAfter] = [worstOf(before), worstOf(after)];
  const groups = new Map<string, { was: Level; is: Level; losses: Named[] }>();
  const tell = (was: Level, is: Level, lost: Named) => {
    const group = groups.get(`${was} ${is}`) ?? { was, is, losses: [] };
    group.losses.push(lost);
    groups.set(`${was} ${is}`, group);
  };
  for (const [key, { lost, level, network }] of after.exposures) {
    const was = before.exposures.get(key)?.level ?? (network && level > worstBefore ? worstBefore : level);
    if (was !== level) tell(was, level, lost);
  }
  if (worstAfter < worstBefore) {
    for (const [key, { lost, level, network }] of before.exposures)
      if (network && level > worstAfter && !after.exposures.has(key)) tell(level, worstAfter, lost);
  }
  return [...groups.values()].map(({ was, is, losses }) => ({
    change: is > was ? 'cover lost' : 'cover gained',
    name: after.feed,
    title: after.title,
    segment: after.segment,
    before: coverStates[was]!,
    after: coverStates[is]!,
    losses,
    place: placeOf(after.delivery.feed.statement, 'new', `targets/${after.delivery.feed.targetIndex}`),
  }));
}

/** The worst that the loss of one cable or run of the network does; nothing where none concerns it. */
function worstOf({ exposures }: Cover): Level {
  let worst = 0;
  for (const { level, network } of exposures.values()) if (network) worst = Math.max(worst, level);
  return worst;
}

/** What holds without segments is not told again for each of them. */
function withoutRepeats(changes: readonly CoverChange[]): CoverChange[] {
  const wordsOf = ({ name, before, after, losses }: CoverChange) =>
    [name, before, after, ...losses.map((lost) => lost.name)].join('\n');
  const always = new Set(changes.filter(({ segment }) => segment === null).map(wordsOf));
  return changes.filter((change) => change.segment === null || !always.has(wordsOf(change)));
}

/** The worst loss first, the greatest gain last. */
function rankOf({ before, after }: CoverChange): number {
  return coverStates.indexOf(after) - coverStates.indexOf(before);
}
