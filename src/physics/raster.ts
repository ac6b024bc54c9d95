/** What a signal is: raster, scan, rate, sampling, depth and sound; and how that is written. */
import { PhysicsError, refusal, requireWhole } from './physics-error.ts';
import { type FrameRate, formatFrameRate, frameRateOf, sameRate, scaleRate } from './rate.ts';

/** `p` progressive; `i` interlaced: a frame is two fields. */
export type Scan = 'p' | 'i';
export type Sampling = '4:2:2' | '4:4:4' | '4:2:0' | 'RGB';
/** What kind of signal an interface carries; decides what a short format leaves out. */
export type SignalKind = 'sdi' | 'hdmi' | 'network';

/** A picture without its sound. */
export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly scan: Scan;
  /** Whole frames a second, also for an interlaced picture: 1080i50 has 25. */
  readonly rate: FrameRate;
  readonly sampling: Sampling;
  readonly depth_bits: number;
}

/** A picture with the sound that goes along. */
export interface PictureFormat extends Picture {
  readonly kind: 'picture';
  readonly audio_channels: number;
}

/** Sound without a picture: 48 kHz, 24 bit. */
export interface SoundFormat {
  readonly kind: 'sound';
  readonly audio_channels: number;
}

export type Format = PictureFormat | SoundFormat;

/** A format as it was written: what was left out is undefined, and `completeFormat` fills it in. */
export type StatedFormat = StatedPicture | SoundFormat;

export interface StatedPicture extends Raster {
  readonly kind: 'picture';
  readonly sampling: Sampling | undefined;
  readonly depth_bits: number | undefined;
  readonly audio_channels: number | undefined;
}

/** The part that is written in one word: `1080p59.94`. */
export interface Raster {
  readonly width: number;
  readonly height: number;
  readonly scan: Scan;
  /** Whole frames a second. */
  readonly rate: FrameRate;
}

/**
 * The largest raster: RFC 4175 §4.2 numbers rows and offsets in 15 bits (published).
 */
export const LARGEST_SIDE = 32_767;
/** More channels than any one connection in use carries; a bound against slips of the pen (common practice). */
export const MOST_AUDIO_CHANNELS = 512;
/** Bits a sample that RFC 4175 §4.3 gives pixel groups for (published). */
export const DEPTHS_BITS: readonly number[] = [8, 10, 12, 16];
export const SAMPLINGS: readonly Sampling[] = ['4:2:2', '4:4:4', '4:2:0', 'RGB'];

/** 720 samples a row: ITU-R BT.601 (from memory; the trade's 480, 486 and 576 row rasters, common practice). */
const ROWS_OF_720_SAMPLES: readonly number[] = [480, 486, 576];

/**
 * Reads a raster word: `720p50`, `1080i59.94`, `1920x1200p60`. The number after `i` counts fields. Without a
 * width, 480, 486 and 576 rows have 720 samples, any other has the width of 16:9.
 *
 * @throws PhysicsError when it cannot be read, or names a raster that cannot exist.
 */
export function parseRaster(text: string): Raster {
  const match = /^(?:(\d+)[x×])?(\d+)([pi])(\d+(?:\.\d+)?)$/i.exec(text.trim());
  if (match === null) {
    throw new PhysicsError(
      'format',
      `"${text}" is no picture format; write 1080p59.94, 1080i50 or 1920x1200p60`,
    );
  }
  const [, columns, rows, letter, number] = match as unknown as [
    string,
    string | undefined,
    string,
    string,
    string,
  ];
  const scan: Scan = letter.toLowerCase() === 'i' ? 'i' : 'p';
  const height = Number(rows);
  requireTwoFields(scan, height);
  const width = columns === undefined ? widthOf(height) : Number(columns);
  const counted = frameRateOf(number);
  const raster = { width, height, scan, rate: scan === 'i' ? scaleRate(counted, 1, 2) : counted };
  checkRaster(raster);
  return raster;
}

