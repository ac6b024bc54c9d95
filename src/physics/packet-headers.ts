/** Octets that a packet costs besides its data. */
import type { Source } from './working.ts';

export const HEADER_SOURCE: Source = {
  source:
    'RFC 791, RFC 768, RFC 3550 §5.1, RFC 4175 §4.2; Ethernet frame, preamble and gap as in RFC 2544 appendix B',
  label: 'published',
};

/** Preamble and start delimiter 8, header 14, check sequence 4, gap to the next packet 12. */
export const ETHERNET_OCTETS = 8 + 14 + 4 + 12;
/** One IEEE 802.1Q tag. */
export const VLAN_TAG_OCTETS = 4;
export const IPV4_OCTETS = 20;
export const UDP_OCTETS = 8;
export const RTP_OCTETS = 12;
/** Extended sequence number of RFC 4175. */
export const SEQUENCE_OCTETS = 2;
/** Length, row and offset of one run of samples in RFC 4175. */
export const ROW_HEADER_OCTETS = 6;
/** A packet has one to three row headers: SMPTE ST 2110-20 (second-hand). */
export const MOST_ROW_HEADERS = 3;
/** UDP header and all RTP data: SMPTE ST 2110-10 §6.3, standard size limit (second-hand). */
export const UDP_LIMIT_OCTETS = 1460;
/** The least that a frame carries between header and check sequence: RFC 894 (46 octets). */
export const LEAST_FRAME_DATA_OCTETS = 46;

/** IP, UDP and RTP. */
export const IP_UDP_RTP_OCTETS = IPV4_OCTETS + UDP_OCTETS + RTP_OCTETS;
/** Room for samples behind one row header: 1432 octets. */
export const SAMPLE_ROOM_OCTETS =
  UDP_LIMIT_OCTETS - UDP_OCTETS - RTP_OCTETS - SEQUENCE_OCTETS - ROW_HEADER_OCTETS;
/** What a picture packet costs without any row header: 80 octets on the wire. */
export const PICTURE_PACKET_OCTETS = ETHERNET_OCTETS + IP_UDP_RTP_OCTETS + SEQUENCE_OCTETS;

/** Octets on the wire of Ethernet alone, with a tag where there is one: 38 or 42. */
export function ethernetOctets(tagged: boolean): number {
  return tagged ? ETHERNET_OCTETS + VLAN_TAG_OCTETS : ETHERNET_OCTETS;
}

/** Octets that a datagram of this size (IP header included) occupies on the wire, short frames filled up. */
export function wireOctets(datagram_octets: number, tagged = false): number {
  return Math.max(datagram_octets, LEAST_FRAME_DATA_OCTETS) + ethernetOctets(tagged);
}

/**
 * Most frames a second of one size (header and check sequence included, preamble and gap not): rate / ((octets + 20)
 * x 8), rounded down (RFC 2544 appendix B, published).
 */
export function mostFramesPerSecond(rate_bits_per_second: number, frame_octets: number): number {
  return Math.floor(rate_bits_per_second / ((frame_octets + 8 + 12) * 8));
}
