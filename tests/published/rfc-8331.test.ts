import { ANCILLARY_BITS_PER_SECOND } from '../../src/physics/flows.ts';
import { IP_UDP_RTP_OCTETS, LEAST_FRAME_DATA_OCTETS, wireOctets } from '../../src/physics/packet-headers.ts';
import { published } from './source.ts';

/** RFC 8331 §2: the header behind RTP of a packet with no ancillary data. */
const EMPTY_HEADER_OCTETS = 8;

published({ source: 'RFC 8331 §2, empty packets; RFC 894, least frame', label: 'derived' }, [
  { what: 'least data of a frame, octets', got: () => LEAST_FRAME_DATA_OCTETS, expected: 46 },
  {
    what: '60 empty packets a second, Mb/s',
    got: () => (60 * wireOctets(IP_UDP_RTP_OCTETS + EMPTY_HEADER_OCTETS) * 8) / 1e6,
    expected: 0.04,
    within: 0.005,
  },
]);

published({ source: 'ancillary data in ordinary use: 50 to 100 kb/s a flow', label: 'common practice' }, [
  { what: 'allowance of a picture, kb/s', got: () => ANCILLARY_BITS_PER_SECOND / 1000, expected: 100 },
]);
