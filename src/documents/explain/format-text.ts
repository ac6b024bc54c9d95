import { formatFrequency, formatRate } from '../../physics/display.ts';
import { formatFormat } from '../../physics/raster.ts';
import { formatWorking } from '../../physics/working.ts';
import { wrapDefinitions } from '../wrap.ts';
import type { FormatFigures } from './format-figures.ts';

/** A format in words, with the working of every figure below. */
export function formatExplanation(figures: FormatFigures, width: number): string[] {
  const { format, loads, workings } = figures;
  return [
    formatFormat(format),
    '',
    ...wrapDefinitions(
      [
        ['On the network', onNetwork(figures)],
        ['Visible pixels', loads.active_bits_per_second > 0 ? formatRate(loads.active_bits_per_second) : ''],
        ['Packets a frame', loads.packets_per_frame === undefined ? '' : String(loads.packets_per_frame)],
        ['On SDI', onSdi(figures)],
        ['On a display link', onDisplay(figures)],
        ['Display classes', classesText(figures)],
        ['Carried by', figures.carriers.map(carrierText).join(', ')],
        ['Fit one way', fitsText(figures)],
      ],
      width,
    ),
    '',
    'How the figures were got',
    ...workings.flatMap((working) => ['', ...formatWorking(working)]),
  ];
}

function onNetwork({ format, loads }: FormatFigures): string {
  const total = formatRate(loads.total_bits_per_second);
  if (format.kind === 'sound') return total;
  const picture = formatRate(loads.picture_bits_per_second);
  const sound = formatRate(loads.sound_bits_per_second);
  return `${total}: picture ${picture}, sound ${sound}, ancillary data ${formatRate(loads.ancillary_bits_per_second)}`;
}

function onSdi({ format, sdi_bits_per_second, sdiWays }: FormatFigures): string {
  if (format.kind === 'sound') return '';
  if (sdi_bits_per_second === undefined)
    return 'not carried: SDI has no raster for it, or not this sampling and depth';
  const ways = sdiWays.map(({ interface: { name }, links }) => (links === 1 ? name : `${links} x ${name}`));
  return `${formatRate(sdi_bits_per_second)}: ${ways.length > 0 ? ways.join(', ') : 'too much for any'}`;
}

function onDisplay({ displayFormat, characterRate_hz }: FormatFigures): string {
  if (!displayFormat) return '';
  if (characterRate_hz === undefined)
    return 'not carried: no timing exists for it, or not this sampling and depth';
  const { sampling, depth_bits } = displayFormat;
  return `${formatFrequency(characterRate_hz)} character rate as ${sampling} ${depth_bits} bit`;
}

/** The slowest class of each kind that carries it: every faster one does too. */
function classesText({ displayClasses }: FormatFigures): string {
  const tmds = displayClasses?.tmds.find(({ fit }) => fit === 'fits');
  const lanes = displayClasses?.fixed_rate.find(({ fit }) => fit === 'fits');
  return [
    tmds ? `from ${formatFrequency(tmds.link.character_rate_hz)}` : '',
    lanes ? `from ${lanes.link.lanes} lanes of ${formatRate(lanes.link.lane_bits_per_second)}` : '',
  ]
    .filter(Boolean)
    .join(', or ');
}

function carrierText({ interface: { name }, fit }: FormatFigures['carriers'][number]): string {
  return fit === 'fits' ? name : `${name} (doubtful)`;
}

/** Interfaces of one rate fit the same number: told once by rate. */
function fitsText({ fits }: FormatFigures): string {
  const byRate = new Map(fits.map((one) => [one.interface.rate_bits_per_second, one.count]));
  return [...byRate]
    .sort(([a], [b]) => a - b)
    .map(([rate, count]) => `${count} in ${formatRate(rate)}`)
    .join(', ');
}
