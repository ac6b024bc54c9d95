/** Pixel groups: the smallest run of pixels whose samples fill whole octets. A packet never splits one. */
import { greatestCommonDivisor } from './decimal.ts';
import { formatRate } from './display.ts';
import type { Picture, Sampling } from './raster.ts';
import { formatRatio } from './rate.ts';
import { type Explained, makeWorking, type Source } from './working.ts';

export const PIXEL_GROUP_SOURCE: Source = {
  source: 'RFC 4175 §4.3; SMPTE ST 2110-20 §6.2',
  label: 'published',
};

export interface PixelGroup {
  readonly octets: number;
  readonly pixels: number;
  /** Rows that a group spans: two for 4:2:0, whose blocks share colour among rows. */
  readonly rows: 1 | 2;
}

interface Block {
  readonly pixels: number;
  readonly samples: number;
  readonly rows: 1 | 2;
}

/** The fewest pixels that share no sample with others. */
const BLOCKS: Readonly<Record<Sampling, Block>> = {
  '4:2:2': { pixels: 2, samples: 4, rows: 1 },
  '4:4:4': { pixels: 1, samples: 3, rows: 1 },
  RGB: { pixels: 1, samples: 3, rows: 1 },
  '4:2:0': { pixels: 4, samples: 6, rows: 2 },
};

/**
 * The pixel group of a sampling and depth: as many blocks as fill whole octets. It gives RFC 4175 §4.3
 * (published), except where that text prints 15 octets for four pixels of 10 bit 4:2:0: four pixels have 60 bits,
 * so the group is eight.
 */
export function pixelGroup(sampling: Sampling, depth_bits: number): PixelGroup {
  const block = BLOCKS[sampling];
  const bits = block.samples * depth_bits;
  const blocks = 8 / greatestCommonDivisor(bits, 8);
  return { octets: (bits * blocks) / 8, pixels: block.pixels * blocks, rows: block.rows };
}

/** Samples of a pixel times their depth: 20 for 4:2:2 at 10 bit. */
export function bitsPerPixel(sampling: Sampling, depth_bits: number): number {
  const block = BLOCKS[sampling];
  return (block.samples * depth_bits) / block.pixels;
}

/** Bits a second of the visible pixels alone, without headers or blanking: width x height x bits x rate. */
export function activePayload_bits_per_second(picture: Picture): number {
  const { width, height, rate } = picture;
  const bits = width * height * bitsPerPixel(picture.sampling, picture.depth_bits);
  return (bits * rate.numerator) / rate.denominator;
}

/** `activePayload_bits_per_second` with its working. */
export function explainActivePayload(picture: Picture): Explained {
  const value = activePayload_bits_per_second(picture);
  const working = makeWorking({
    figure: 'visible pixels alone',
    rule: 'no headers, no blanking',
    formula: 'width x height x bits a pixel x rate',
    inputs: [
      ['width', String(picture.width)],
      ['height', String(picture.height)],
      ['bits a pixel', String(bitsPerPixel(picture.sampling, picture.depth_bits))],
      ['rate', formatRatio(picture.rate)],
    ],
    result: formatRate(value),
    ...PIXEL_GROUP_SOURCE,
  });
  return { value, working };
}
