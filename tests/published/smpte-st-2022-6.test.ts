import { sdiOverIp } from '../../src/physics/sdi-over-ip.ts';
import { picture } from './pictures.ts';
import { type Check, published } from './source.ts';

/** Octets and datagrams a frame, datagrams a second, IP layer and wire in Gb/s. */
const ROWS: readonly (readonly [string, number, number, number, number, number])[] = [
  ['1080i50', 7_425_000, 5397, 134_925, 1.5371, 1.5781],
  ['1080p25', 7_425_000, 5397, 134_925, 1.5371, 1.5781],
  ['1080i59.94', 6_187_500, 4497, 134_775, 1.5354, 1.5763],
  ['720p50', 3_712_500, 2699, 134_950, 1.5374, 1.5784],
  ['720p59.94', 3_093_750, 2249, 134_805, 1.5357, 1.5767],
  ['1080p50', 7_425_000, 5397, 269_850, 3.0741, 3.1562],
  ['1080p59.94', 6_187_500, 4497, 269_550, 3.0707, 3.1527],
];

published({ source: 'SMPTE ST 2022-6:2012 §6.2-6.5', label: 'second-hand' }, [
  ...ROWS.flatMap(([format, octets, datagrams, perSecond, ip, wire]): Check[] => {
    const load = () => sdiOverIp(picture(format));
    return [
      { what: `${format}: octets a frame`, got: () => load().octets_per_frame, expected: octets },
      { what: `${format}: datagrams a frame`, got: () => load().datagrams_per_frame, expected: datagrams },
      {
        what: `${format}: datagrams a second`,
        got: () => load().datagrams_per_second,
        expected: perSecond,
        within: 0.5,
      },
      {
        what: `${format}: IP layer, Gb/s`,
        got: () => load().ip_bits_per_second / 1e9,
        expected: ip,
        within: 0.00006,
      },
      {
        what: `${format}: wire, Gb/s`,
        got: () => load().wire_bits_per_second / 1e9,
        expected: wire,
        within: 0.00006,
      },
    ];
  }),
  {
    id: 'W2.5',
    what: '1080p50 over 3G: datagrams a frame',
    got: () => sdiOverIp(picture('1080p50')).datagrams_per_frame,
    expected: 5397,
  },
]);

published(
  { source: 'SMPTE ST 2022-7:2019: about 270 datagrams per ms at 2.970 Gb/s', label: 'second-hand' },
  [
    {
      what: '1080p59.94: datagrams per ms',
      got: () => sdiOverIp(picture('1080p59.94')).datagrams_per_second / 1000,
      expected: 270,
      percent: 0.5,
    },
  ],
);
