import { arrivingIn } from '../../analysis/holding.ts';
import { add } from '../../analysis/lists.ts';
import type { Delivery, Link, Port, Situation } from '../../analysis/model.ts';
import type { Comparison } from './comparison.ts';
import type { Box } from './patching.ts';

/** What becomes of pictures with one move of the hands. */
export interface Effect {
  /** Where a picture goes dark that the new plan shows. */
  readonly dark: readonly string[];
  /** Where it ends for good. */
  readonly ends: readonly string[];
}

/** Where a picture is watched, and in which part of the show. */
interface SpotTitle {
  readonly target: string;
  readonly title: string;
  /** Undefined: whenever no segment differs. */
  readonly segment: string | undefined;
  readonly segmentTitle: string | undefined;
}

/** Where a picture can run as planned. */
export interface ReadySpot extends SpotTitle {
  readonly delivery: Delivery;
  readonly wasDark: boolean;
}

/** One place where a picture is watched, in one part of the show, while cables are plugged and unplugged. */
interface Spot extends SpotTitle {
  readonly old: Delivery | undefined;
  readonly fresh: Delivery | undefined;
  /** Ways of the old plan that are still whole. */
  waysLeft: number;
  /** Cables that the new way still waits for. */
  missing: number;
  state: 'as before' | 'dark' | 'as planned' | 'nothing yet' | 'ended';
}

/**
 * Follows every picture from the old plan to the new one, cable by cable. A picture runs as before while one of its old
 * ways is whole, and as planned from when its new way is whole and its outputs are set.
 */
export class Running {
  readonly #spots = new Map<string, Spot>();
  readonly #overOld = new Map<Link, Spot[]>();
  readonly #overNew = new Map<Link, Spot[]>();
  readonly #through = new Map<Box, Set<Spot>>();
  readonly #brokenWays = new Map<Spot, Set<number>>();
  #ready: Spot[] = [];

  /** @param waiting Cables of the new plan that are not plugged yet. */
  constructor(comparison: Comparison, waiting: ReadonlySet<Link>) {
    const { was, is, renames, titles } = comparison;
    for (const situation of was.situations) {
      const segment = situation.segment && renames.of('segments', situation.segment.name);
      if (segment !== undefined && !is.segments.has(segment)) continue;
      for (const delivery of ownIn(was, situation)) {
        const target = renames.socket(delivery.feed.targetName);
        const title = delivery.feed.target ? titles.was.target(delivery.feed.target) : target;
        const now = segment === undefined ? undefined : is.segments.get(segment);
        this.#spot(target, segment, title, now && titles.is.segment(now), delivery, undefined);
      }
    }
    for (const situation of is.situations) {
      for (const delivery of ownIn(is, situation)) {
        const { target, targetName } = delivery.feed;
        const title = target ? titles.is.target(target) : targetName;
        const { segment } = situation;
        this.#spot(
          targetName,
          segment?.name,
          title,
          segment && titles.is.segment(segment),
          undefined,
          delivery,
        );
      }
    }
    this.#fillFromAlways(is);
    for (const spot of this.#spots.values()) this.#watch(spot, waiting);
  }

  /** Where a part of the show had a picture of its own and has none any more, it shows what holds always. */
  #fillFromAlways(is: Comparison['is']): void {
    const left = new Set<string | undefined>();
    for (const { segment, fresh } of this.#spots.values())
      if (!fresh && segment !== undefined) left.add(segment);
    for (const situation of is.situations) {
      const segment = situation.segment?.name;
      if (segment === undefined || !left.has(segment)) continue;
      for (const delivery of arrivingIn(is, situation)) {
        const key = keyOf(delivery.feed.targetName, segment);
        const known = this.#spots.get(key);
        if (known && !known.fresh) this.#spots.set(key, { ...known, fresh: delivery });
      }
    }
  }

