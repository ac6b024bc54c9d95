/** Streams over the venue's internet, and recordings. */
import { formatBytes, formatNumber, formatRate, formatShare } from './display.ts';
import { IPV4_OCTETS, UDP_OCTETS } from './packet-headers.ts';
import { requireWithin } from './physics-error.ts';
import { type Explained, makeWorking, type Source } from './working.ts';

/** Header of the SRT protocol, and the payload it sends live: seven transport packets of 188 octets. */
export const SRT_HEADER_OCTETS = 16;
export const SRT_PAYLOAD_OCTETS = 7 * 188;
/** Share of the stream that may be sent again for lost packets. */
export const RECOVERY_SHARE = 0.25;
export const STREAM_SOURCE: Source = {
  source:
    'SRT reference documentation (libsrt 1.5.1): recovery overhead 25 %, payload 1316, header 16 octets; UDP and IPv4 28',
  label: 'published',
};
/** Streams together use at most this share of an upload. */
export const UPLOAD_SHARE = 0.5;
export const UPLOAD_SOURCE: Source = { source: 'half of the sustained upload', label: 'common practice' };

/** What headers add to a stream: (1316 + 16 + 8 + 20) / 1316. */
export const STREAM_HEADER_FACTOR =
  (SRT_PAYLOAD_OCTETS + SRT_HEADER_OCTETS + UDP_OCTETS + IPV4_OCTETS) / SRT_PAYLOAD_OCTETS;

/** The largest SRT payload in an IP datagram. @throws PhysicsError for a datagram that holds no payload */
export function largestStreamPayload_octets(datagram_octets: number): number {
  const headers = IPV4_OCTETS + UDP_OCTETS + SRT_HEADER_OCTETS;
  return requireWithin('datagram', datagram_octets, headers + 1, 65_535, 'octets') - headers;
}

/**
 * Upload that streams need: the sum of their rates (sound included), 25 % for recovery, and headers.
 *
 * @throws PhysicsError for a rate that is negative or NaN
 */
export function streamsLoad_bits_per_second(
  rates_bits_per_second: readonly number[],
  recovery_share = RECOVERY_SHARE,
): number {
  requireWithin('recovery overhead', recovery_share, 0.05, 1);
  return sum(rates_bits_per_second) * (1 + recovery_share) * STREAM_HEADER_FACTOR;
}

/**
 * The stated rate of one more stream that fits beside what is needed already; 0 when nothing does.
 *
 * @throws PhysicsError for a rate that is negative or NaN
 */
export function furtherStream_bits_per_second(
  usable_bits_per_second: number,
  needed_bits_per_second: number,
  recovery_share = RECOVERY_SHARE,
): number {
  requireWithin('usable upload', usable_bits_per_second, 0, 1e15, 'b/s');
  requireWithin('needed upload', needed_bits_per_second, 0, 1e18, 'b/s');
  requireWithin('recovery overhead', recovery_share, 0.05, 1);
  const free = Math.max(0, usable_bits_per_second - needed_bits_per_second);
  return free / ((1 + recovery_share) * STREAM_HEADER_FACTOR);
}

function sum(rates_bits_per_second: readonly number[]): number {
  let total = 0;
  for (const rate of rates_bits_per_second) total += requireWithin('stream rate', rate, 0, 1e15, 'b/s');
  return total;
}

/** The part of a stated or measured upload that streams may use: half. @throws PhysicsError */
export function usableUpload_bits_per_second(upload_bits_per_second: number): number {
  return requireWithin('upload', upload_bits_per_second, 0, 1e15, 'b/s') * UPLOAD_SHARE;
}

/** `streamsLoad_bits_per_second` with its working. */
export function explainStreams(
  rates_bits_per_second: readonly number[],
  recovery_share = RECOVERY_SHARE,
): Explained {
  const value = streamsLoad_bits_per_second(rates_bits_per_second, recovery_share);
  const working = makeWorking({
    figure: 'upload that the streams need',
    rule: 'stated rates with recovery of lost packets and all headers down to IP',
    formula: 'streams x (1 + recovery) x (1316 + 44) / 1316',
    inputs: [
      [
        'streams',
        rates_bits_per_second.length === 1
          ? formatRate(rates_bits_per_second[0]!)
          : `(${rates_bits_per_second.map((rate) => formatRate(rate)).join(' + ')})`,
      ],
      ['recovery', formatNumber(recovery_share, 2)],
    ],
    result: formatRate(value),
    ...STREAM_SOURCE,
  });
  return { value, working };
}

/** `usableUpload_bits_per_second` with its working. */
export function explainUsableUpload(upload_bits_per_second: number): Explained {
  const value = usableUpload_bits_per_second(upload_bits_per_second);
  const working = makeWorking({
    figure: 'usable part of the upload',
    rule: 'venue internet is shared and sags',
    formula: `upload x ${formatShare(UPLOAD_SHARE)}`,
    inputs: [['upload', formatRate(upload_bits_per_second)]],
    result: formatRate(value),
    ...UPLOAD_SOURCE,
  });
  return { value, working };
}

export const RECORDING_SOURCE: Source = { source: 'rate times duration, 8 bit an octet', label: 'derived' };

/** Size of a recording: rate x duration / 8. @throws PhysicsError for negative values or NaN */
export function recording_bytes(rate_bits_per_second: number, duration_s: number): number {
  requireWithin('recording rate', rate_bits_per_second, 0, 1e15, 'b/s');
  return (rate_bits_per_second * requireWithin('duration', duration_s, 0, 366 * 86_400, 's')) / 8;
}

/** `recording_bytes` with its working. */
export function explainRecording(rate_bits_per_second: number, duration_s: number): Explained {
  const value = recording_bytes(rate_bits_per_second, duration_s);
  const working = makeWorking({
    figure: 'size of the recording',
    rule: 'powers of ten, as storage is sold',
    formula: 'rate x duration / 8',
    inputs: [
      ['rate', formatRate(rate_bits_per_second)],
      ['duration', `${formatNumber(duration_s / 3600, 2)} h`],
    ],
    result: formatBytes(value),
    ...RECORDING_SOURCE,
  });
  return { value, working };
}
