import type { UplinkLoad } from '../../analysis/model.ts';
import { figure, list, number, object, orNull, rounded, text, type ValueOf, whole } from './schema.ts';

export const uplinkShape = object("The venue's internet", {
  name: text('Its name'),
  stated_bits_per_second: orNull(whole('Upload as stated')),
  measured_bits_per_second: orNull(whole('Upload as measured on site')),
  usable_bits_per_second: orNull(
    whole('What may be planned with: half of what was measured, else of what is stated'),
  ),
  needed_bits_per_second: whole('What all streams over it need, with recovery and headers'),
  share: orNull(number('Needed over usable: 1 is full')),
  fits_bits_per_second: orNull(whole('Stated rate of one more stream that still fits')),
  destinations: list('What streams over it', text('Name of a destination')),
});

export function uplinkJson(load: UplinkLoad): ValueOf<typeof uplinkShape> {
  return {
    name: load.uplink.name,
    stated_bits_per_second: rounded(load.stated_bits_per_second),
    measured_bits_per_second: rounded(load.measured_bits_per_second),
    usable_bits_per_second: rounded(load.usable_bits_per_second),
    needed_bits_per_second: rounded(load.needed_bits_per_second),
    share: figure(load.share),
    fits_bits_per_second: rounded(load.fits_bits_per_second),
    destinations: load.destinations.map(({ name }) => name),
  };
}
