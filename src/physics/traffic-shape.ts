/**
 * How evenly a sender's packets must leave, and how much a receiver must hold. Source: SMPTE ST 2110-21 §6.3.2, §6.6,
 * §7.1.2-7.1.4, through a public quotation (second-hand).
 */

import { requireWhole } from './physics-error.ts';
import { type FrameRate, frameTime_s } from './rate.ts';

/** `narrow`: sends in the visible time only; `narrow linear`: evenly over the frame; `wide`: loosely. */
export type SenderType = 'narrow' | 'narrow linear' | 'wide';

export interface TrafficShape {
  /** Most packets a sender may be ahead of an even flow (C_MAX). */
  readonly most_ahead_packets: number;
  /** Packets a receiver must be able to hold (VRX_FULL). */
  readonly receiver_packets: number;
}

/** Share of the frame in which visible rows are sent, for progressive rasters. */
const ACTIVE_SHARE = 1080 / 1125;
/** MAXUDP at the standard size limit, as the quotation takes it. */
const LARGEST_DATAGRAM_OCTETS = 1500;

/** @throws PhysicsError when the number of packets is no whole number from 1 */
export function trafficShape(packets_per_frame: number, rate: FrameRate, type: SenderType): TrafficShape {
  requireWhole('packets in a frame', packets_per_frame, 1, 1e9);
  const perSecond = packets_per_frame / frameTime_s(rate);
  const buffer = (frames: number, drain: number) =>
    Math.max(Math.floor((1500 * frames) / LARGEST_DATAGRAM_OCTETS), Math.floor(perSecond / drain));
  if (type === 'wide') {
    return {
      most_ahead_packets: Math.max(16, Math.floor(perSecond / 21_600)),
      receiver_packets: buffer(720, 300),
    };
  }
  const share = type === 'narrow' ? ACTIVE_SHARE : 1;
  return {
    most_ahead_packets: Math.max(4, Math.floor(perSecond / (43_200 * share))),
    receiver_packets: buffer(8, 27_000),
  };
}

/** Time between the packets of a narrow sender: frame time x visible share / packets. */
export function packetSpacing_s(packets_per_frame: number, rate: FrameRate): number {
  return (frameTime_s(rate) * ACTIVE_SHARE) / requireWhole('packets in a frame', packets_per_frame, 1, 1e9);
}

/** When a narrow sender starts a progressive frame of 1080 rows: after 43 of its 1125 lines. */
export function firstPacketOffset_s(rate: FrameRate): number {
  return (frameTime_s(rate) * 43) / 1125;
}
