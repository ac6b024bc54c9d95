import { flowsThatFit } from '../../src/physics/capacity.ts';
import {
  approximateLoad,
  frameIpOctets,
  frameWireOctets,
  octetsAtRate_bits_per_second,
  packFrame,
  packFullest,
  pictureLoad_bits_per_second,
} from '../../src/physics/packing.ts';
import { activePayload_bits_per_second } from '../../src/physics/pixel-group.ts';
import { picture } from './pictures.ts';
import { type Check, published } from './source.ts';

const COMPUTED = 'computed apart from this project from RFC 4175, ST 2110-20 and RFC 2544';

/** Packets a frame: equal, block, row headers of block, fullest, TR-05. */
const PACKETS: readonly (readonly [string, number, number, number, number, number])[] = [
  ['720p50', 2880, 1829, 2537, 1614, 1617],
  ['1080p50', 4320, 4115, 5143, 3629, 3638],
  ['1080i50', 4320, 4116, 5144, 3630, 3638],
  ['2160p50', 17_280, 16_458, 18_515, 14_509, 14_552],
];

published(
  { source: `${COMPUTED}: packets a frame, 4:2:2 10 bit`, label: 'derived' },
  PACKETS.flatMap(([format, equal, block, headers, fullest, approximate]): Check[] => [
    {
      what: `${format}, equal packets`,
      got: () => packFrame(picture(format), 'equal').packets,
      expected: equal,
    },
    {
      what: `${format}, block packing`,
      got: () => packFrame(picture(format), 'block').packets,
      expected: block,
    },
    {
      what: `${format}, row headers of block packing`,
      got: () => packFrame(picture(format), 'block').row_headers,
      expected: headers,
    },
    { what: `${format}, fullest`, got: () => packFullest(picture(format)).packets, expected: fullest },
    {
      what: `${format}, approximate formula`,
      got: () => approximateLoad(picture(format)).packets,
      expected: approximate,
    },
  ]),
);

/** Gb/s: active payload; IP layer, equal; wire, equal; the same tagged; wire, block; wire, fullest; TR-05. */
type LoadRow = readonly [string, number, number, number, number, number, number, number];

const LOADS: readonly LoadRow[] = [
  ['720p23.976', 0.4419, 0.4684, 0.4894, 0.4916, 0.4729, 0.4694, 0.4711],
  ['720p24', 0.4424, 0.4689, 0.4899, 0.4921, 0.4734, 0.4698, 0.4716],
  ['720p25', 0.4608, 0.4884, 0.5103, 0.5126, 0.4931, 0.4894, 0.4912],
  ['720p29.97', 0.5524, 0.5856, 0.6118, 0.6146, 0.5911, 0.5867, 0.5889],
  ['720p30', 0.553, 0.5861, 0.6124, 0.6152, 0.5917, 0.5873, 0.5895],
  ['720p50', 0.9216, 0.9769, 1.0207, 1.0253, 0.9862, 0.9788, 0.9825],
  ['720p59.94', 1.1048, 1.1711, 1.2236, 1.2291, 1.1823, 1.1734, 1.1778],
  ['720p60', 1.1059, 1.1723, 1.2248, 1.2303, 1.1835, 1.1746, 1.179],
  ['1080p23.976', 0.9943, 1.0341, 1.0656, 1.0689, 1.0634, 1.0554, 1.06],
  ['1080p24', 0.9953, 1.0351, 1.0667, 1.07, 1.0645, 1.0564, 1.061],
  ['1080p25', 1.0368, 1.0783, 1.1111, 1.1146, 1.1088, 1.1005, 1.1052],
  ['1080p29.97', 1.2429, 1.2926, 1.332, 1.3361, 1.3292, 1.3192, 1.3249],
  ['1080p30', 1.2442, 1.2939, 1.3333, 1.3375, 1.3306, 1.3206, 1.3263],
  ['1080p50', 2.0736, 2.1565, 2.2222, 2.2291, 2.2176, 2.2009, 2.2104],
  ['1080p59.94', 2.4858, 2.5853, 2.664, 2.6723, 2.6585, 2.6385, 2.6499],
  ['1080p60', 2.4883, 2.5879, 2.6666, 2.6749, 2.6611, 2.6411, 2.6525],
  ['1080i50', 1.0368, 1.0783, 1.1111, 1.1146, 1.1088, 1.1005, 1.1052],
  ['1080i59.94', 1.2429, 1.2926, 1.332, 1.3361, 1.3293, 1.3193, 1.3249],
  ['1080i60', 1.2442, 1.2939, 1.3333, 1.3375, 1.3306, 1.3206, 1.3263],
  ['2160p23.976', 3.9773, 4.1364, 4.2624, 4.2756, 4.2512, 4.2191, 4.2398],
  ['2160p24', 3.9813, 4.1406, 4.2666, 4.2799, 4.2554, 4.2234, 4.2441],
  ['2160p25', 4.1472, 4.3131, 4.4444, 4.4582, 4.4327, 4.3993, 4.4209],
  ['2160p29.97', 4.9717, 5.1705, 5.328, 5.3445, 5.314, 5.2739, 5.2998],
  ['2160p30', 4.9766, 5.1757, 5.3333, 5.3499, 5.3193, 5.2792, 5.3051],
  ['2160p50', 8.2944, 8.6262, 8.8888, 8.9165, 8.8655, 8.7987, 8.8418],
  ['2160p59.94', 9.9433, 10.3411, 10.6559, 10.6891, 10.628, 10.5478, 10.5996],
  ['2160p60', 9.9533, 10.3514, 10.6666, 10.6998, 10.6386, 10.5584, 10.6102],
];

