import { pixelClock, tmdsCharacterRate_hz } from '../../src/physics/display-interface.ts';
import { parseRaster } from '../../src/physics/raster.ts';
import { type BlankingVersion, reducedBlanking } from '../../src/physics/reduced-blanking.ts';
import { picture } from './pictures.ts';
import { published, publishedByTool } from './source.ts';

const megahertz = (raster: string, version: BlankingVersion) => () =>
  reducedBlanking(parseRaster(raster), version).pixel_clock_hz / 1e6;

published({ source: 'VESA CVT reduced blanking, as printed by edid-decode', label: 'published' }, [
  { id: 'W4.7', what: '2560x1440p60, version 1, MHz', got: megahertz('2560x1440p60', 1), expected: 241.5 },
  {
    what: '2560x1440p60, version 1: rows',
    got: () => reducedBlanking(parseRaster('2560x1440p60'), 1).rows,
    expected: 1481,
  },
  { id: 'W4.8', what: '3440x1440p60, version 1, MHz', got: megahertz('3440x1440p60', 1), expected: 319.75 },
  {
    id: 'W4.9',
    what: '3440x1440p60, version 2, MHz',
    got: megahertz('3440x1440p60', 2),
    expected: 312.787,
    within: 0.001,
  },
  { id: 'W4.10', what: '3840x2160p60, version 1, MHz', got: megahertz('3840x2160p60', 1), expected: 533.25 },
  {
    what: '3840x2160p60, version 1: rows',
    got: () => reducedBlanking(parseRaster('3840x2160p60'), 1).rows,
    expected: 2222,
  },
  {
    what: '3440x1440p60 at 10 bit: characters, MHz',
    got: () => tmdsCharacterRate_hz(picture('3440x1440p60 RGB 10 bit')) / 1e6,
    expected: 399.7,
    within: 0.05,
  },
  { what: '1920x1200p60, version 1, MHz', got: megahertz('1920x1200p60', 1), expected: 154 },
  { what: '2560x1600p60, version 1, MHz', got: megahertz('2560x1600p60', 1), expected: 268.5 },
  {
    what: '1366x768p60 is tabulated, MHz',
    got: () => pixelClock(parseRaster('1366x768p60')).pixel_clock_hz / 1e6,
    expected: 85.5,
  },
]);

const RASTERS = [
  '1024x768p60',
  '1280x800p60',
  '1366x768p60',
  '1600x1200p60',
  '1920x1080p24',
  '1920x1080p50',
  '1920x1200p60',
  '2048x1080p48',
  '2560x1080p75',
  '2560x1440p60',
  '2560x1440p144',
  '2560x1600p60',
  '3440x1440p60',
  '3440x1440p100',
  '3840x1600p60',
  '3840x2160p60',
  '4096x2160p24',
  '5120x1440p60',
  '1280x1024p30',
  '1920x1200i60',
];

publishedByTool(
  { source: 'Debian edid-decode --cvt, reduced blanking versions 1 and 2', label: 'published' },
  'edid-decode',
  RASTERS.flatMap((raster) =>
    ([1, 2] as const).map((version) => {
      const [, width, height, scan, rate] = /^(\d+)x(\d+)([pi])(\d+)$/.exec(raster)!;
      const options = `w=${width},h=${height},fps=${rate},rb=${version}${scan === 'i' ? ',interlaced' : ''}`;
      return {
        what: `${raster}, version ${version}, MHz`,
        arguments: ['--cvt', options],
        read: (output: string) => Number(/([\d.]+) MHz/.exec(output)?.[1]),
        got: megahertz(raster, version),
        // In version 2 binary fractions may cost the tool a step: 110.599 for 50 x 1106 x 2000 = 110.6 MHz.
        within: version === 1 ? 0.000_001 : 0.001_001,
      };
    }),
  ),
);

/** Rows of front porch, sync pulse and back porch. */
publishedByTool(
  { source: 'Debian edid-decode --cvt, reduced blanking versions 1 and 2', label: 'published' },
  'edid-decode',
  [
    '1024x768p24',
    '1920x1080p24',
    '1920x1200p24',
    '1280x1024p24',
    '1366x768p24',
    '1280x768p24',
    '2560x1440p60',
    '1280x800p30',
  ].flatMap((raster) =>
    ([1, 2] as const).map((version) => {
      const { width, height, rate } = parseRaster(raster);
      return {
        what: `${raster}, version ${version}, rows of blanking`,
        arguments: ['--cvt', `w=${width},h=${height},fps=${rate.numerator},rb=${version}`],
        read: (output: string) =>
          ['Vfront', 'Vsync', 'Vback'].reduce(
            (sum, part) => sum + Number(new RegExp(`${part} +(\\d+)`).exec(output)?.[1]),
            0,
          ),
        got: () => reducedBlanking(parseRaster(raster), version).rows - height,
      };
    }),
  ),
);

/** The command floors its row time to whole nanoseconds, so it may be a step of 0.25 MHz lower. */
publishedByTool(
  { source: 'Debian xcvt: cvt --reduced', label: 'published' },
  'cvt',
  [
    [1024, 768],
    [1280, 800],
    [1920, 1200],
    [2560, 1440],
    [2560, 1600],
    [3440, 1440],
    [3840, 2160],
  ].map(([width, height]) => ({
    what: `${width}x${height}p60, version 1, MHz`,
    arguments: ['--reduced', String(width), String(height), '60'],
    read: (output: string) => Number(/pclk: ([\d.]+) MHz/.exec(output)?.[1]),
    got: megahertz(`${width}x${height}p60`, 1),
    within: 0.25,
  })),
);
