/** HDMI and the like: what a picture asks of a point-to-point display link. */
import { formatFrequency, formatNumber, formatRate } from './display.ts';
import { PhysicsError, requireWhole, requireWithin } from './physics-error.ts';
import { activePayload_bits_per_second } from './pixel-group.ts';
import { checkPicture, formatRaster, type Picture, type Raster } from './raster.ts';
import { tabulatedClock } from './raster-clocks.ts';
import { BLANKING_SOURCE, type BlankingVersion, reducedBlanking } from './reduced-blanking.ts';
import { type Explained, makeWorking, type Source } from './working.ts';

export interface PixelClock extends Source {
  readonly pixel_clock_hz: number;
  /** `table`: a standard lists the raster; else the version of the reduced-blanking formula. */
  readonly from: 'table' | BlankingVersion;
}

/** The highest TMDS character rate of a class of links, on three data lanes of 10 bit a character. */
export interface TmdsClass extends Source {
  readonly character_rate_hz: number;
}

/** A link of lanes at a fixed rate. */
export interface FixedRateClass extends Source {
  readonly lanes: number;
  readonly lane_bits_per_second: number;
}

export const TMDS_CLASSES: readonly TmdsClass[] = [165e6, 340e6, 600e6].map((character_rate_hz) => ({
  character_rate_hz,
  source: 'HDMI class limits of 165, 340 and 600 MHz; edid-decode rejects blocks beyond the last two',
  label: 'second-hand',
}));

export const FIXED_RATE_CLASSES: readonly FixedRateClass[] = (
  [
    [3, 3e9],
    [3, 6e9],
    [4, 6e9],
    [4, 8e9],
    [4, 10e9],
    [4, 12e9],
  ] as const
).map(([lanes, lane_bits_per_second]) => ({
  lanes,
  lane_bits_per_second,
  source: 'fixed-rate link, lanes and rates as listed by edid-decode',
  label: 'published',
}));

export const TMDS_SOURCE: Source = {
  source: '8b/10b style coding on three lanes; matches a public test-instrument specification',
  label: 'derived',
};

/** Each character is 10 bit, on each of three data lanes. */
const TMDS_BITS_PER_CHARACTER = 30;

/**
 * Pixel clock of a raster: from CTA-861 or VESA DMT where they list it, else by VESA CVT with reduced blanking.
 *
 * @throws PhysicsError when no timing exists for so fast a picture
 */
export function pixelClock(raster: Raster, blanking: BlankingVersion = 1): PixelClock {
  const tabulated = tabulatedClock(raster);
  if (tabulated !== undefined) return { ...tabulated, from: 'table' };
  return {
    pixel_clock_hz: reducedBlanking(raster, blanking).pixel_clock_hz,
    from: blanking,
    ...BLANKING_SOURCE,
  };
}

/**
 * Share of the pixel clock at which characters come: depth / 8; half of that for 4:2:0; 1 for 4:2:2 up to 12 bit,
 * which costs as much as 8 bit 4:4:4.
 */
function characterFactor({ sampling, depth_bits }: Picture): number {
  if (sampling === '4:2:2') {
    if (depth_bits <= 12) return 1;
    throw new PhysicsError('depth', 'a display link carries 4:2:2 at up to 12 bit');
  }
  return (sampling === '4:2:0' ? depth_bits / 2 : depth_bits) / 8;
}

/** TMDS character rate a picture needs. @throws PhysicsError for pictures that cannot exist or be sent */
export function tmdsCharacterRate_hz(picture: Picture, blanking: BlankingVersion = 1): number {
  checkPicture(picture);
  return pixelClock(picture, blanking).pixel_clock_hz * characterFactor(picture);
}

/** Total on the three data lanes. @throws PhysicsError as `tmdsCharacterRate_hz` */
export function tmdsTotal_bits_per_second(picture: Picture, blanking: BlankingVersion = 1): number {
  return tmdsCharacterRate_hz(picture, blanking) * TMDS_BITS_PER_CHARACTER;
}

/** What a fixed-rate link carries after its coding: lanes x rate x 16/18. */
export function usableRate_bits_per_second(lanes: number, lane_bits_per_second: number): number {
  requireWhole('lanes', lanes, 1, 16);
  return (lanes * requireWithin('lane rate', lane_bits_per_second, 1, 1e12, 'b/s') * 16) / 18;
}

/**
 * `doubtful`: it fits only if the link sends its blanking compacted, which depends on the devices.
 */
export type DisplayFit = 'fits' | 'doubtful' | 'too big';

