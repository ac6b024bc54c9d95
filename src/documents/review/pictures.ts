import { arrivingIn } from '../../analysis/holding.ts';
import type { Delivery, Situation } from '../../analysis/model.ts';
import { DELAY_TOLERANCE_S } from '../../physics/delay.ts';
import { formatTime } from '../../physics/display.ts';
import type { Comparison } from './comparison.ts';
import { type Named, type PictureChange, type PictureState, pictureChangeKinds } from './review.ts';
import { placeOf } from './thing-changes.ts';

/** A picture that arrives somewhere, with what is needed to tell of it. */
interface Shown {
  readonly state: PictureState;
  readonly delivery: Delivery;
}

/**
 * What each destination and input shows, and by which way, that differs: without segments, and in those segments in
 * which it differs otherwise. The worst first.
 */
export function pictureChangesOf(comparison: Comparison): PictureChange[] {
  const { was, is, renames } = comparison;
  const before = new Map(
    was.situations.map((situation) => [
      situation.segment && renames.of('segments', situation.segment.name),
      shownIn(comparison, 'was', situation),
    ]),
  );
  const changes: PictureChange[] = [];
  const always = new Map<string, string>();
  for (const situation of is.situations) {
    const segment = situation.segment?.name;
    const after = shownIn(comparison, 'is', situation);
    // A segment that is new is compared with what held without it.
    const old = before.get(segment) ?? before.get(undefined) ?? new Map<string, Shown>();
    for (const target of new Set([...old.keys(), ...after.keys()])) {
      const change = changeAt(comparison, target, situation, old.get(target), after.get(target));
      if (!change) continue;
      const key = toldOf(change);
      if (segment === undefined) always.set(target, key);
      else if (always.get(target) === key) continue;
      changes.push(change);
    }
  }
  return changes.sort((a, b) => rankOf(a) - rankOf(b));
}

/** What is told of a change: the way only where that is what changed. */
function toldOf({ change, before, after }: PictureChange): string {
  const told = (state: PictureState | undefined) =>
    state && {
      ...state,
      way: change === 'another way' ? state.way : [],
      delay_s: formatTime(state.delay_s ?? 0),
    };
  return JSON.stringify([change, told(before), told(after)]);
}

function rankOf({ change }: PictureChange): number {
  return pictureChangeKinds.indexOf(change);
}

/** By the target's name in the new plan. */
function shownIn(comparison: Comparison, side: 'was' | 'is', situation: Situation): Map<string, Shown> {
  const shown = new Map<string, Shown>();
  for (const delivery of arrivingIn(comparison[side], situation)) {
    const { targetName } = delivery.feed;
    const target = side === 'was' ? comparison.renames.socket(targetName) : targetName;
    const state = stateOf(comparison, side, delivery);
    if (state && !shown.has(target)) shown.set(target, { state, delivery });
  }
  return shown;
}

function stateOf(comparison: Comparison, side: 'was' | 'is', delivery: Delivery): PictureState | undefined {
  const { feed, routes, delay } = delivery;
  if (!feed.source) return undefined;
  const links = routes.flatMap((route) => route.steps.map(({ link }) => link));
  const old = side === 'was';
  return {
    source: old ? comparison.oldSource(feed.source) : comparison.source(feed.source),
    way: links.map((link): Named => (old ? comparison.oldLink(link) : comparison.link(link))),
    delay_s: delay.delay_s,
    limit_s: delay.limit_s,
    over: delay.over,
  };
}

function changeAt(
  comparison: Comparison,
  name: string,
  { segment }: Situation,
  before: Shown | undefined,
  after: Shown | undefined,
): PictureChange | undefined {
  const change = kindOf(before?.state, after?.state);
  const { feed } = (after ?? before)!.delivery;
  if (!change || !feed.target) return undefined;
  return {
    change,
    name,
    title: after ? comparison.target(feed.target) : comparison.oldTarget(feed.target),
    segment: comparison.segment(segment),
    before: before?.state,
    after: after?.state,
    place: placeOf(feed.statement, after ? 'new' : 'old', `targets/${feed.targetIndex}`),
  };
}

function kindOf(
  before: PictureState | undefined,
  after: PictureState | undefined,
): PictureChange['change'] | undefined {
  if (!before || !after) return after ? 'gains a picture' : before ? 'loses its picture' : undefined;
  if (before.source.name !== after.source.name) return 'shows another';
  if (wayText(before) !== wayText(after)) return 'another way';
  if (before.delay_s === undefined || after.delay_s === undefined) return undefined;
  const more_s = after.delay_s - before.delay_s;
  if (Math.abs(more_s) <= DELAY_TOLERANCE_S) return undefined;
  return more_s > 0 ? 'later' : 'sooner';
}

function wayText({ way }: PictureState): string {
  return way.map(({ name }) => name).join('\n');
}
