import {
  furtherStream_bits_per_second,
  streamsLoad_bits_per_second,
  usableUpload_bits_per_second,
} from '../physics/uplink.ts';
import { attempt } from './attempt.ts';
import { add } from './lists.ts';
import type { Analysis, Destination, UplinkLoad } from './model.ts';

/**
 * What the streams need of each uplink, with recovery and headers, against half of its stated or measured upload.
 * Streams that name several uplinks must fit each alone; those that name none go over the only one there is.
 */
export function uplinkLoadsOf(analysis: Analysis): UplinkLoad[] {
  const [only, ...others] = analysis.uplinks.keys();
  const rates = new Map<string, number[]>();
  const destinations = new Map<string, Set<Destination>>();
  for (const destination of analysis.destinations.values()) {
    for (const streams of destination.statement.fact.streams) {
      const over =
        streams.uplinks.length > 0
          ? streams.uplinks
          : only !== undefined && others.length === 0
            ? [only]
            : [];
      for (const name of new Set(over)) {
        for (const rate of streams.rates_bits_per_second) add(rates, name, rate);
        destinations.set(name, (destinations.get(name) ?? new Set()).add(destination));
      }
    }
  }
  return [...analysis.uplinks.values()].map((uplink): UplinkLoad => {
    const upload = uplink.measured_bits_per_second ?? uplink.stated_bits_per_second;
    const usable = upload === undefined ? undefined : attempt(() => usableUpload_bits_per_second(upload));
    const streams = rates.get(uplink.name) ?? [];
    const needed = attempt(() => streamsLoad_bits_per_second(streams)) ?? 0;
    return {
      uplink,
      stated_bits_per_second: uplink.stated_bits_per_second,
      measured_bits_per_second: uplink.measured_bits_per_second,
      usable_bits_per_second: usable,
      needed_bits_per_second: needed,
      share: usable ? needed / usable : undefined,
      fits_bits_per_second:
        usable === undefined ? undefined : attempt(() => furtherStream_bits_per_second(usable, needed)),
      streams_bits_per_second: streams,
      destinations: [...(destinations.get(uplink.name) ?? [])],
    };
  });
}

/** Destinations whose streams name no uplink where there is not just one to go over. */
export function streamsWithoutUplink(analysis: Analysis): Destination[] {
  if (analysis.uplinks.size === 1) return [];
  return [...analysis.destinations.values()].filter(({ statement }) =>
    statement.fact.streams.some((streams) => streams.uplinks.length === 0),
  );
}
