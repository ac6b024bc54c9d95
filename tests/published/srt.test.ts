import {
  largestStreamPayload_octets,
  RECOVERY_SHARE,
  recording_bytes,
  SRT_HEADER_OCTETS,
  SRT_PAYLOAD_OCTETS,
  STREAM_HEADER_FACTOR,
  streamsLoad_bits_per_second,
  usableUpload_bits_per_second,
} from '../../src/physics/uplink.ts';
import { published } from './source.ts';

const streams = () => streamsLoad_bits_per_second([6e6, 0.128e6]);

published({ source: 'SRT reference documentation, Debian libsrt-doc 1.5.1', label: 'published' }, [
  { what: 'header, octets', got: () => SRT_HEADER_OCTETS, expected: 16 },
  { what: 'live payload, octets', got: () => SRT_PAYLOAD_OCTETS, expected: 1316 },
  { what: 'recovery overhead', got: () => RECOVERY_SHARE, expected: 0.25 },
  {
    id: 'W8.6',
    what: 'largest payload on a path of 1500 octets',
    got: () => largestStreamPayload_octets(1500),
    expected: 1456,
  },
]);

published({ source: 'SRT overhead and headers over UDP and IPv4', label: 'derived' }, [
  {
    id: 'W8.1',
    what: '6 + 0.128 Mb/s with recovery, before headers, Mb/s',
    got: () => streams() / STREAM_HEADER_FACTOR / 1e6,
    expected: 7.66,
    within: 0.01,
  },
  { id: 'W8.2', what: 'header factor', got: () => STREAM_HEADER_FACTOR, expected: 1.0334, within: 0.0001 },
  {
    id: 'W8.3',
    what: 'W8.1 at the IP layer, Mb/s',
    got: () => streams() / 1e6,
    expected: 7.92,
    within: 0.02,
  },
  {
    id: 'W8.5',
    what: '8 h at 50 Mb/s, GB',
    got: () => recording_bytes(50e6, 8 * 3600) / 1e9,
    expected: 180,
  },
  { what: '1 h at 1 Mb/s, GB', got: () => recording_bytes(1e6, 3600) / 1e9, expected: 0.45 },
]);

published({ source: 'plan on half of the sustained upload', label: 'common practice' }, [
  { id: 'W8.4', what: 'of 20 Mb/s, Mb/s', got: () => usableUpload_bits_per_second(20e6) / 1e6, expected: 10 },
]);
