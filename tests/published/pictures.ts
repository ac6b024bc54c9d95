import { completeFormat, type PictureFormat, parseFormat } from '../../src/physics/raster.ts';

/** A picture as written, 4:2:2 at 10 bit where it does not say otherwise. */
export function picture(text: string): PictureFormat {
  const format = completeFormat(parseFormat(text), 'sdi');
  if (format.kind === 'sound') throw new Error(`${text} has no picture`);
  return format;
}
