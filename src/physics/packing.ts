/** How an uncompressed picture is cut into packets (SMPTE ST 2110-20, RFC 4175). */

import { greatestCommonDivisor } from './decimal.ts';
import { formatNumber, formatRate } from './display.ts';
import {
  ethernetOctets,
  HEADER_SOURCE,
  IP_UDP_RTP_OCTETS,
  MOST_ROW_HEADERS,
  PICTURE_PACKET_OCTETS,
  ROW_HEADER_OCTETS,
  SAMPLE_ROOM_OCTETS,
  SEQUENCE_OCTETS,
  VLAN_TAG_OCTETS,
} from './packet-headers.ts';
import { PIXEL_GROUP_SOURCE, type PixelGroup, pixelGroup } from './pixel-group.ts';
import { checkPicture, formatRaster, type Picture } from './raster.ts';
import { type FrameRate, formatRatio } from './rate.ts';
import { type Explained, makeWorking, type Source, type Working } from './working.ts';

/** `equal`: equal packets for every row. `block`: multiples of 180 octets, running on from row to row. */
export type Packing = 'equal' | 'block';

/** The packets of one frame. */
export interface PackedFrame {
  readonly packets: number;
  readonly row_headers: number;
  /** Samples, whole pixel groups. */
  readonly data_octets: number;
}

/** Block packing: 7 times 180 octets fit the standard size limit (SMPTE ST 2110-20 §6.3.3, second-hand). */
export const BLOCK_OCTETS = 7 * 180;

export const EQUAL_PACKING_SOURCE: Source = {
  source: 'SMPTE ST 2110-20:2017 §6.3.1-6.3.2, general packing; RFC 4175 §4',
  label: 'second-hand',
};
export const BLOCK_PACKING_SOURCE: Source = {
  source: 'SMPTE ST 2110-20 §6.3.3, block packing',
  label: 'second-hand',
};

/** The picture as the packing sees it: rows (4:2:0: pairs of rows) of pixel groups; a field stands for itself. */
interface Layout {
  readonly group: PixelGroup;
  readonly groupsPerRow: number;
  readonly rowsPerField: number;
  readonly fields: 1 | 2;
}

function layOut(picture: Picture): Layout {
  checkPicture(picture);
  const group = pixelGroup(picture.sampling, picture.depth_bits);
  const fields = picture.scan === 'i' ? 2 : 1;
  return {
    group,
    // A short last group is filled up with zeros: RFC 4175 §4.3.
    groupsPerRow: Math.ceil(picture.width / (group.pixels / group.rows)),
    rowsPerField: picture.height / fields / group.rows,
    fields,
  };
}

/**
 * Cuts one frame into packets.
 *
 * `equal`: for each row (each pair of rows for 4:2:0) the fewest equal packets whose samples fit 1432 octets. Where
 * no number up to twice the least divides the row's groups (1366 pixels), the least number, the last one shorter.
 * `block`: 1260 octets a packet from row to row, one row header for each row touched; the last packet of a frame
 * (of a field) is shorter. Fields never share a packet (RFC 4175 §4.1).
 *
 * Interlaced 4:2:0 is counted by pairs of rows in each field (derived; ST 2110-20 has 4:2:0 in progressive only).
 *
 * @throws PhysicsError when the picture cannot exist.
 */
export function packFrame(picture: Picture, packing: Packing): PackedFrame {
  const layout = layOut(picture);
  return packing === 'equal' ? packEqual(layout) : packBlocks(layout);
}

function packEqual(layout: Layout): PackedFrame {
  const rows = layout.rowsPerField * layout.fields;
  const packets = rows * equalPacketsPerRow(layout);
  return { packets, row_headers: packets, data_octets: rows * layout.groupsPerRow * layout.group.octets };
}

