import { formatJson, formatShape } from '../json/formats.ts';
import {
  byName,
  list,
  number,
  object,
  oneOf,
  orNull,
  rounded,
  text,
  type ValueOf,
  whole,
} from '../json/schema.ts';
import { rateShapes } from '../json/sources.ts';
import type { FormatFigures } from './format-figures.ts';

/** What `feedplot explain FORMAT --json` prints. */
export const formatExplanationShape = object('What a format asks of everything that it could ride on', {
  schema: whole('Version of this shape: 1'),
  kind: oneOf('What is explained', ['format']),
  ...formatShape('with what was left out filled in, as SDI and network carry it'),
  ...rateShapes,
  sdi_interfaces: list(
    'Ways to carry it over SDI, the slowest interface first',
    object('A way', {
      interface: text('Name of the interface in the trade: 3G-SDI'),
      rate_bits_per_second: whole('Its nominal rate'),
      links: whole('How many cables of it'),
    }),
  ),
  display_format: orNull(
    text('Sampling and depth on a display link, where what was left out means something else'),
  ),
  display_character_rate_hz: orNull(number('TMDS character rate on a display link')),
  display_classes: list(
    'Classes of display links that carry it: by the highest TMDS character rate, or by lanes at a fixed rate',
    object('A class', {
      character_rate_hz: orNull(whole('Its highest TMDS character rate; null for lanes')),
      lanes: orNull(whole('How many lanes; null for TMDS')),
      lane_bits_per_second: orNull(whole('Rate of a lane; null for TMDS')),
      fit: oneOf('doubtful: only if the devices compact the blanking', ['fits', 'doubtful']),
    }),
  ),
  carried_by: list(
    'Interfaces of the library and the plan, other than network ones, that carry it on one cable',
    object('An interface', {
      interface: text('Its name'),
      fit: oneOf('doubtful: only if the devices compact the blanking', ['fits', 'doubtful']),
    }),
  ),
  fits: byName(
    'How many, with their sound and ancillary data, go one way through each network interface up to 100 %',
    whole('A count'),
  ),
});

export function formatExplanationJson(figures: FormatFigures): ValueOf<typeof formatExplanationShape> {
  const { loads, displayFormat } = figures;
  return {
    schema: 1,
    kind: 'format',
    ...formatJson(figures.format),
    active_bits_per_second: rounded(loads.active_bits_per_second),
    packets_per_frame: rounded(loads.packets_per_frame),
    picture_bits_per_second: rounded(loads.picture_bits_per_second),
    sound_bits_per_second: rounded(loads.sound_bits_per_second),
    ancillary_bits_per_second: rounded(loads.ancillary_bits_per_second),
    network_bits_per_second: rounded(loads.total_bits_per_second),
    interface_bits_per_second: rounded(figures.sdi_bits_per_second),
    sdi_interfaces: figures.sdiWays.map((way) => ({
      interface: way.interface.name,
      rate_bits_per_second: way.interface.rate_bits_per_second,
      links: way.links,
    })),
    display_format: displayFormat ? `${displayFormat.sampling} ${displayFormat.depth_bits} bit` : null,
    display_character_rate_hz: rounded(figures.characterRate_hz),
    display_classes: classesJson(figures.displayClasses),
    carried_by: figures.carriers.map((carrier) => ({ interface: carrier.interface.name, fit: carrier.fit })),
    fits: Object.fromEntries(figures.fits.map((one) => [one.interface.name, one.count])),
  };
}

function classesJson(classes: FormatFigures['displayClasses']) {
  const tmds = (classes?.tmds ?? []).flatMap(({ link, fit }) =>
    fit === 'too big'
      ? []
      : [{ character_rate_hz: link.character_rate_hz, lanes: null, lane_bits_per_second: null, fit }],
  );
  const lanes = (classes?.fixed_rate ?? []).flatMap(({ link, fit }) =>
    fit === 'too big'
      ? []
      : [
          {
            character_rate_hz: null,
            lanes: link.lanes,
            lane_bits_per_second: link.lane_bits_per_second,
            fit,
          },
        ],
  );
  return [...tmds, ...lanes];
}
