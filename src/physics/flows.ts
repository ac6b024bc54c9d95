/** What one source puts on a network link: picture, sound and ancillary data, as it is carried. */
import { explainSoundLoad, soundLoad_bits_per_second } from './audio-flow.ts';
import { formatRate } from './display.ts';
import { ethernetOctets, HEADER_SOURCE, IP_UDP_RTP_OCTETS } from './packet-headers.ts';
import {
  explainPictureLoad,
  frameWireOctets,
  octetsAtRate_bits_per_second,
  type Packing,
  packFrame,
} from './packing.ts';
import { requireWithin } from './physics-error.ts';
import { activePayload_bits_per_second, bitsPerPixel } from './pixel-group.ts';
import { checkFormat, type Format, formatFormat, type Picture } from './raster.ts';
import { formatRatio } from './rate.ts';
import { type Explained, makeWorking, type Source, type Working } from './working.ts';

/** How a network carries pictures. A compressed rate is that of the coded picture, before headers. */
export type Carriage =
  | { readonly kind: 'uncompressed'; readonly packing: Packing }
  | { readonly kind: 'compressed'; readonly ratio: number }
  | { readonly kind: 'compressed'; readonly bits_per_pixel: number }
  | { readonly kind: 'compressed'; readonly rate_bits_per_second: number };

/** Loads on the wire of everything that belongs to one source, bits a second. */
export interface FlowLoads {
  /** Visible pixels alone, uncompressed; 0 for sound alone. */
  readonly active_bits_per_second: number;
  /** Undefined when the picture is compressed or there is none. */
  readonly packets_per_frame: number | undefined;
  readonly picture_bits_per_second: number;
  readonly sound_bits_per_second: number;
  readonly ancillary_bits_per_second: number;
  readonly total_bits_per_second: number;
}

/** Ancillary data of a picture: captions, time code. No standard fixes it (common practice). */
export const ANCILLARY_BITS_PER_SECOND = 100_000;
export const ANCILLARY_SOURCE: Source = {
  source: 'no standard fixes it; 50 to 100 kb/s in ordinary use of RFC 8331',
  label: 'common practice',
};

/** A compressed picture rides in packets of 1400 octets, each with 44 octets to IP and 38 of Ethernet. */
const COMPRESSED_DATA_OCTETS = 1400;
/** Payload header of RFC 9134 §4.3. */
const COMPRESSED_HEADER_OCTETS = 4;
export const COMPRESSED_SOURCE: Source = {
  source: "RFC 9134 §4.3 payload header; data packets of 1400 octets are this planner's choice",
  label: 'derived',
};
const CODED_SOURCE: Source = { source: 'as the carriage of the picture is stated', label: 'derived' };

/**
 * Loads of a source's picture, sound and ancillary data on one network link.
 *
 * @throws PhysicsError when the format cannot exist or the compression makes no sense.
 */
export function flowLoads(format: Format, carriage: Carriage, tagged = false): FlowLoads {
  checkFormat(format);
  const sound_bits_per_second = soundLoad_bits_per_second(format.audio_channels, tagged);
  if (format.kind === 'sound') {
    return {
      active_bits_per_second: 0,
      packets_per_frame: undefined,
      picture_bits_per_second: 0,
      sound_bits_per_second,
      ancillary_bits_per_second: 0,
      total_bits_per_second: sound_bits_per_second,
    };
  }
  const { packets, load } = pictureLoad(format, carriage, tagged);
  return {
    active_bits_per_second: activePayload_bits_per_second(format),
    packets_per_frame: packets,
    picture_bits_per_second: load,
    sound_bits_per_second,
    ancillary_bits_per_second: ANCILLARY_BITS_PER_SECOND,
    total_bits_per_second: load + sound_bits_per_second + ANCILLARY_BITS_PER_SECOND,
  };
}

function pictureLoad(
  picture: Picture,
  carriage: Carriage,
  tagged: boolean,
): { packets: number | undefined; load: number } {
  if (carriage.kind === 'compressed') {
    return {
      packets: undefined,
      load: codedRate_bits_per_second(picture, carriage) * compressedFactor(tagged),
    };
  }
  const frame = packFrame(picture, carriage.packing);
  const load = octetsAtRate_bits_per_second(frameWireOctets(frame, tagged), picture.rate);
  return { packets: frame.packets, load };
}

/**
 * Rate of a coded picture before headers: as stated, the active payload divided by the ratio, or pixels times bits.
 *
 * @throws PhysicsError for a rate of 0, a ratio below 1, or more bits than the picture has.
 */
