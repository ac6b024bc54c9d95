import { exceedsDelay, propagation_s } from '../physics/delay.ts';
import { type FrameRate, framesToSeconds } from '../physics/rate.ts';
import type { Duration } from '../plan/facts.ts';
import type { FormatTable } from './formats.ts';
import type { Delay, DelayPart, Delivery, Port, Route, Step } from './model.ts';

/** What turns frames into time. */
export interface Clock {
  readonly formats: FormatTable;
  /** For sound, which has no frames of its own, and for pictures whose format is not known. */
  readonly houseRate: FrameRate | undefined;
}

/** A delay in seconds; undefined when it is stated in frames of a picture whose rate is not known. */
export function durationIn_s(duration: Duration, rate: FrameRate | undefined): number | undefined {
  if ('seconds' in duration) return duration.seconds;
  return rate === undefined ? undefined : framesToSeconds(duration.frames, rate);
}

/** The rate in which delays of a picture are counted. */
export function rateOf({ formats, houseRate }: Clock, format: Step['format']): FrameRate | undefined {
  return (format && formats.known(format)?.rate) ?? houseRate;
}

/** From the source's output to where the picture is watched; undefined when a part is not known. */
export function pathDelay_s(delivery: Delivery, clock: Clock): number | undefined {
  let sum = 0;
  let known = true;
  try {
    eachPart(delivery, clock, (_what, _name, time_s) => {
      if (time_s === undefined) known = false;
      else sum += time_s;
    });
  } catch {
    // A length or a delay beyond all reason is told where it is written.
    return undefined;
  }
  return known ? sum : undefined;
}

/** Every item of a delivery's delay, for its working; what is not known is left out. */
export function delayPartsOf(delivery: Delivery, clock: Clock): DelayPart[] {
  const parts: DelayPart[] = [];
  const { beginning } = delivery.delay;
  const slowest = beginning?.slowest;
  if (slowest) {
    const { source, arrives_s, node, node_s } = slowest;
    parts.push({ what: 'made of', name: source.name, time_s: arrives_s, frames: undefined });
    if (node) {
      parts.push({ what: 'node', name: node.name, time_s: node_s, frames: framesOf(node.kit?.delay) });
    }
  }
  if (beginning?.own_s) {
    const frames = framesOf(beginning.source.delay);
    parts.push({ what: 'source', name: beginning.source.name, time_s: beginning.own_s, frames });
  }
  eachPart(delivery, clock, (what, name, time_s, stated) => {
    if (time_s) parts.push({ what, name, time_s, frames: framesOf(stated) });
  });
  return parts;
}

function framesOf(duration: Duration | undefined): number | undefined {
  return duration && 'frames' in duration ? duration.frames : undefined;
}

type Act = (
  what: DelayPart['what'],
  name: string,
  time_s: number | undefined,
  stated: Duration | undefined,
) => void;

function eachPart({ feed, routes, format }: Delivery, clock: Clock, act: Act): void {
  const [route] = routes;
  if (!route) return;
  const { steps } = route;
  for (let i = 0; i < steps.length; i++) {
    const step = steps[i]!;
    const { cable, length, name } = step.link;
    if (cable?.delay_s_per_m !== undefined && length.length_m !== undefined) {
      act('cable', name, propagation_s(length.length_m, cable.delay_s_per_m), undefined);
    }
    const stated = i + 1 < steps.length ? delayThrough(route, i) : undefined;
    if (stated) {
      const through = route.ports[2 * i + 1]!.owner.name;
      act('node', through, durationIn_s(stated, rateOf(clock, step.format)), stated);
    }
  }
  const { target } = feed;
  if (target && 'takes' in target && target.delay) {
    act('destination', target.name, durationIn_s(target.delay, rateOf(clock, format)), target.delay);
  }
}

/** The delay of the node behind a step, where passing through it takes any. */
function delayThrough({ ports }: Route, step: number): Duration | undefined {
  const arriving = ports[2 * step + 1]!;
  const leaving = ports[2 * step + 2]!;
  const delay = arriving.owner.kit?.delay;
  if (delay === undefined || arriving.role === 'pass') return undefined;
  return copies(arriving, leaving) ? undefined : delay;
}

/** An output that follows an input and does not change the picture adds nothing. */
function copies(arriving: Port, leaving: Port): boolean {
  const follows = leaving.kitPort?.follows;
  return follows !== undefined && follows === arriving.kitPort && leaving.gives === undefined;
}

/** The stricter of the two limits that a delivery may have, in frames of its source. */
export function limitOf(
  { feed }: Delivery,
  rate: FrameRate | undefined,
): Pick<Delay, 'limit' | 'limit_s' | 'limitOn'> {
  const { target } = feed;
  const onFeed = feed.statement.fact.limit;
  const onDestination = target && 'takes' in target ? target.limit : undefined;
  const feed_s = onFeed && durationIn_s(onFeed, rate);
  const destination_s = onDestination && durationIn_s(onDestination, rate);
  if (destination_s !== undefined && (feed_s === undefined || destination_s < feed_s)) {
    return { limit: onDestination, limit_s: destination_s, limitOn: 'destination' };
  }
  return feed_s === undefined ? noLimit : { limit: onFeed, limit_s: feed_s, limitOn: 'feed' };
}

const noLimit = { limit: undefined, limit_s: undefined, limitOn: undefined } as const;

export function isOver(delay_s: number | undefined, limit_s: number | undefined): boolean {
  return delay_s !== undefined && limit_s !== undefined && exceedsDelay(delay_s, limit_s);
}
