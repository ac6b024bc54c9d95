import {
  SDI_INTERFACES,
  sdiRate_bits_per_second,
  sdiWays,
  smallestSdi,
  totalRaster,
} from '../../src/physics/sdi.ts';
import { picture } from './pictures.ts';
import { type Check, published } from './source.ts';

const gigabits = (format: string) => () => (sdiRate_bits_per_second(picture(format)) ?? Number.NaN) / 1e9;
const carriedBy = (format: string) => () => smallestSdi(picture(format))?.name ?? 'none';
const rateOf = (name: string) => () =>
  (SDI_INTERFACES.find((one) => one.name === name)?.rate_bits_per_second ?? Number.NaN) / 1e9;

published({ source: 'RFC 3497 §1 and SMPTE ST 292-1:2018, rate', label: 'published' }, [
  { what: 'HD-SDI, Gb/s', got: rateOf('HD-SDI'), expected: 1.485 },
  { what: '1080i59.94, Gb/s', got: gigabits('1080i59.94'), expected: 1.485 / 1.001 },
]);

published({ source: 'SMPTE ST 259, 424, 2081-1, 2082-1, rates', label: 'second-hand' }, [
  { what: 'SD-SDI, Gb/s', got: rateOf('SD-SDI'), expected: 0.27 },
  { what: '3G-SDI, Gb/s', got: rateOf('3G-SDI'), expected: 2.97 },
  { what: '6G-SDI, Gb/s', got: rateOf('6G-SDI'), expected: 5.94 },
  { what: '12G-SDI, Gb/s', got: rateOf('12G-SDI'), expected: 11.88 },
  { what: '525 lines, 59.94 fields, Gb/s', got: gigabits('480i59.94'), expected: 0.27 },
  { what: '625 lines, 50 fields, Gb/s', got: gigabits('576i50'), expected: 0.27 },
]);

/** The pictures that each standard lists. */
const CARRIED: readonly (readonly [string, string])[] = [
  ['480i59.94', 'SD-SDI'],
  ['576i50', 'SD-SDI'],
  ['720p25', 'HD-SDI'],
  ['720p50', 'HD-SDI'],
  ['720p60', 'HD-SDI'],
  ['1080i50', 'HD-SDI'],
  ['1080i59.94', 'HD-SDI'],
  ['1080i60', 'HD-SDI'],
  ['1080p24', 'HD-SDI'],
  ['1080p30', 'HD-SDI'],
  ['1080p50', '3G-SDI'],
  ['1080p59.94', '3G-SDI'],
  ['1080p60', '3G-SDI'],
  ['1080p30 4:4:4 10 bit', '3G-SDI'],
  ['1080p30 4:4:4 12 bit', '3G-SDI'],
  ['2160p24', '6G-SDI'],
  ['2160p30', '6G-SDI'],
  ['1080p60 4:4:4 10 bit', '6G-SDI'],
  ['1080p60 4:2:2 12 bit', '6G-SDI'],
  ['2160p50', '12G-SDI'],
  ['2160p59.94', '12G-SDI'],
  ['2160p60', '12G-SDI'],
  ['2160p30 4:4:4 10 bit', '12G-SDI'],
];

published(
  {
    source: 'SMPTE ST 259, 292-1, 425-1, 2081-10, 2082-10: pictures of each interface',
    label: 'second-hand',
  },
  CARRIED.map(
    ([format, expected]): Check => ({ what: `${format} rides on`, got: carriedBy(format), expected }),
  ),
);

const ways = (format: string) => () =>
  sdiWays(picture(format))
    .map((way) => `${way.links} x ${way.interface.name}`)
    .join(', ');

published({ source: 'SMPTE ST 372, 425-5, 2082-11: two and four links', label: 'from memory' }, [
  { what: '1080p60', got: ways('1080p60'), expected: '2 x HD-SDI, 1 x 3G-SDI, 1 x 6G-SDI, 1 x 12G-SDI' },
  { what: '2160p60', got: ways('2160p60'), expected: '4 x 3G-SDI, 2 x 6G-SDI, 1 x 12G-SDI' },
  { what: '2160p60 4:4:4', got: ways('2160p60 4:4:4'), expected: '4 x 6G-SDI, 2 x 12G-SDI' },
  { what: '4320p60', got: ways('4320p60'), expected: '4 x 12G-SDI' },
]);

/** Samples a line and lines by height and rate. */
const TOTALS: readonly (readonly [string, string])[] = [
  ['1080p60', '2200 x 1125'],
  ['1080p30', '2200 x 1125'],
  ['1080p59.94', '2200 x 1125'],
  ['1080p29.97', '2200 x 1125'],
  ['1080p50', '2640 x 1125'],
  ['1080p25', '2640 x 1125'],
  ['1080p24', '2750 x 1125'],
  ['720p60', '1650 x 750'],
  ['720p50', '1980 x 750'],
  ['2160p60', '4400 x 2250'],
  ['2160p50', '5280 x 2250'],
  ['2160p24', '5500 x 2250'],
];

published(
  {
    source: 'pixel clock over line rate of the CTA-861 list; ITU-R BT.709-6 Part 2 items 5.2, 5.6, 5.8',
    label: 'derived',
  },
  [
    ...TOTALS.map(
      ([format, expected]): Check => ({
        what: `${format}: whole raster`,
        got: () => {
          const total = totalRaster(picture(format));
          return total === undefined ? 'none' : `${total.samples_per_line} x ${total.lines}`;
        },
        expected,
      }),
    ),
    { id: 'W3.1', what: '1080p60: serial rate, Gb/s', got: gigabits('1080p60'), expected: 2.97 },
    {
      id: 'W3.2',
      what: '1080p59.94: serial rate, Gb/s',
      got: gigabits('1080p59.94'),
      expected: 2.967033,
      within: 0.000001,
    },
    { id: 'W3.3', what: '2160p50: serial rate, Gb/s', got: gigabits('2160p50'), expected: 11.88 },
  ],
);
