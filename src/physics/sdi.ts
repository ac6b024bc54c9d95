/** Serial digital interface: rate from the total raster, and which interfaces carry a picture. */
import { formatRate } from './display.ts';
import { PhysicsError } from './physics-error.ts';
import { checkPicture, formatRaster, type Picture, type Raster } from './raster.ts';
import { type FrameRate, formatRatio } from './rate.ts';
import { type Explained, makeWorking, type Source } from './working.ts';

/** Visible picture with its blanking. */
export interface TotalRaster {
  readonly samples_per_line: number;
  readonly lines: number;
}

/** An interface by its nominal rate; it also runs at that rate / 1.001. */
export interface SdiInterface extends Source {
  readonly name: string;
  readonly rate_bits_per_second: number;
}

/** From slow to fast. */
export const SDI_INTERFACES: readonly SdiInterface[] = [
  { name: 'SD-SDI', rate_bits_per_second: 270e6, source: 'SMPTE ST 259:2008', label: 'second-hand' },
  {
    name: 'HD-SDI',
    rate_bits_per_second: 1485e6,
    source: 'SMPTE ST 292-1:2018; RFC 3497 §1',
    label: 'published',
  },
  { name: '3G-SDI', rate_bits_per_second: 2970e6, source: 'SMPTE ST 424:2012', label: 'second-hand' },
  { name: '6G-SDI', rate_bits_per_second: 5940e6, source: 'SMPTE ST 2081-1', label: 'second-hand' },
  { name: '12G-SDI', rate_bits_per_second: 11_880e6, source: 'SMPTE ST 2082-1:2023', label: 'second-hand' },
];

/** A way to carry a picture: so many cables of an interface. */
export interface SdiWay {
  readonly interface: SdiInterface;
  readonly links: 1 | 2 | 4;
}

interface RasterFamily {
  readonly heights: readonly number[];
  readonly widths: readonly number[];
  readonly scans: readonly Picture['scan'][];
  /** Total lines for each visible line of the first height. */
  readonly lines: number;
  /** Total samples by whole rate; the 1000/1001 rates have the same. */
  readonly samples: ReadonlyMap<number, number>;
  readonly source: Source;
}

const HD_TOTALS: Source = {
  source:
    'total rasters of SMPTE ST 274, ST 296 and ST 2036-1, from pixel clock and line rate of the CTA-861 list',
  label: 'derived',
};
const SD_TOTALS: Source = { source: 'ITU-R BT.601 (525 and 625 lines), SMPTE ST 125', label: 'from memory' };

/** 1080 rows have 1125 lines, and doubled rasters double both counts: samples for one sampling of 1080 rows. */
const SAMPLES_1080 = new Map([
  [24, 2750],
  [25, 2640],
  [30, 2200],
  [48, 2750],
  [50, 2640],
  [60, 2200],
  [100, 2640],
  [120, 2200],
]);

const FAMILIES: readonly RasterFamily[] = [
  {
    heights: [480, 486],
    widths: [720],
    scans: ['i'],
    lines: 525,
    samples: new Map([[30, 858]]),
    source: SD_TOTALS,
  },
  {
    heights: [576],
    widths: [720],
    scans: ['i'],
    lines: 625,
    samples: new Map([[25, 864]]),
    source: SD_TOTALS,
  },
  {
    heights: [720],
    widths: [1280],
    scans: ['p'],
    lines: 750,
    samples: new Map([
      [24, 4125],
      [25, 3960],
      [30, 3300],
      [50, 1980],
      [60, 1650],
    ]),
    source: HD_TOTALS,
  },
  {
    heights: [1080],
    widths: [1920, 2048],
    scans: ['i'],
    lines: 1125,
    samples: new Map([...SAMPLES_1080].filter(([rate]) => rate <= 30)),
    source: HD_TOTALS,
  },
  {
    heights: [1080],
    widths: [1920, 2048],
    scans: ['p'],
    lines: 1125,
    samples: SAMPLES_1080,
    source: HD_TOTALS,
  },
  {
    heights: [2160],
    widths: [3840, 4096],
    scans: ['p'],
    lines: 2250,
    samples: doubled(2),
    source: HD_TOTALS,
  },
  { heights: [4320], widths: [7680], scans: ['p'], lines: 4500, samples: doubled(4), source: HD_TOTALS },
];

function doubled(by: number): ReadonlyMap<number, number> {
  return new Map([...SAMPLES_1080].map(([rate, samples]) => [rate, samples * by]));
}