/** What a display link offers: TMDS up to a character rate, a fixed-rate link, or both. */
export interface DisplayLink {
  readonly character_rate_hz?: number | undefined;
  readonly lanes?: { readonly count: number; readonly rate_bits_per_second: number } | undefined;
}

/**
 * Judges a picture against a link. On fixed-rate lanes it needs 24 bit for every TMDS character, blanking
 * included; when only its visible pixels fit, it is doubtful.
 *
 * @throws PhysicsError as `tmdsCharacterRate_hz`
 */
export function judgeDisplay(picture: Picture, link: DisplayLink, blanking: BlankingVersion = 1): DisplayFit {
  const characters_hz = tmdsCharacterRate_hz(picture, blanking);
  if (link.character_rate_hz !== undefined && characters_hz <= link.character_rate_hz) return 'fits';
  if (link.lanes === undefined) return 'too big';
  const usable = usableRate_bits_per_second(link.lanes.count, link.lanes.rate_bits_per_second);
  if (characters_hz * 24 <= usable) return 'fits';
  return visibleOnLanes_bits_per_second(picture) <= usable ? 'doubtful' : 'too big';
}

/** Visible pixels as a display link sends them: 4:2:2 takes 24 bit a pixel at any depth up to 12. */
function visibleOnLanes_bits_per_second(picture: Picture): number {
  const sent: Picture = picture.sampling === '4:2:2' ? { ...picture, depth_bits: 12 } : picture;
  return activePayload_bits_per_second(sent);
}

/** How a picture fits every class of link, for an explanation of a format. */
export interface DisplayClasses {
  readonly tmds: readonly { readonly link: TmdsClass; readonly fit: DisplayFit }[];
  readonly fixed_rate: readonly { readonly link: FixedRateClass; readonly fit: DisplayFit }[];
}

/** Judges a picture against every class. @throws PhysicsError as `tmdsCharacterRate_hz` */
export function displayClasses(picture: Picture, blanking: BlankingVersion = 1): DisplayClasses {
  return {
    tmds: TMDS_CLASSES.map((link) => ({ link, fit: judgeDisplay(picture, link, blanking) })),
    fixed_rate: FIXED_RATE_CLASSES.map((link) => {
      const lanes = { count: link.lanes, rate_bits_per_second: link.lane_bits_per_second };
      return { link, fit: judgeDisplay(picture, { lanes }, blanking) };
    }),
  };
}

/** `pixelClock` with its working. */
export function explainPixelClock(raster: Raster, blanking: BlankingVersion = 1): Explained {
  const { pixel_clock_hz, from, source, label } = pixelClock(raster, blanking);
  const common = {
    figure: `pixel clock of ${formatRaster(raster)}`,
    result: formatFrequency(pixel_clock_hz),
    source,
    label,
  };
  if (from === 'table') {
    const working = makeWorking({ ...common, rule: 'as tabulated', formula: '', inputs: [] });
    return { value: pixel_clock_hz, working };
  }
  const timing = reducedBlanking(raster, from);
  const working = makeWorking({
    ...common,
    rule: `no table has it: reduced blanking version ${from}, stepped down to ${from === 1 ? '0.25' : '0.001'} MHz`,
    formula: 'pixels a row x rows x rate',
    inputs: [
      ['pixels a row', String(timing.pixels_per_row)],
      ['rows', String(timing.rows)],
      [
        'rate',
        `${formatNumber((raster.scan === 'i' ? 2 : 1) * (raster.rate.numerator / raster.rate.denominator))} a second`,
      ],
    ],
  });
  return { value: pixel_clock_hz, working };
}

/** `tmdsCharacterRate_hz` with its working. */
export function explainTmds(picture: Picture, blanking: BlankingVersion = 1): Explained {
  const value = tmdsCharacterRate_hz(picture, blanking);
  const clock = explainPixelClock(picture, blanking);
  const working = makeWorking({
    figure: `character rate of ${formatRaster(picture)} ${picture.sampling} ${picture.depth_bits} bit`,
    rule: `${characterRule(picture)}; ${formatRate(value * TMDS_BITS_PER_CHARACTER)} on three lanes`,
    formula: 'pixel clock x factor',
    inputs: [
      ['pixel clock', formatFrequency(clock.value)],
      ['factor', formatNumber(characterFactor(picture))],
    ],
    result: formatFrequency(value),
    ...TMDS_SOURCE,
    steps: [clock.working],
  });
  return { value, working };
}

function characterRule({ sampling }: Picture): string {
  if (sampling === '4:2:2') return '4:2:2 up to 12 bit costs as much as 8 bit 4:4:4';
  return sampling === '4:2:0' ? 'depth / 8, halved for 4:2:0' : 'depth / 8';
}
