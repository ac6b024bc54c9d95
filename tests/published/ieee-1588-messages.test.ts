import { TIMING_MESSAGE_OCTETS, timingTraffic_bits_per_second } from '../../src/physics/timing-traffic.ts';
import { published } from './source.ts';

published({ source: 'message layouts in github.com/richardcochran/linuxptp msg.h', label: 'published' }, [
  { what: 'Sync, octets', got: () => TIMING_MESSAGE_OCTETS.sync, expected: 44 },
  { what: 'Follow_Up, octets', got: () => TIMING_MESSAGE_OCTETS.follow_up, expected: 44 },
  { what: 'Delay_Req, octets', got: () => TIMING_MESSAGE_OCTETS.delay_request, expected: 44 },
  { what: 'Delay_Resp, octets', got: () => TIMING_MESSAGE_OCTETS.delay_response, expected: 54 },
  { id: 'W2.10', what: 'Announce, octets', got: () => TIMING_MESSAGE_OCTETS.announce, expected: 64 },
]);

published({ source: 'public captures of a Sync message: 86 octets on Ethernet', label: 'second-hand' }, [
  {
    id: 'W2.9',
    what: 'Sync over UDP and IPv4 in Ethernet, without check sequence, octets',
    got: () => 14 + 20 + 8 + TIMING_MESSAGE_OCTETS.sync,
    expected: 86,
  },
]);

published({ source: 'linuxptp message sizes with RFC 791, RFC 768 and Ethernet headers', label: 'derived' }, [
  {
    id: 'W2.8',
    what: '8 Sync, 8 Follow_Up and 4 Announce a second on the wire, kb/s',
    got: () =>
      timingTraffic_bits_per_second(
        new Map([
          ['sync', 8],
          ['follow_up', 8],
          ['announce', 4],
        ]),
      ) / 1000,
    expected: 18.24,
    percent: 1,
  },
]);
