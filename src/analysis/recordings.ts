import { recording_bytes } from '../physics/uplink.ts';
import { attempt } from './attempt.ts';
import type { Analysis, Recording } from './model.ts';

/** The storage that each recording needs for as long as the plan lasts; unknown while the plan does not say how long. */
export function recordingsOf(analysis: Analysis): Recording[] {
  const { lasts_s } = analysis.settings;
  return [...analysis.destinations.values()].flatMap((destination): Recording[] => {
    const rate = destination.statement.fact.records_bits_per_second;
    if (rate === undefined) return [];
    return [
      {
        destination,
        bytes: lasts_s === undefined ? undefined : attempt(() => recording_bytes(rate, lasts_s)),
      },
    ];
  });
}