function widthOf(height: number): number {
  if (ROWS_OF_720_SAMPLES.includes(height)) return 720;
  requireWhole('height', height, 1, LARGEST_SIDE, 'rows');
  const width = (height * 16) / 9;
  if (Number.isInteger(width)) return width;
  throw new PhysicsError(
    'format',
    `${height} rows have no usual width; write it, for example 1920x${height}`,
  );
}

/**
 * Reads a whole format: a raster, then in any order sampling, depth and sound, as
 * `2160p59.94 4:2:2 10 bit audio 16`; or sound alone, `audio 2`.
 *
 * @throws PhysicsError for what cannot be read, stands twice, or cannot exist.
 */
export function parseFormat(text: string): StatedFormat {
  const words = text
    .trim()
    .replace(/(\d)-?bit\b/gi, '$1 bit')
    .split(/\s+/);
  const [first = ''] = words;
  if (first.toLowerCase() === 'audio') return parseSound(text, words);
  const raster = parseRaster(first);
  let sampling: Sampling | undefined;
  let depth_bits: number | undefined;
  let audio_channels: number | undefined;
  for (let at = 1; at < words.length; at++) {
    const word = words[at]!;
    const next = words[at + 1];
    const named = SAMPLINGS.find((one) => one === word.toUpperCase());
    if (named !== undefined) sampling = once('sampling', sampling, named);
    else if (word === 'audio')
      audio_channels = once('audio', audio_channels, readCount(words[++at], 'audio'));
    else if (next === 'bit') {
      depth_bits = once('depth', depth_bits, readCount(word, 'depth'));
      at++;
    } else {
      throw new PhysicsError(
        'format',
        `"${word}" is not understood; after the raster stand a sampling (${SAMPLINGS.join(', ')}), a depth (10 bit) or sound (audio 16)`,
      );
    }
  }
  const format: StatedPicture = { kind: 'picture', ...raster, sampling, depth_bits, audio_channels };
  checkStated(format);
  return format;
}

function parseSound(text: string, words: string[]): SoundFormat {
  if (words.length !== 2)
    throw new PhysicsError('format', `"${text}" is not understood; sound alone is written: audio 2`);
  const audio_channels = readCount(words[1], 'audio');
  requireWhole('audio', audio_channels, 1, MOST_AUDIO_CHANNELS, 'channels');
  return { kind: 'sound', audio_channels };
}

function once<T>(what: string, before: T | undefined, now: T): T {
  if (before === undefined) return now;
  throw new PhysicsError('format', `the format states its ${what} twice: ${before} and ${now}`);
}

function readCount(word: string | undefined, what: string): number {
  if (word !== undefined && /^\d+$/.test(word)) return Number(word);
  throw new PhysicsError('format', `${what} wants a whole number, not "${word ?? ''}"`);
}

/** Fills in what the writer left out, by the kind of signal (numbers of this project's language). */
const DEFAULTS: Readonly<
  Record<SignalKind, Pick<PictureFormat, 'sampling' | 'depth_bits' | 'audio_channels'>>
> = {
  sdi: { sampling: '4:2:2', depth_bits: 10, audio_channels: 16 },
  network: { sampling: '4:2:2', depth_bits: 10, audio_channels: 16 },
  hdmi: { sampling: 'RGB', depth_bits: 8, audio_channels: 2 },
};

/**
 * A complete format from a stated one: 4:2:2, 10 bit and 16 channels on SDI and network; RGB, 8 bit and
 * 2 channels on HDMI (common practice, no source).
 *
 * @throws PhysicsError when the completed picture cannot exist.
 */
export function completeFormat(stated: StatedFormat, signal: SignalKind): Format {
  if (stated.kind === 'sound') return stated;
  const usual = DEFAULTS[signal];
  const format: PictureFormat = {
    ...stated,
    sampling: stated.sampling ?? usual.sampling,
    depth_bits: stated.depth_bits ?? usual.depth_bits,
    audio_channels: stated.audio_channels ?? usual.audio_channels,
  };
  checkPicture(format);
  return format;
}

