/**
 * Precision time messages on the network (IEEE 1588, SMPTE ST 2059-2): too few to count as load. Source: the message
 * layouts as in an open implementation (linuxptp msg.h; published).
 */
import { IPV4_OCTETS, UDP_OCTETS, wireOctets } from './packet-headers.ts';
import { requireWithin } from './physics-error.ts';

/** Header, port identity and time stamp, from which the messages are made. */
const HEADER_OCTETS = 34;
const STAMP_OCTETS = 10;
const PORT_IDENTITY_OCTETS = 10;

export const TIMING_MESSAGE_OCTETS = {
  sync: HEADER_OCTETS + STAMP_OCTETS,
  follow_up: HEADER_OCTETS + STAMP_OCTETS,
  delay_request: HEADER_OCTETS + STAMP_OCTETS,
  delay_response: HEADER_OCTETS + STAMP_OCTETS + PORT_IDENTITY_OCTETS,
  /** Offset to UTC 2, reserved 1, priority 1, clock quality 4, priority 1, identity 8, steps 2, time source 1. */
  announce: HEADER_OCTETS + STAMP_OCTETS + 2 + 1 + 1 + 4 + 1 + 8 + 2 + 1,
} as const;

export type TimingMessage = keyof typeof TIMING_MESSAGE_OCTETS;

/** Bits a second on the wire of messages that come so often each second. @throws PhysicsError for negative counts */
export function timingTraffic_bits_per_second(perSecond: ReadonlyMap<TimingMessage, number>): number {
  let bits = 0;
  for (const [message, count] of perSecond) {
    const datagram_octets = TIMING_MESSAGE_OCTETS[message] + UDP_OCTETS + IPV4_OCTETS;
    bits += requireWithin('messages a second', count, 0, 1e6) * wireOctets(datagram_octets) * 8;
  }
  return bits;
}
