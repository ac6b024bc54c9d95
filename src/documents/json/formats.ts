import { type Format, formatRaster } from '../../physics/raster.ts';
import { orNull, text, whole } from './schema.ts';

/** The keys that tell a format. @param when At which point of its way the picture has it. */
export function formatShape(when: string) {
  return {
    format: orNull(text(`Raster, scan and rate ${when}, such as 1080p59.94; \`audio 2\` for sound alone`)),
    sampling: orNull(text(`Sampling ${when}: 4:2:2, 4:4:4, 4:2:0 or RGB`)),
    depth_bits: orNull(whole(`Bits a sample ${when}`)),
    audio_channels: orNull(whole(`Channels of sound ${when}`)),
  };
}

export function formatJson(format: Format | undefined) {
  if (!format) return { format: null, sampling: null, depth_bits: null, audio_channels: null };
  const { audio_channels } = format;
  if (format.kind === 'sound') {
    return { format: `audio ${audio_channels}`, sampling: null, depth_bits: null, audio_channels };
  }
  const { sampling, depth_bits } = format;
  return { format: formatRaster(format), sampling, depth_bits, audio_channels };
}
