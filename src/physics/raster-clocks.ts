/** Pixel clocks of the rasters that standards tabulate. */
import { movePoint } from './decimal.ts';
import type { Raster } from './raster.ts';
import { type FrameRate, frameRateOf, sameRate, scaleRate } from './rate.ts';
import type { Source } from './working.ts';

export const CTA_SOURCE: Source = {
  source: 'CTA-861 video formats, as listed by edid-decode',
  label: 'published',
};
export const DMT_SOURCE: Source = { source: 'VESA DMT, as listed by edid-decode', label: 'published' };

/**
 * CTA-861: `rate:clock in MHz`. A rate of 24, 30, 48, 60 or 120 also stands for itself x 1000/1001, with a clock
 * slower by as much; 59.94 also for 60. After `i` fields are counted. Standard definition interlaced repeats every
 * pixel, so its clock is twice what its samples need.
 */
const CTA_861 = new Map([
  ['640x480p', '59.94:25.175'],
  ['720x480p', '59.94:27'],
  ['720x480i', '59.94:27'],
  ['720x576p', '50:27'],
  ['720x576i', '50:27'],
  ['1280x720p', '24:59.4 25:74.25 30:74.25 48:90 50:74.25 60:74.25 100:148.5 120:148.5'],
  ['1680x720p', '24:59.4 25:59.4 30:59.4 48:99 50:82.5 60:99 100:165 120:198'],
  ['1920x1080i', '50:74.25 60:74.25 100:148.5 120:148.5'],
  ['1920x1080p', '24:74.25 25:74.25 30:74.25 48:148.5 50:148.5 60:148.5 100:297 120:297'],
  ['2560x1080p', '24:99 25:90 30:118.8 48:198 50:185.625 60:198 100:371.25 120:495'],
  ['3840x2160p', '24:297 25:297 30:297 48:594 50:594 60:594 100:1188 120:1188'],
  ['4096x2160p', '24:297 25:297 30:297 48:594 50:594 60:594 100:1188 120:1188'],
  ['5120x2160p', '24:396 25:396 30:396 48:742.5 50:742.5 60:742.5 100:1485 120:1485'],
  ['7680x4320p', '24:1188 25:1188 30:1188 48:2376 50:2376 60:2376 100:4752 120:4752'],
  ['10240x4320p', '24:1485 25:1485 30:1485 48:2970 50:2970 60:2970 100:5940 120:5940'],
]);

/**
 * VESA DMT at 60, 75, 85 and 120 frames a second (its true rates differ a little); where it has a raster with
 * reduced blanking and without, the reduced one. 1366x768 keeps the plain one, which panels of that size send.
 */
const VESA_DMT = new Map([
  ['640x350p', '85:31.5'],
  ['640x400p', '85:31.5'],
  ['720x400p', '85:35.5'],
  ['640x480p', '75:31.5 85:36'],
  ['848x480p', '60:33.75'],
  ['800x600p', '60:40 75:49.5 85:56.25 120:73.25'],
  ['1024x768p', '60:65 75:78.75 85:94.5 120:115.5'],
  ['1280x768p', '60:68.25 75:102.25 85:117.5 120:140.25'],
  ['1360x768p', '60:85.5 120:148.25'],
  ['1366x768p', '60:85.5'],
  ['1280x800p', '60:71 75:106.5 85:122.5 120:146.25'],
  ['1152x864p', '75:108'],
  ['1440x900p', '60:88.75 75:136.75 85:157 120:182.75'],
  ['1600x900p', '60:108'],
  ['1280x960p', '60:108 85:148.5 120:175.5'],
  ['1280x1024p', '60:108 75:135 85:157.5 120:187.25'],
  ['1400x1050p', '60:101 75:156 85:179.5 120:208'],
  ['1680x1050p', '60:119 75:187 85:214.75 120:245.5'],
  ['2048x1152p', '60:162'],
  ['1600x1200p', '60:162 75:202.5 85:229.5 120:268.25'],
  ['1920x1200p', '60:154 75:245.25 85:281.25 120:317'],
  ['1792x1344p', '60:204.75 75:261 120:333.25'],
  ['1856x1392p', '60:218.25 75:288 120:356.5'],
  ['1920x1440p', '60:234 75:297 120:380.5'],
  ['2560x1600p', '60:268.5 75:443.25 85:505.25 120:552.75'],
]);

/** A tabulated pixel clock. */
export interface TabulatedClock extends Source {
  readonly pixel_clock_hz: number;
}

/** The pixel clock of a raster in CTA-861, else in VESA DMT; undefined when neither has it at that rate. */
export function tabulatedClock(raster: Raster): TabulatedClock | undefined {
  const key = `${raster.width}x${raster.height}${raster.scan}`;
  const counted = raster.scan === 'i' ? scaleRate(raster.rate, 2) : raster.rate;
  for (const [written, clock_mhz] of rows(CTA_861.get(key))) {
    const clock_hz = atRate(counted, frameRateOf(written), movePoint(Number(clock_mhz), 6));
    if (clock_hz !== undefined) return { pixel_clock_hz: clock_hz, ...CTA_SOURCE };
  }
  for (const [written, clock_mhz] of rows(VESA_DMT.get(key))) {
    if (sameRate(counted, frameRateOf(written)))
      return { pixel_clock_hz: movePoint(Number(clock_mhz), 6), ...DMT_SOURCE };
  }
  return undefined;
}

function rows(text = ''): [rate: string, clock_mhz: string][] {
  if (text === '') return [];
  return text.split(' ').map((row) => row.split(':') as [string, string]);
}

/** The clock at a rate that is the tabulated one or its 1000/1001 partner; undefined at any other. */
function atRate(wanted: FrameRate, tabulated: FrameRate, clock_hz: number): number | undefined {
  if (sameRate(wanted, tabulated)) return clock_hz;
  const slowed = tabulated.denominator === 1 && tabulated.numerator % 6 === 0;
  if (slowed && sameRate(wanted, scaleRate(tabulated, 1000, 1001))) return (clock_hz * 1000) / 1001;
  const whole = tabulated.denominator === 1001;
  if (whole && sameRate(wanted, scaleRate(tabulated, 1001, 1000))) return (clock_hz * 1001) / 1000;
  return undefined;
}