function equalPacketsPerRow({ group, groupsPerRow }: Layout): number {
  const least = Math.ceil(groupsPerRow / Math.floor(SAMPLE_ROOM_OCTETS / group.octets));
  for (let count = least; count <= 2 * least; count++) if (groupsPerRow % count === 0) return count;
  return least;
}

function packBlocks({ group, groupsPerRow, rowsPerField, fields }: Layout): PackedFrame {
  const groupsInField = groupsPerRow * rowsPerField;
  // A packet that holds two whole rows and one group more may touch four rows, for which it has no headers.
  const groupsInPacket = Math.min(Math.floor(BLOCK_OCTETS / group.octets), 2 * groupsPerRow + 1);
  const packets = Math.ceil(groupsInField / groupsInPacket);
  const sharedEdges = Math.floor(
    (groupsInField - groupsPerRow) / leastCommonMultiple(groupsPerRow, groupsInPacket),
  );
  return {
    packets: packets * fields,
    row_headers: (packets + rowsPerField - 1 - sharedEdges) * fields,
    data_octets: groupsInField * group.octets * fields,
  };
}

function leastCommonMultiple(a: number, b: number): number {
  return (a / greatestCommonDivisor(a, b)) * b;
}

/**
 * The fewest packets that the size limit allows: rows run on, each packet filled to the limit (derived). No legal
 * packing has fewer packets; it is a bound to judge others by.
 */
export function packFullest(picture: Picture): PackedFrame {
  const { group, groupsPerRow, rowsPerField, fields } = layOut(picture);
  let packets = 0;
  let row_headers = 0;
  let row = 0;
  let left = groupsPerRow;
  while (row < rowsPerField) {
    packets++;
    let room = SAMPLE_ROOM_OCTETS + ROW_HEADER_OCTETS;
    for (let headers = 0; headers < MOST_ROW_HEADERS && row < rowsPerField; headers++) {
      const groups = Math.min(left, Math.floor((room - ROW_HEADER_OCTETS) / group.octets));
      if (groups < 1) break;
      row_headers++;
      room -= ROW_HEADER_OCTETS + groups * group.octets;
      left -= groups;
      if (left > 0) break;
      row++;
      left = groupsPerRow;
    }
  }
  const data_octets = groupsPerRow * rowsPerField * group.octets * fields;
  return { packets: packets * fields, row_headers: row_headers * fields, data_octets };
}

/** Octets of one packed frame on the wire: preamble, headers, check sequence and gaps counted (RFC 2544 app. B). */
export function frameWireOctets(frame: PackedFrame, tagged = false): number {
  const perPacket = tagged ? PICTURE_PACKET_OCTETS + VLAN_TAG_OCTETS : PICTURE_PACKET_OCTETS;
  return frame.data_octets + frame.row_headers * ROW_HEADER_OCTETS + frame.packets * perPacket;
}

/** Octets of one packed frame at the IP layer. */
export function frameIpOctets(frame: PackedFrame): number {
  const perPacket = IP_UDP_RTP_OCTETS + SEQUENCE_OCTETS;
  return frame.data_octets + frame.row_headers * ROW_HEADER_OCTETS + frame.packets * perPacket;
}

/** Octets a frame at a frame rate, in bits a second. */
export function octetsAtRate_bits_per_second(octets_per_frame: number, rate: FrameRate): number {
  return (octets_per_frame * 8 * rate.numerator) / rate.denominator;
}

/**
 * Load of an uncompressed picture on the wire, without its sound.
 *
 * @throws PhysicsError when the picture cannot exist.
 */
export function pictureLoad_bits_per_second(
  picture: Picture,
  packing: Packing = 'equal',
  tagged = false,
): number {
  return octetsAtRate_bits_per_second(frameWireOctets(packFrame(picture, packing), tagged), picture.rate);
}

/**
 * Approximate load of VSF TR-05:2018 §7.2.1 (second-hand), an independent check on the packings: packets = 1 +
 * INT(width x height / (INT(1426 / group octets) x group pixels)), each of 8 x (its samples + 94) bits.
 *
 * @throws PhysicsError when the picture cannot exist.
 */
