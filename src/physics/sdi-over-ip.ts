/** A whole SDI signal in packets, blanking included (SMPTE ST 2022-6). */
import { formatRate } from './display.ts';
import { IP_UDP_RTP_OCTETS, wireOctets } from './packet-headers.ts';
import { PhysicsError } from './physics-error.ts';
import { formatRaster, type Picture } from './raster.ts';
import { formatRatio } from './rate.ts';
import { sdiRate_bits_per_second } from './sdi.ts';
import { type Explained, makeWorking, type Source } from './working.ts';

/** Media octets in each datagram; the last of a frame is filled up. */
const MEDIA_OCTETS = 1376;
/** Payload header without a time stamp. */
const PAYLOAD_HEADER_OCTETS = 8;

export const SDI_OVER_IP_SOURCE: Source = { source: 'SMPTE ST 2022-6:2012 §6.2-6.5', label: 'second-hand' };

export interface SdiOverIp {
  readonly octets_per_frame: number;
  readonly datagrams_per_frame: number;
  readonly datagrams_per_second: number;
  readonly ip_bits_per_second: number;
  readonly wire_bits_per_second: number;
}

/**
 * Load of a picture as ST 2022-6: datagrams a frame = INT(octets / 1376) + 1.
 *
 * @throws PhysicsError when SDI has no raster for the picture
 */
export function sdiOverIp(picture: Picture): SdiOverIp {
  const rate = sdiRate_bits_per_second(picture);
  if (rate === undefined) {
    throw new PhysicsError(
      'format',
      `SDI has no raster for ${formatRaster(picture)}, so ST 2022-6 cannot carry it`,
    );
  }
  const { numerator, denominator } = picture.rate;
  const octets_per_frame = Math.round((rate * denominator) / numerator / 8);
  const datagrams_per_frame = Math.floor(octets_per_frame / MEDIA_OCTETS) + 1;
  const datagrams_per_second = (datagrams_per_frame * numerator) / denominator;
  const datagram_octets = MEDIA_OCTETS + PAYLOAD_HEADER_OCTETS + IP_UDP_RTP_OCTETS;
  return {
    octets_per_frame,
    datagrams_per_frame,
    datagrams_per_second,
    ip_bits_per_second: datagrams_per_second * datagram_octets * 8,
    wire_bits_per_second: datagrams_per_second * wireOctets(datagram_octets) * 8,
  };
}

/** `sdiOverIp().wire_bits_per_second` with its working. */
export function explainSdiOverIp(picture: Picture): Explained<SdiOverIp> {
  const value = sdiOverIp(picture);
  const overhead = wireOctets(MEDIA_OCTETS + PAYLOAD_HEADER_OCTETS + IP_UDP_RTP_OCTETS) - MEDIA_OCTETS;
  const working = makeWorking({
    figure: `${formatRaster(picture)} as ST 2022-6 on the wire`,
    rule: 'the whole SDI signal with its blanking, 1376 octets a datagram',
    formula: '(INT(octets / 1376) + 1) x (1376 + overhead) x 8 x rate',
    inputs: [
      ['octets', String(value.octets_per_frame)],
      ['overhead', String(overhead)],
      ['rate', formatRatio(picture.rate)],
    ],
    result: formatRate(value.wire_bits_per_second),
    ...SDI_OVER_IP_SOURCE,
  });
  return { value, working };
}
