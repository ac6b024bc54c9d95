/** What a change does to loads, pictures and lengths. */
import { arrivingIn } from '../../analysis/holding.ts';
import type { Analysis, Delivery, Link, Situation, Traffic } from '../../analysis/model.ts';
import { DELAY_TOLERANCE_S } from '../../physics/delay.ts';
import type { LinkPair } from './link-pairs.ts';
import type {
  LoadChange,
  LoadState,
  PictureChange,
  PictureState,
  ReachChange,
  ReachState,
} from './review.ts';

/** Network links whose load changes in a direction, at their worst over all segments; the fullest first. */
export function loadChangesOf(old: Analysis, fresh: Analysis, links: readonly LinkPair[]): LoadChange[] {
  const changes = links.flatMap(({ before, after }): LoadChange[] => {
    const link = after ?? before!;
    if (!link.network) return [];
    return (['forward', 'backward'] as const).flatMap((direction): LoadChange[] => {
      const turned = before && after ? isTurned(before, after) : false;
      const was = before && stateOf(old.traffic[before.index], turned ? other(direction) : direction);
      const is = after && stateOf(fresh.traffic[after.index], direction);
      if ((was?.load_bits_per_second ?? 0) === (is?.load_bits_per_second ?? 0) && was?.share === is?.share)
        return [];
      const [from, to] = direction === 'forward' ? [link.from, link.to] : [link.to, link.from];
      return [
        {
          link: link.name,
          direction,
          from: from.text,
          to: to.text,
          before: was,
          after: is,
          capacity_bits_per_second: link.chain.capacity_bits_per_second,
        },
      ];
    });
  });
  return changes.sort((a, b) => (b.after?.share ?? -1) - (a.after?.share ?? -1));
}

/** The same cable, written from its other end. */
function isTurned(before: Link, after: Link): boolean {
  return (
    before.from.text !== after.from.text &&
    before.from.text === after.to.text &&
    before.to.text === after.from.text
  );
}

function other(direction: 'forward' | 'backward'): 'forward' | 'backward' {
  return direction === 'forward' ? 'backward' : 'forward';
}

function stateOf(traffic: Traffic | undefined, direction: 'forward' | 'backward'): LoadState | undefined {
  if (!traffic) return undefined;
  let worst = traffic.base;
  for (const load of traffic.differing) {
    if (load[direction].load_bits_per_second > worst[direction].load_bits_per_second) worst = load;
  }
  const { load_bits_per_second, share } = worst[direction];
  return { load_bits_per_second, share, segment: worst.segment?.name ?? null };
}

/**
 * What each destination and input shows, and by which way, that differs: without segments, and in those segments in
 * which it differs otherwise.
 */
export function pictureChangesOf(
  old: Analysis,
  fresh: Analysis,
  newName: (name: string) => string,
): PictureChange[] {
  const before = new Map(
    old.situations.map((situation) => [
      situation.segment && newName(situation.segment.name),
      shownIn(old, situation, newName),
    ]),
  );
  const changes: PictureChange[] = [];
  const always = new Map<string, string>();
  for (const situation of fresh.situations) {
    const segment = situation.segment?.name;
    const after = shownIn(fresh, situation, (name) => name);
    // A segment that is new is compared with what held without it.
    const was = before.get(segment) ?? before.get(undefined) ?? new Map<string, PictureState>();
    for (const target of new Set([...was.keys(), ...after.keys()])) {
      const change = changeAt(target, segment ?? null, was.get(target), after.get(target));
      if (!change) continue;
      const key = JSON.stringify([change.change, change.before, change.after]);
      if (segment === undefined) always.set(target, key);
      else if (always.get(target) === key) continue;
      changes.push(change);
    }
  }
  const order: readonly PictureChange['change'][] = [
    'loses its picture',
    'shows another',
    'gains a picture',
    'goes another way',
    'later',
    'sooner',
  ];
  return changes.sort((a, b) => order.indexOf(a.change) - order.indexOf(b.change));
}

function shownIn(
  analysis: Analysis,
  situation: Situation,
  newName: (name: string) => string,
): Map<string, PictureState> {
  const shown = new Map<string, PictureState>();
  for (const delivery of arrivingIn(analysis, situation)) {
    const target = renamed(delivery.feed.targetName, newName);
    if (!shown.has(target)) shown.set(target, stateOfPicture(delivery, newName));
  }
  return shown;
}

function stateOfPicture({ feed, routes, delay }: Delivery, newName: (name: string) => string): PictureState {
  const way = routes.flatMap((route) =>
    route.steps.map(({ link }) =>
      link.named
        ? newName(link.name)
        : `${renamed(link.from.text, newName)}>${renamed(link.to.text, newName)}`,
    ),
  );
  return { source: newName(feed.sourceName), way, delay_s: delay.delay_s };
}

/** `box_d.in1` with the box's new name. */
function renamed(text: string, newName: (name: string) => string): string {
  const [thing = '', port] = text.split('.');
  return port === undefined ? newName(thing) : `${newName(thing)}.${port}`;
}

function changeAt(
  target: string,
  segment: string | null,
  before: PictureState | undefined,
  after: PictureState | undefined,
): PictureChange | undefined {
  const change = kindOf(before, after);
  return change && { change, target, segment, before, after };
}

function kindOf(
  before: PictureState | undefined,
  after: PictureState | undefined,
): PictureChange['change'] | undefined {
  if (!before || !after) return after ? 'gains a picture' : before ? 'loses its picture' : undefined;
  if (before.source !== after.source) return 'shows another';
  if (before.way.join() !== after.way.join()) return 'goes another way';
  const more_s = (after.delay_s ?? 0) - (before.delay_s ?? 0);
  if (Math.abs(more_s) <= DELAY_TOLERANCE_S) return undefined;
  return more_s > 0 ? 'later' : 'sooner';
}

/** Cables that are longer or shorter, or may be longer or less long, than before. */
export function reachChangesOf(old: Analysis, fresh: Analysis, links: readonly LinkPair[]): ReachChange[] {
  return links.flatMap(({ before, after }): ReachChange[] => {
    if (!before || !after) return [];
    const [was, is] = [reachState(old, before), reachState(fresh, after)];
    const same =
      near(was.length_m, is.length_m) && near(was.reach_m, is.reach_m) && was.verdict === is.verdict;
    return same ? [] : [{ link: after.name, before: was, after: is }];
  });
}

function reachState({ reaches }: Analysis, link: Link): ReachState {
  const reach = reaches[link.chain.index];
  return {
    length_m: link.length.length_m,
    reach_m: reach?.reach_m,
    share: reach?.share,
    verdict: reach?.verdict ?? 'not known',
  };
}

function near(a: number | undefined, b: number | undefined): boolean {
  return a === b || (a !== undefined && b !== undefined && Math.abs(a - b) < 0.005);
}
