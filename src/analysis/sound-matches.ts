import { judgeLipSync, soundFlight_s } from '../physics/sound.ts';
import { attempt } from './attempt.ts';
import type { Analysis, Delivery, Destination, SoundMatch } from './model.ts';

/**
 * For each destination that states when its sound is heard: how early or late that is against its picture, by the
 * plan's rule. Once without segments, and once more for each segment in which another picture or way makes a difference.
 */
export function soundMatchesOf(analysis: Analysis): SoundMatch[] {
  return analysis.deliveries.flatMap((delivery) => matchOf(delivery, analysis) ?? []);
}

function matchOf(delivery: Delivery, { settings }: Analysis): SoundMatch | undefined {
  const { target } = delivery.feed;
  if (!target || !isDestination(target)) return undefined;
  const { sound } = target.statement.fact;
  const picture_s = delivery.delay.delay_s;
  if (!sound || picture_s === undefined || delivery.routes.length === 0) return undefined;
  const distance_m = sound.distance_m ?? 0;
  const flight_s = attempt(() => soundFlight_s(distance_m));
  if (flight_s === undefined) return undefined;
  const sound_s = (sound.after_s ?? 0) + flight_s;
  const judged = attempt(() => judgeLipSync(picture_s, sound_s, settings.lipsync));
  if (!judged) return undefined;
  return {
    destination: target,
    segment: delivery.segment,
    picture_s,
    sound_s,
    offset_s: judged.offset_s,
    rule: settings.lipsync,
    ok: judged.judgement !== 'bad',
    warning: judged.judgement === 'noticed',
    delayToSet_s: judged.delay_to_set_s,
  };
}

function isDestination(target: NonNullable<Delivery['feed']['target']>): target is Destination {
  return 'kind' in target && target.kind === 'destination';
}
