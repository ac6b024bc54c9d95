import {
  CHANNELS_PER_SOUND_FLOW,
  soundFlowLoad_bits_per_second,
  soundLoad_bits_per_second,
  soundPayload_octets,
} from '../../src/physics/audio-flow.ts';
import {
  IP_UDP_RTP_OCTETS,
  RTP_OCTETS,
  UDP_LIMIT_OCTETS,
  UDP_OCTETS,
} from '../../src/physics/packet-headers.ts';
import { type Check, published } from './source.ts';

const LARGEST_PAYLOAD_OCTETS = UDP_LIMIT_OCTETS - UDP_OCTETS - RTP_OCTETS;

published({ source: 'SMPTE ST 2110-30:2025 Table 2, levels', label: 'second-hand' }, [
  { what: 'channels of level A at most', got: () => CHANNELS_PER_SOUND_FLOW, expected: 8 },
  {
    what: 'level A, fullest packet, octets',
    got: () => soundPayload_octets(8, 48_000, 24, 1000),
    expected: 1152,
  },
  {
    what: 'level AX, fullest packet, octets',
    got: () => soundPayload_octets(4, 96_000, 24, 1000),
    expected: 1152,
  },
  {
    what: 'level C, fullest packet, octets',
    got: () => soundPayload_octets(64, 48_000, 24, 8000),
    expected: 1152,
  },
  {
    what: 'level CX, fullest packet, octets',
    got: () => soundPayload_octets(32, 96_000, 24, 8000),
    expected: 1152,
  },
  { what: 'largest RTP payload, octets', got: () => LARGEST_PAYLOAD_OCTETS, expected: 1440 },
  {
    id: 'W2.4',
    what: 'most channels of 24 bit, 48 kHz in one packet of 1 ms',
    got: () => Math.floor(LARGEST_PAYLOAD_OCTETS / soundPayload_octets(1)),
    expected: 10,
  },
]);

published(
  {
    source: 'trade article "SMPTE ST 2110-30: a fair hearing for audio", radioworld.com',
    label: 'published',
  },
  [
    {
      what: 'one channel before headers, Mb/s',
      got: () => (soundPayload_octets(1) * 8 * 1000) / 1e6,
      expected: 1.152,
    },
    {
      what: 'stereo before headers, Mb/s',
      got: () => (soundPayload_octets(2) * 8 * 1000) / 1e6,
      expected: 2.304,
    },
  ],
);

/** Channels, kHz, bits, packets a second; payload octets; IP layer and wire in Mb/s. */
const FLOWS: readonly (readonly [number, number, number, number, number, number, number])[] = [
  [1, 48, 24, 1000, 144, 1.472, 1.776],
  [2, 48, 24, 1000, 288, 2.624, 2.928],
  [8, 48, 24, 1000, 1152, 9.536, 9.84],
  [8, 48, 16, 1000, 768, 6.464, 6.768],
  [2, 48, 24, 8000, 36, 4.864, 7.296],
  [8, 48, 24, 8000, 144, 11.776, 14.208],
  [16, 48, 24, 8000, 288, 20.992, 23.424],
  [64, 48, 24, 8000, 1152, 76.288, 78.72],
  [4, 96, 24, 1000, 1152, 9.536, 9.84],
  [8, 96, 24, 8000, 288, 20.992, 23.424],
  [32, 96, 24, 8000, 1152, 76.288, 78.72],
];

published(
  { source: 'AES67 and ST 2110-30 packets with RFC 791, 768, 3550 headers: sound flows', label: 'derived' },
  [
    ...FLOWS.flatMap(([channels, kilohertz, bits, packets, octets, ip, wire]): Check[] => {
      const name = `${channels} x ${kilohertz} kHz x ${bits} bit, ${packets} packets/s`;
      const payload = () => soundPayload_octets(channels, kilohertz * 1000, bits, packets);
      const load = () => soundFlowLoad_bits_per_second(channels, kilohertz * 1000, bits, packets);
      return [
        { what: `${name}: payload octets`, got: payload, expected: octets },
        {
          what: `${name}: IP layer, Mb/s`,
          got: () => ((payload() + IP_UDP_RTP_OCTETS) * 8 * packets) / 1e6,
          expected: ip,
        },
        { what: `${name}: wire, Mb/s`, got: () => load() / 1e6, expected: wire },
      ];
    }),
    {
      id: 'W2.1',
      what: '8 channels, 48 kHz, 24 bit, 1 ms: wire, Mb/s',
      got: () => soundLoad_bits_per_second(8) / 1e6,
      expected: 9.84,
      within: 0.01,
    },
    {
      id: 'W2.2',
      what: 'the same at the IP layer, Mb/s',
      got: () => ((soundPayload_octets(8) + IP_UDP_RTP_OCTETS) * 8 * 1000) / 1e6,
      expected: 9.536,
      within: 0.01,
    },
    {
      id: 'W2.3',
      what: '64 channels, 125 microseconds: wire, Mb/s',
      got: () => soundFlowLoad_bits_per_second(64, 48_000, 24, 8000) / 1e6,
      expected: 78.72,
      within: 0.05,
    },
  ],
);
