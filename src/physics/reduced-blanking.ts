/** VESA Coordinated Video Timings with reduced blanking: the pixel clock of any raster. */
import { requireWithin } from './physics-error.ts';
import type { Raster } from './raster.ts';
import { framesPerSecond } from './rate.ts';
import type { Source } from './working.ts';

/** Version 1 is what laptops mostly send. */
export type BlankingVersion = 1 | 2;

export const BLANKING_SOURCE: Source = {
  source: 'VESA CVT reduced blanking, as computed by edid-decode and libdisplay-info',
  label: 'published',
};

/** A raster with its blanking, and how fast its pixels come. */
export interface Timing {
  readonly pixels_per_row: number;
  /** Rows of a frame; of a field when interlaced, where it ends in a half. */
  readonly rows: number;
  readonly pixel_clock_hz: number;
}

/** The blanking lasts at least this long. */
const LEAST_BLANKING_S = 460e-6;

interface Version {
  /** Widths count in cells of so many pixels, rounded down. */
  readonly cell_pixels: number;
  readonly row_blanking_pixels: number;
  readonly clock_step_hz: number;
  /** Rows before the sync pulse and least rows after it. */
  readonly porches_rows: number;
}

const VERSIONS: Readonly<Record<BlankingVersion, Version>> = {
  1: { cell_pixels: 8, row_blanking_pixels: 160, clock_step_hz: 250_000, porches_rows: 3 + 7 },
  2: { cell_pixels: 1, row_blanking_pixels: 80, clock_step_hz: 1000, porches_rows: 1 + 6 },
};

/** Rows of the sync pulse in version 1 tell the shape of the picture; version 2 always has 8. */
const SYNC_ROWS: readonly (readonly [width: number, height: number, rows: number])[] = [
  [4, 3, 4],
  [16, 9, 5],
  [16, 10, 6],
  [5, 4, 7],
  [15, 9, 7],
];
const SYNC_ROWS_OTHER_SHAPES = 10;
const SYNC_ROWS_VERSION_2 = 8;

function syncRows({ width, height }: Raster, version: BlankingVersion): number {
  if (version === 2) return SYNC_ROWS_VERSION_2;
  const shape = SYNC_ROWS.find(([across, down]) => width * down === height * across);
  return shape?.[2] ?? SYNC_ROWS_OTHER_SHAPES;
}

/**
 * Timing of a raster with reduced blanking: 160 (version 2: 80) pixels more a row, as many rows more as fill 460
 * microseconds (but never fewer than porches and sync need), and the clock stepped down to 0.25 (0.001) MHz. Version 1
 * counts the width in whole cells of 8 pixels.
 *
 * @throws PhysicsError when the picture is so fast that 460 microseconds of blanking leave it no time
 */
export function reducedBlanking(raster: Raster, version: BlankingVersion): Timing {
  const { cell_pixels, row_blanking_pixels, clock_step_hz, porches_rows } = VERSIONS[version];
  const interlaced = raster.scan === 'i';
  const fields = interlaced ? 2 : 1;
  const perSecond = framesPerSecond(raster.rate) * fields;
  const visibleRows = raster.height / fields;
  requireWithin('frame rate of a display interface', perSecond, 1, 1000, 'a second');
  const row_s = (1 / perSecond - LEAST_BLANKING_S) / visibleRows;
  const blankRows = Math.max(
    Math.floor(LEAST_BLANKING_S / row_s) + 1,
    porches_rows + syncRows(raster, version),
  );
  const rows = visibleRows + blankRows + (interlaced ? 0.5 : 0);
  const pixels_per_row = Math.floor(raster.width / cell_pixels) * cell_pixels + row_blanking_pixels;
  const steps = Math.floor((perSecond * rows * pixels_per_row) / clock_step_hz);
  return { pixels_per_row, rows, pixel_clock_hz: steps * clock_step_hz };
}