/**
 * The same signal carried with another sampling and depth, as SDI and network carry 4:2:2 10 bit whatever a
 * display interface delivered; the sound stays as it is.
 *
 * @throws PhysicsError when the picture cannot exist in that sampling.
 */
export function resample(format: Format, sampling: Sampling = '4:2:2', depth_bits = 10): Format {
  if (format.kind === 'sound') return format;
  if (format.sampling === sampling && format.depth_bits === depth_bits) return format;
  const resampled: PictureFormat = { ...format, sampling, depth_bits };
  checkPicture(resampled);
  return resampled;
}

/** @throws PhysicsError when the picture cannot exist; the message says why and what is allowed. */
export function checkPicture(picture: Picture): void {
  checkRaster(picture);
  if (!SAMPLINGS.includes(picture.sampling))
    throw refusal('sampling', picture.sampling, SAMPLINGS.join(', '));
  checkDepth(picture.depth_bits);
  checkSampling(picture, picture.sampling);
}

/** @throws PhysicsError when the format cannot exist. */
export function checkFormat(format: Format): void {
  if (format.kind === 'picture') checkPicture(format);
  requireWhole(
    'audio',
    format.audio_channels,
    format.kind === 'sound' ? 1 : 0,
    MOST_AUDIO_CHANNELS,
    'channels',
  );
}

function checkStated(format: StatedPicture): void {
  if (format.depth_bits !== undefined) checkDepth(format.depth_bits);
  if (format.sampling !== undefined) checkSampling(format, format.sampling);
  if (format.audio_channels !== undefined) {
    requireWhole('audio', format.audio_channels, 0, MOST_AUDIO_CHANNELS, 'channels');
  }
}

function checkRaster(raster: Raster): void {
  requireWhole('width', raster.width, 1, LARGEST_SIDE, 'pixels');
  requireWhole('height', raster.height, 1, LARGEST_SIDE, 'rows');
  requireTwoFields(raster.scan, raster.height);
}

function requireTwoFields(scan: Scan, height: number): void {
  if (scan === 'p' || height % 2 === 0) return;
  throw new PhysicsError(
    'height',
    `an interlaced picture of ${height} rows cannot be split into two fields; the number of rows must be even`,
  );
}

function checkDepth(depth_bits: number): void {
  if (!DEPTHS_BITS.includes(depth_bits))
    throw refusal('depth', `${depth_bits} bit`, `${DEPTHS_BITS.join(', ')} bit`);
}

function checkSampling(raster: Raster, sampling: Sampling): void {
  if (sampling !== '4:2:0') return;
  const rows = raster.scan === 'i' ? raster.height / 2 : raster.height;
  if (raster.width % 2 !== 0 || rows % 2 !== 0) {
    const unit = raster.scan === 'i' ? 'rows of each field' : 'rows';
    throw new PhysicsError(
      'sampling',
      `4:2:0 shares colour among blocks of two by two pixels: ${raster.width} columns and ${rows} ${unit} must both be even`,
    );
  }
}

/** A raster as it is written: `1080p59.94`, or with the width where it is not the usual one: `1920x1200p60`. */
export function formatRaster(raster: Raster): string {
  const rate = raster.scan === 'i' ? scaleRate(raster.rate, 2) : raster.rate;
  const rows = `${raster.height}${raster.scan}${formatFrameRate(rate)}`;
  return hasUsualWidth(raster) ? rows : `${raster.width}x${rows}`;
}

function hasUsualWidth({ width, height }: Raster): boolean {
  return ROWS_OF_720_SAMPLES.includes(height) ? width === 720 : width * 9 === height * 16;
}

/** A whole format as it is written; reading it back gives the same format. */
export function formatFormat(format: Format): string {
  if (format.kind === 'sound') return `audio ${format.audio_channels}`;
  return `${formatRaster(format)} ${format.sampling} ${format.depth_bits} bit audio ${format.audio_channels}`;
}

/** True when both show the same number of pixels in the same scan at exactly the same rate. */
export function sameRaster(a: Raster, b: Raster): boolean {
  return a.width === b.width && a.height === b.height && a.scan === b.scan && sameRate(a.rate, b.rate);
}