  #spot(
    target: string,
    segment: string | undefined,
    title: string,
    segmentTitle: string | undefined,
    old: Delivery | undefined,
    fresh: Delivery | undefined,
  ): void {
    const key = keyOf(target, segment);
    const known = this.#spots.get(key);
    if (known && ((old && known.old) || (fresh && known.fresh))) return;
    this.#spots.set(key, {
      target,
      segment,
      title: fresh || !known ? title : known.title,
      segmentTitle: segmentTitle ?? known?.segmentTitle,
      old: old ?? known?.old,
      fresh: fresh ?? known?.fresh,
      waysLeft: (old ?? known?.old)?.routes.length ?? 0,
      missing: 0,
      state: (old ?? known?.old) ? 'as before' : 'nothing yet',
    });
  }

  #watch(spot: Spot, waiting: ReadonlySet<Link>): void {
    for (const route of spot.old?.routes ?? []) {
      for (const { link } of route.steps) add(this.#overOld, link, spot);
      this.#passes(spot, route.ports);
    }
    for (const route of spot.fresh?.routes ?? []) {
      for (const { link } of route.steps) {
        if (!waiting.has(link)) continue;
        spot.missing++;
        add(this.#overNew, link, spot);
      }
      this.#passes(spot, route.ports);
    }
    if (spot.fresh && spot.missing === 0) this.#ready.push(spot);
  }

  #passes(spot: Spot, ports: readonly Port[]): void {
    for (const { owner } of ports) {
      const spots = this.#through.get(owner) ?? new Set();
      this.#through.set(owner, spots.add(spot));
    }
  }

  /** Whether a picture runs over an old cable that has nowhere else to run yet. */
  isNeeded(link: Link): boolean {
    return this.#falling(link).length > 0;
  }

  /** An old cable is pulled out. */
  unplug(link: Link): Effect {
    const falling = this.#falling(link);
    for (const spot of this.#overOld.get(link) ?? []) {
      const broken = this.#brokenWays.get(spot) ?? new Set();
      spot.old!.routes.forEach((route, i) => {
        if (route.steps.some((step) => step.link === link)) broken.add(i);
      });
      this.#brokenWays.set(spot, broken);
      spot.waysLeft = spot.old!.routes.length - broken.size;
    }
    for (const spot of falling) spot.state = spot.fresh ? 'dark' : 'ended';
    return {
      dark: titlesOf(falling.filter(({ fresh }) => fresh)),
      ends: titlesOf(falling.filter(({ fresh }) => !fresh)),
    };
  }

  #falling(link: Link): Spot[] {
    return [...new Set(this.#overOld.get(link))].filter((spot) => {
      if (spot.state !== 'as before') return false;
      const broken = this.#brokenWays.get(spot);
      return spot.old!.routes.every(
        (route, i) => broken?.has(i) || route.steps.some((step) => step.link === link),
      );
    });
  }

  /** A new cable is plugged at both ends. */
  plug(link: Link): void {
    for (const spot of this.#overNew.get(link) ?? []) {
      spot.missing--;
      if (spot.missing === 0) this.#ready.push(spot);
    }
  }

  /** Where a new way has become whole since this was asked last: it is run from now on. */
  takeReady(): readonly ReadySpot[] {
    const ready = this.#ready;
    this.#ready = [];
    return ready.map((spot): ReadySpot => {
      const wasDark = spot.state === 'dark';
      spot.state = 'as planned';
      return { ...spot, delivery: spot.fresh!, wasDark };
    });
  }

  /** Where a picture runs that passes through one of these boxes. */
  through(boxes: readonly Box[]): readonly string[] {
    const spots = new Set(boxes.flatMap((box) => [...(this.#through.get(box) ?? [])]));
    return titlesOf([...spots].filter(({ state }) => state === 'as before' || state === 'as planned'));
  }
}

function keyOf(target: string, segment: string | undefined): string {
  return `${target}\n${segment ?? ''}`;
}

/** Those of the plan without segments, or those in which a segment differs from it. */
function ownIn(analysis: Comparison['is'], situation: Situation): Delivery[] {
  return situation.segment
    ? situation.own.filter(({ routes }) => routes.length > 0)
    : arrivingIn(analysis, situation);
}

/** Where a picture runs always, its segments are not named apart. */
export function titlesOf(spots: readonly SpotTitle[]): string[] {
  const always = new Set(spots.filter(({ segment }) => segment === undefined).map(({ target }) => target));
  const titles = spots.flatMap(({ target, title, segment, segmentTitle }) => {
    if (segment === undefined) return [title];
    return always.has(target) ? [] : [`${title} in ${segmentTitle ?? segment}`];
  });
  return [...new Set(titles)];
}
