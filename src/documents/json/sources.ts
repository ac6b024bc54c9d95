import type { SourceFigures } from '../../analysis/model.ts';
import { formatJson, formatShape } from './formats.ts';
import { object, orNull, rounded, text, type ValueOf, whole } from './schema.ts';

/** The rates of a picture; those of a source and those of a format by itself read the same. */
export const rateShapes = {
  active_bits_per_second: orNull(whole('The visible pixels alone, uncompressed')),
  packets_per_frame: orNull(
    whole('Packets that one frame takes; null where it is compressed, and for sound'),
  ),
  picture_bits_per_second: orNull(whole('The picture on a network link, every bit that occupies the wire')),
  sound_bits_per_second: orNull(whole('Its sound on a network link')),
  ancillary_bits_per_second: orNull(whole('Its ancillary data on a network link: captions, time code')),
  network_bits_per_second: orNull(whole('Picture, sound and ancillary data together on a network link')),
  interface_bits_per_second: orNull(whole('On the cable by which it leaves, where that is no network')),
};

export const sourceShape = object('Where a picture begins', {
  name: text('Its name'),
  ...formatShape('as it leaves the source'),
  carried: text('How it rides on the network: `uncompressed`, `compressed 8:1`'),
  ...rateShapes,
});

export function sourceJson(figures: SourceFigures): ValueOf<typeof sourceShape> {
  return {
    name: figures.source.name,
    ...formatJson(figures.format),
    carried: figures.carried.text,
    active_bits_per_second: rounded(figures.active_bits_per_second),
    packets_per_frame: rounded(figures.packets_per_frame),
    picture_bits_per_second: rounded(figures.picture_bits_per_second),
    sound_bits_per_second: rounded(figures.sound_bits_per_second),
    ancillary_bits_per_second: rounded(figures.ancillary_bits_per_second),
    network_bits_per_second: rounded(figures.network_bits_per_second),
    interface_bits_per_second: rounded(figures.interface_bits_per_second),
  };
}
