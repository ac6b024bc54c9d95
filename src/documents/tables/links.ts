import type { Analysis, Link, Reach, Traffic } from '../../analysis/model.ts';
import { formatLength, formatRate, formatShare } from '../../physics/display.ts';
import type { Table } from '../text-table.ts';

const verdicts: Record<Reach['verdict'], string> = {
  good: '',
  'not known': '',
  'near the limit': ', near its limit',
  doubtful: ', doubtful',
  beyond: ', too long',
};

/** Every cable: how long it is and may be, and what it carries each way. */
export function linksTable(analysis: Analysis): Table {
  return {
    name: 'links',
    columns: [
      { title: 'Link' },
      { title: 'Cable' },
      { title: 'Length' },
      { title: 'Forward' },
      { title: 'Backward' },
    ],
    rows: analysis.links.map((link) => [
      nameOf(link),
      link.cable?.name ?? '',
      lengthOf(analysis, link),
      loadOf(link, analysis.traffic[link.index]!, 'forward'),
      loadOf(link, analysis.traffic[link.index]!, 'backward'),
    ]),
    empty: 'No links in this plan.',
  };
}

function nameOf({ named, name, from, to, bothWays }: Link): string {
  const ends = `${from.text} ${bothWays ? '<->' : '->'} ${to.text}`;
  return named ? `${name}: ${ends}` : ends;
}

/** How long it is of how long it may be; where several cables count as one, all of them. */
function lengthOf({ settings, reaches }: Analysis, { length, chain }: Link): string {
  const { reach_m, verdict } = reaches[chain.index]!;
  const show = (length_m: number) => formatLength(length_m, settings.units, reach_m);
  if (length.length_m === undefined) return 'not known';
  const joined =
    chain.links.length > 1 && chain.length_m !== undefined ? `; joined ${show(chain.length_m)}` : '';
  const planned =
    length.from === 'measured' && length.planned_m !== undefined
      ? ` measured, planned ${show(length.planned_m)}`
      : '';
  const most = reach_m === undefined ? '' : ` of ${formatLength(reach_m, settings.units, chain.length_m)}`;
  return show(length.length_m) + planned + joined + most + verdicts[verdict];
}

/** On the network the load and its share, with the segment in which it is fuller; on any other cable whose picture. */
function loadOf({ network }: Link, { base, worst }: Traffic, direction: 'forward' | 'backward'): string {
  const { load_bits_per_second, pictures, share } = base[direction];
  if (!network) return pictures.map((source) => source.name).join(', ');
  const usual = loadText(load_bits_per_second, share);
  if (worst.segment === undefined || worst.direction !== direction) return usual;
  return `${usual}; ${loadText(worst.load_bits_per_second, worst.share)} in ${worst.segment.name}`;
}

function loadText(load_bits_per_second: number, share: number | undefined): string {
  if (load_bits_per_second === 0) return '0';
  const rate = formatRate(load_bits_per_second);
  return share === undefined ? rate : `${rate}, ${formatShare(share)}`;
}