/** The table is rounded to four decimals. */
const ROUNDING = 0.000_051;

published(
  { source: `${COMPUTED}: load tables, 4:2:2 10 bit, Gb/s`, label: 'derived' },
  LOADS.flatMap(([format, active, ip, wire, tagged, block, fullest, approximate]): Check[] => {
    const row = (what: string, got: () => number, expected: number): Check => ({
      what: `${format}, ${what}`,
      got: () => got() / 1e9,
      expected,
      within: ROUNDING,
    });
    const at = picture(format);
    return [
      row('active payload', () => activePayload_bits_per_second(at), active),
      row('IP layer', () => octetsAtRate_bits_per_second(frameIpOctets(packFrame(at, 'equal')), at.rate), ip),
      row('wire, equal packets', () => pictureLoad_bits_per_second(at, 'equal'), wire),
      row('wire, equal packets, tagged', () => pictureLoad_bits_per_second(at, 'equal', true), tagged),
      row('wire, block packing', () => pictureLoad_bits_per_second(at, 'block'), block),
      row(
        'wire, fullest',
        () => octetsAtRate_bits_per_second(frameWireOctets(packFullest(at)), at.rate),
        fullest,
      ),
      row('approximate formula', () => approximateLoad(at).bits_per_second, approximate),
    ];
  }),
);

const TEN_GIGABIT = 10e9;

/** Flows in one direction of 10 Gb/s: wire load in Gb/s, how many, Gb/s left over, how many when packed fullest. */
const FITS: readonly (readonly [string, number, number, number, number])[] = [
  ['720p50', 1.021, 9, 0.814, 10],
  ['720p59.94', 1.224, 8, 0.211, 8],
  ['1080i50', 1.111, 9, 0, 9],
  ['1080i59.94', 1.332, 7, 0.676, 7],
  ['1080p25', 1.111, 9, 0, 9],
  ['1080p29.97', 1.332, 7, 0.676, 7],
  ['1080p50', 2.222, 4, 1.111, 4],
  ['1080p59.94', 2.664, 3, 2.008, 3],
  ['1080p60', 2.667, 3, 2, 3],
  ['2160p25', 4.444, 2, 1.111, 2],
  ['2160p29.97', 5.328, 1, 4.672, 1],
  ['2160p50', 8.889, 1, 1.111, 1],
  ['2160p59.94', 10.656, 0, 10, 0],
];

published(
  { source: `${COMPUTED}: flows that fit one direction of 10 Gb/s`, label: 'derived' },
  FITS.flatMap(([format, load, count, left, countFullest]): Check[] => {
    const at = picture(format);
    const wire = () => pictureLoad_bits_per_second(at);
    const fullest = () => octetsAtRate_bits_per_second(frameWireOctets(packFullest(at)), at.rate);
    const flows = () => flowsThatFit(TEN_GIGABIT, wire());
    return [
      { what: `${format}: load, Gb/s`, got: () => wire() / 1e9, expected: load, within: 0.000_51 },
      { what: `${format}: flows`, got: flows, expected: count },
      {
        what: `${format}: left over, Gb/s`,
        got: () => (TEN_GIGABIT - flows() * wire()) / 1e9,
        expected: left,
        within: 0.000_51,
      },
      {
        what: `${format}: flows, fullest packing`,
        got: () => flowsThatFit(TEN_GIGABIT, fullest()),
        expected: countFullest,
      },
    ];
  }),
);