export function codedRate_bits_per_second(
  picture: Picture,
  carriage: Carriage & { kind: 'compressed' },
): number {
  if ('rate_bits_per_second' in carriage) {
    return requireWithin('compressed rate', carriage.rate_bits_per_second, 1, 1e15, 'b/s');
  }
  const active = activePayload_bits_per_second(picture);
  if ('ratio' in carriage) return active / requireWithin('compression', carriage.ratio, 1, 10_000, 'to 1');
  const most = bitsPerPixel(picture.sampling, picture.depth_bits);
  const bits = requireWithin('compression', carriage.bits_per_pixel, 0.001, most, 'bits a pixel');
  const { width, height, rate } = picture;
  return (width * height * bits * rate.numerator) / rate.denominator;
}

/** What headers add to a coded picture: (1400 + 82) / 1400, with a tag (1400 + 86) / 1400. */
export function compressedFactor(tagged = false): number {
  return (COMPRESSED_DATA_OCTETS + compressedOverhead_octets(tagged)) / COMPRESSED_DATA_OCTETS;
}

function compressedOverhead_octets(tagged: boolean): number {
  return ethernetOctets(tagged) + IP_UDP_RTP_OCTETS + COMPRESSED_HEADER_OCTETS;
}

/** `flowLoads().total_bits_per_second` with its working; the parts are its steps. */
export function explainFlowLoads(format: Format, carriage: Carriage, tagged = false): Explained<FlowLoads> {
  const value = flowLoads(format, carriage, tagged);
  const sound = explainSoundLoad(format.audio_channels, tagged).working;
  if (format.kind === 'sound') return { value, working: sound };
  const picture = explainPicture(format, carriage, tagged);
  const working = makeWorking({
    figure: `${formatFormat(format)} on one network link`,
    rule: 'every bit that occupies the wire; timing traffic is not counted',
    formula: 'picture + sound + ancillary',
    inputs: [
      ['picture', formatRate(value.picture_bits_per_second)],
      ['sound', formatRate(value.sound_bits_per_second)],
      ['ancillary', formatRate(value.ancillary_bits_per_second)],
    ],
    result: formatRate(value.total_bits_per_second),
    ...HEADER_SOURCE,
    steps: [picture, sound, explainAncillary()],
  });
  return { value, working };
}

function explainAncillary(): Working {
  return makeWorking({
    figure: 'ancillary data',
    rule: 'a fixed allowance for each picture: captions, time code',
    formula: '',
    inputs: [],
    result: formatRate(ANCILLARY_BITS_PER_SECOND),
    ...ANCILLARY_SOURCE,
  });
}

function explainPicture(picture: Picture, carriage: Carriage, tagged: boolean): Working {
  if (carriage.kind === 'uncompressed') return explainPictureLoad(picture, carriage.packing, tagged).working;
  const coded = codedRate_bits_per_second(picture, carriage);
  return makeWorking({
    figure: 'compressed picture on the wire',
    rule: `the coded picture in packets of 1400 octets${tagged ? ', one VLAN tag each' : ''}`,
    formula: 'coded x (1400 + overhead) / 1400',
    inputs: [
      ['coded', formatRate(coded)],
      ['overhead', String(compressedOverhead_octets(tagged))],
    ],
    result: formatRate(coded * compressedFactor(tagged)),
    ...COMPRESSED_SOURCE,
    steps: [explainCodedRate(picture, carriage, coded)],
  });
}

function explainCodedRate(
  picture: Picture,
  carriage: Carriage & { kind: 'compressed' },
  coded: number,
): Working {
  const common = { figure: 'coded picture', result: formatRate(coded), ...CODED_SOURCE };
  if ('rate_bits_per_second' in carriage) {
    return makeWorking({ ...common, rule: 'the stated rate', formula: '', inputs: [] });
  }
  if ('ratio' in carriage) {
    return makeWorking({
      ...common,
      rule: 'the visible pixels divided by the stated ratio',
      formula: 'active / ratio',
      inputs: [
        ['active', formatRate(activePayload_bits_per_second(picture))],
        ['ratio', String(carriage.ratio)],
      ],
    });
  }
  return makeWorking({
    ...common,
    rule: 'the stated bits for every pixel',
    formula: 'width x height x bits x rate',
    inputs: [
      ['width', String(picture.width)],
      ['height', String(picture.height)],
      ['bits', String(carriage.bits_per_pixel)],
      ['rate', formatRatio(picture.rate)],
    ],
  });
}