function wholeRate(rate: FrameRate): number | undefined {
  if (rate.denominator === 1) return rate.numerator;
  return rate.denominator === 1001 && rate.numerator % 1000 === 0 ? rate.numerator / 1000 : undefined;
}

function familyOf(raster: Raster): RasterFamily | undefined {
  return FAMILIES.find(
    (family) =>
      family.heights.includes(raster.height) &&
      family.widths.includes(raster.width) &&
      family.scans.includes(raster.scan),
  );
}

/**
 * The total raster in which SDI carries a picture; undefined when SDI has none for it (1920x1200, 1440 rows, 75
 * frames/s). 1080 rows: 2200, 2640 or 2750 samples in 1125 lines; 2160 and 4320 rows double that; 720 rows: 750
 * lines; standard definition: 858 x 525 and 864 x 625.
 */
export function totalRaster(raster: Raster): TotalRaster | undefined {
  const family = familyOf(raster);
  const rate = wholeRate(raster.rate);
  const samples_per_line = rate === undefined ? undefined : family?.samples.get(rate);
  if (family === undefined || samples_per_line === undefined) return undefined;
  return { samples_per_line, lines: family.lines };
}

/**
 * Serial rate: samples per line x lines x 20 bit x frames, as 4:2:2 at 10 bit (8 bit rides in 10); 4:4:4, RGB and
 * 12 bit need twice that. Undefined when SDI has no raster for the picture.
 *
 * @throws PhysicsError for 4:2:0 and 16 bit, which SDI does not carry, and for pictures that cannot exist.
 */
export function sdiRate_bits_per_second(picture: Picture): number | undefined {
  checkPicture(picture);
  const factor = channels(picture);
  const total = totalRaster(picture);
  if (total === undefined) return undefined;
  const bits = total.samples_per_line * total.lines * 20 * factor;
  return (bits * picture.rate.numerator) / picture.rate.denominator;
}

function channels({ sampling, depth_bits }: Picture): 1 | 2 {
  if (sampling === '4:2:0' || depth_bits > 12) {
    throw new PhysicsError(
      'sampling',
      `SDI carries 4:2:2, 4:4:4 and RGB at up to 12 bit, not ${sampling} ${depth_bits} bit`,
    );
  }
  return sampling !== '4:2:2' || depth_bits === 12 ? 2 : 1;
}

/**
 * Every way to carry the picture over one, two or four cables of an interface, the fewest cables of each, slowest
 * interface first. Empty when SDI has no raster for it. Only the SD interface carries standard definition, and it
 * carries nothing else.
 *
 * @throws PhysicsError as `sdiRate_bits_per_second`.
 */
export function sdiWays(picture: Picture): SdiWay[] {
  const rate = sdiRate_bits_per_second(picture);
  if (rate === undefined) return [];
  if (picture.height < 720)
    return rate <= SDI_INTERFACES[0]!.rate_bits_per_second
      ? [{ interface: SDI_INTERFACES[0]!, links: 1 }]
      : [];
  const ways: SdiWay[] = [];
  for (const one of SDI_INTERFACES.slice(1)) {
    const links = ([1, 2, 4] as const).find((count) => rate <= one.rate_bits_per_second * count);
    if (links !== undefined) ways.push({ interface: one, links });
  }
  return ways;
}

/** The slowest interface that carries the picture on one cable; undefined when none does. @throws as `sdiWays` */
export function smallestSdi(picture: Picture): SdiInterface | undefined {
  return sdiWays(picture).find((way) => way.links === 1)?.interface;
}

/** `sdiRate_bits_per_second` with its working; undefined when SDI has no raster for the picture. */
export function explainSdiRate(picture: Picture): Explained | undefined {
  const value = sdiRate_bits_per_second(picture);
  const total = totalRaster(picture);
  const family = familyOf(picture);
  if (value === undefined || total === undefined || family === undefined) return undefined;
  const twice = channels(picture) === 2;
  const working = makeWorking({
    figure: `${formatRaster(picture)} ${picture.sampling} ${picture.depth_bits} bit on SDI`,
    rule: `the whole raster with blanking, 20 bit a sample${twice ? '; twice, because it is not 4:2:2 at 10 bit' : ''}`,
    formula: `samples x lines x 20 bit x rate${twice ? ' x 2' : ''}`,
    inputs: [
      ['samples', String(total.samples_per_line)],
      ['lines', String(total.lines)],
      ['rate', formatRatio(picture.rate)],
    ],
    result: formatRate(value),
    ...family.source,
  });
  return { value, working };
}
