import { flowsThatFit, judgeLoad } from '../../src/physics/capacity.ts';
import { storeAndForward_s } from '../../src/physics/delay.ts';
import {
  ETHERNET_OCTETS,
  IPV4_OCTETS,
  mostFramesPerSecond,
  PICTURE_PACKET_OCTETS,
  ROW_HEADER_OCTETS,
  RTP_OCTETS,
  UDP_OCTETS,
  VLAN_TAG_OCTETS,
} from '../../src/physics/packet-headers.ts';
import { pictureLoad_bits_per_second } from '../../src/physics/packing.ts';
import { picture } from './pictures.ts';
import { published } from './source.ts';

published({ source: 'RFC 2544 appendix B, frame rates of Ethernet', label: 'published' }, [
  {
    id: 'W10.4',
    what: '10 Mb/s, frames of 1518 octets: most frames a second',
    got: () => mostFramesPerSecond(10e6, 1518),
    expected: 812,
  },
  {
    id: 'W10.5',
    what: '10 Mb/s, frames of 64 octets: most frames a second',
    got: () => mostFramesPerSecond(10e6, 64),
    expected: 14_880,
  },
]);

published(
  {
    source: 'RFC 791, RFC 768, RFC 3550 §5.1, kernel headers if_ether.h and if_vlan.h: header sizes',
    label: 'published',
  },
  [
    { what: 'IPv4 header', got: () => IPV4_OCTETS, expected: 20 },
    { what: 'UDP header', got: () => UDP_OCTETS, expected: 8 },
    { what: 'RTP fixed header', got: () => RTP_OCTETS, expected: 12 },
    {
      what: 'preamble, Ethernet header, check sequence, gap',
      got: () => ETHERNET_OCTETS,
      expected: 8 + 14 + 4 + 12,
    },
    { what: 'VLAN tag', got: () => VLAN_TAG_OCTETS, expected: 4 },
    {
      what: 'a packet with one row header, on the wire',
      got: () => PICTURE_PACKET_OCTETS + ROW_HEADER_OCTETS,
      expected: 86,
    },
  ],
);

const load_1080 = () => pictureLoad_bits_per_second(picture('1080p59.94'));
const load_2160 = () => pictureLoad_bits_per_second(picture('2160p59.94'));

published({ source: 'RFC 2544 appendix B and RFC 4175: load on the wire', label: 'derived' }, [
  {
    id: 'W1.5',
    what: '1080p59.94, equal packets, Gb/s',
    got: () => load_1080() / 1e9,
    expected: 2.664,
    percent: 0.5,
  },
  {
    id: 'W1.7',
    what: 'such flows in one direction of 10 Gb/s',
    got: () => flowsThatFit(10e9, load_1080()),
    expected: 3,
  },
  {
    id: 'W1.8',
    what: '2160p59.94 on 10 Gb/s, per cent',
    got: () => load_2160() / 1e8,
    expected: 106.56,
    percent: 0.5,
  },
  {
    what: '2160p59.94 on 10 Gb/s is an error',
    got: () => judgeLoad(load_2160(), 10e9),
    expected: 'over capacity',
  },
  {
    id: 'W1.12',
    what: '1080p59.94 flows in 25 Gb/s',
    got: () => flowsThatFit(25e9, load_1080()),
    expected: 9,
  },
  {
    what: 'nine of them are over the headroom',
    got: () => judgeLoad(9 * load_1080(), 25e9, 0.1),
    expected: 'over headroom',
  },
  { what: 'eight of them fit', got: () => judgeLoad(8 * load_1080(), 25e9, 0.1), expected: 'fits' },
  {
    id: 'W7.5',
    what: '1518 octets at 10 Gb/s: store and forward, microseconds',
    got: () => storeAndForward_s(1518 + 20, 10e9) * 1e6,
    expected: 1.2304,
    within: 0.001,
  },
]);
