import {
  FIXED_RATE_CLASSES,
  judgeDisplay,
  TMDS_CLASSES,
  tmdsCharacterRate_hz,
  tmdsTotal_bits_per_second,
  usableRate_bits_per_second,
} from '../../src/physics/display-interface.ts';
import { picture } from './pictures.ts';
import { type Check, published } from './source.ts';

const total = (format: string) => () => tmdsTotal_bits_per_second(picture(format)) / 1e9;
const megahertz = (format: string) => () => tmdsCharacterRate_hz(picture(format)) / 1e6;

/** 8 bit 4:4:4, 10 bit and 12 bit 4:4:4, 8 bit 4:2:0; Gb/s. */
const TOTALS: readonly (readonly [string, number, number, number, number?])[] = [
  ['1280x720p50', 2.2275, 2.7844, 3.3413],
  ['1280x720p60', 2.2275, 2.7844, 3.3413],
  ['1920x1080i60', 2.2275, 2.7844, 3.3413],
  ['1920x1080p24', 2.2275, 2.7844, 3.3413],
  ['1920x1080p50', 4.455, 5.5687, 6.6825],
  ['1920x1080p60', 4.455, 5.5687, 6.6825],
  ['1920x1080p120', 8.91, 11.1375, 13.365],
  ['3840x2160p24', 8.91, 11.1375, 13.365],
  ['3840x2160p25', 8.91, 11.1375, 13.365],
  ['3840x2160p30', 8.91, 11.1375, 13.365],
  ['3840x2160p50', 17.82, 22.275, 26.73, 8.91],
  ['3840x2160p60', 17.82, 22.275, 26.73, 8.91],
  ['3840x2160p100', 35.64, 44.55, 53.46, 17.82],
  ['3840x2160p120', 35.64, 44.55, 53.46, 17.82],
];

published({ source: 'pixel clocks of CTA-861 x depth / 8 x 10 bit x 3 lanes', label: 'derived' }, [
  ...TOTALS.flatMap(([raster, at8, at10, at12, at420]): Check[] => [
    { what: `${raster}, 8 bit 4:4:4`, got: total(`${raster} 4:4:4 8 bit`), expected: at8, within: 0.000_051 },
    {
      what: `${raster}, 12 bit 4:2:2 costs the same`,
      got: total(`${raster} 4:2:2 12 bit`),
      expected: at8,
      within: 0.000_051,
    },
    {
      what: `${raster}, 10 bit 4:4:4`,
      got: total(`${raster} 4:4:4 10 bit`),
      expected: at10,
      within: 0.000_051,
    },
    {
      what: `${raster}, 12 bit 4:4:4`,
      got: total(`${raster} 4:4:4 12 bit`),
      expected: at12,
      within: 0.000_051,
    },
    ...(at420 === undefined
      ? []
      : [
          {
            what: `${raster}, 8 bit 4:2:0`,
            got: total(`${raster} 4:2:0 8 bit`),
            expected: at420,
            within: 0.000_051,
          },
        ]),
  ]),
  {
    what: '1080p59.94 is 1080p60 / 1.001',
    got: total('1080p59.94 4:4:4 8 bit'),
    expected: 4.455 / 1.001,
  },
  { id: 'W4.3', what: '2160p30, 8 bit 4:4:4, Gb/s', got: total('2160p30 4:4:4 8 bit'), expected: 8.91 },
  { id: 'W4.5', what: '2160p60, 8 bit 4:2:0, Gb/s', got: total('2160p60 4:2:0 8 bit'), expected: 8.91 },
  {
    id: 'W4.6',
    what: '2160p60, 10 bit 4:4:4: characters, MHz',
    got: megahertz('2160p60 4:4:4 10 bit'),
    expected: 742.5,
  },
  {
    what: 'W4.6 is too big for 600 MHz',
    got: () => judgeDisplay(picture('2160p60 4:4:4 10 bit'), { character_rate_hz: 600e6 }),
    expected: 'too big',
  },
  {
    what: 'W4.6 fits four lanes of 6 Gb/s',
    got: () =>
      judgeDisplay(picture('2160p60 4:4:4 10 bit'), { lanes: { count: 4, rate_bits_per_second: 6e9 } }),
    expected: 'fits',
  },
  {
    what: '2160p120 8 bit on four lanes of 8 Gb/s depends on how blanking is sent',
    got: () =>
      judgeDisplay(picture('2160p120 4:4:4 8 bit'), { lanes: { count: 4, rate_bits_per_second: 8e9 } }),
    expected: 'doubtful',
  },
]);

published(
  {
    source: 'a public test-instrument specification: totals of 2.22, 4.455, 5.57, 8.91 and 17.82 Gb/s',
    label: 'second-hand',
  },
  [
    { what: '720p60, 8 bit', got: total('720p60 4:4:4 8 bit'), expected: 2.22, within: 0.01 },
    { id: 'W4.1', what: '1080p60, 8 bit 4:4:4', got: total('1080p60 4:4:4 8 bit'), expected: 4.455 },
    {
      id: 'W4.2',
      what: '1080p60, 10 bit 4:4:4 (printed 5.57)',
      got: total('1080p60 4:4:4 10 bit'),
      expected: 5.56875,
    },
    { what: '2160p30, 8 bit', got: total('2160p30 4:4:4 8 bit'), expected: 8.91 },
    { id: 'W4.4', what: '2160p60, 8 bit 4:4:4', got: total('2160p60 4:4:4 8 bit'), expected: 17.82 },
  ],
);

published({ source: 'HDMI class limits in public pages', label: 'second-hand' }, [
  ...[4.95, 10.2, 18].map(
    (expected, at): Check => ({
      what: `class ${at + 1}: total, Gb/s`,
      got: () => ((TMDS_CLASSES[at]?.character_rate_hz ?? Number.NaN) * 30) / 1e9,
      expected,
    }),
  ),
]);

/** Total and usable, Gb/s. */
const LANES: readonly (readonly [number, number])[] = [
  [9, 8],
  [18, 16],
  [24, 21.33],
  [32, 28.44],
  [40, 35.56],
  [48, 42.67],
];

published(
  { source: 'edid-decode: lanes and rates of the fixed-rate link; usable x 16/18', label: 'derived' },
  LANES.flatMap(([all, usable], at): Check[] => {
    const link = () => FIXED_RATE_CLASSES[at]!;
    return [
      {
        what: `${all} Gb/s in all`,
        got: () => (link().lanes * link().lane_bits_per_second) / 1e9,
        expected: all,
      },
      {
        ...(all === 48 ? { id: 'W4.11' } : {}),
        what: `${all} Gb/s: usable, Gb/s`,
        got: () => usableRate_bits_per_second(link().lanes, link().lane_bits_per_second) / 1e9,
        expected: usable,
        within: 0.01,
      },
    ];
  }),
);