export function approximateLoad(picture: Picture): {
  packets: number;
  bits_per_packet: number;
  bits_per_second: number;
} {
  checkPicture(picture);
  const group = pixelGroup(picture.sampling, picture.depth_bits);
  const groups = Math.floor(1426 / group.octets);
  const packets = 1 + Math.floor((picture.width * picture.height) / (groups * group.pixels));
  const bits_per_packet = 8 * (groups * group.octets + 94);
  const bits_per_second = (packets * bits_per_packet * picture.rate.numerator) / picture.rate.denominator;
  return { packets, bits_per_packet, bits_per_second };
}

/** `pictureLoad_bits_per_second` with its working. */
export function explainPictureLoad(picture: Picture, packing: Packing = 'equal', tagged = false): Explained {
  const layout = layOut(picture);
  const frame = packFrame(picture, packing);
  const value = octetsAtRate_bits_per_second(frameWireOctets(frame, tagged), picture.rate);
  const working = makeWorking({
    figure: `${formatRaster(picture)} ${picture.sampling} ${picture.depth_bits} bit, uncompressed, on the wire`,
    rule: `${packing === 'equal' ? 'general packing, equal packets for every row' : 'block packing'}; ${tagged ? 'one VLAN tag a packet' : 'no VLAN tag'}; preamble and gap between packets counted`,
    formula: '(samples + row headers x 6 octets + packets x overhead) x 8 x rate',
    inputs: [
      ['samples', `${frame.data_octets} octets`],
      ['row headers', String(frame.row_headers)],
      ['packets', String(frame.packets)],
      ['overhead', `${ethernetOctets(tagged) + IP_UDP_RTP_OCTETS + SEQUENCE_OCTETS} octets`],
      ['rate', formatRatio(picture.rate)],
    ],
    result: formatRate(value),
    ...HEADER_SOURCE,
    steps: [explainPackets(layout, frame, packing), explainGroup(picture, layout.group)],
  });
  return { value, working };
}

function explainPackets(layout: Layout, frame: PackedFrame, packing: Packing): Working {
  const rows = layout.rowsPerField * layout.fields;
  const what = layout.group.rows === 2 ? 'pairs of rows' : 'rows';
  const result = `${frame.packets} packets`;
  if (packing === 'block') {
    const samplesPerField = frame.data_octets / layout.fields;
    return makeWorking({
      figure: 'packets in a frame',
      rule: 'block packing: 7 times 180 octets a packet, running on from row to row; fields share no packet',
      formula: 'fields x round up(samples of a field / 1260 octets)',
      inputs: [
        ['fields', String(layout.fields)],
        ['samples of a field', `${samplesPerField} octets`],
      ],
      result,
      ...BLOCK_PACKING_SOURCE,
    });
  }
  const perRow = frame.packets / rows;
  return makeWorking({
    figure: 'packets in a frame',
    rule: `equal packets: the fewest whose samples fit ${SAMPLE_ROOM_OCTETS} octets${layout.groupsPerRow % perRow === 0 ? '' : '; no number divides the row, so its last packet is shorter'}`,
    formula: `${what} x packets each`,
    inputs: [
      [what, String(rows)],
      [
        'packets each',
        `${perRow} (${formatNumber(layout.groupsPerRow / perRow, 1)} groups of ${layout.group.octets} octets)`,
      ],
    ],
    result,
    ...EQUAL_PACKING_SOURCE,
  });
}

function explainGroup(picture: Picture, group: PixelGroup): Working {
  return makeWorking({
    figure: 'pixel group',
    rule: `the fewest pixels of ${picture.sampling} at ${picture.depth_bits} bit that fill whole octets`,
    formula: '',
    inputs: [],
    result: `${group.octets} octets for ${group.pixels} pixels`,
    ...PIXEL_GROUP_SOURCE,
  });
}
