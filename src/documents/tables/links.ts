import type { Analysis, DirectionLoad, Link, Reach, Traffic } from '../../analysis/model.ts';
import { formatLength, formatRate, formatShare } from '../../physics/display.ts';
import type { Column, Table } from '../text-table.ts';

const verdicts: Record<Reach['verdict'], string> = {
  good: '',
  'not known': '',
  'near the limit': ', near its limit',
  doubtful: ', doubtful',
  beyond: ', too long',
};

/** Every cable: how long it is and may be, and what it carries each way. */
export function linksTable(analysis: Analysis): Table {
  const { links, segments } = analysis;
  const columns: Column[] = [
    { title: 'Link' },
    { title: 'Cable' },
    { title: 'Length' },
    { title: 'Forward' },
    { title: 'Backward' },
    ...(segments.size > 0 ? [{ title: 'Fullest' }] : []),
  ];
  const rows = links.map((link) => {
    const traffic = analysis.traffic[link.index]!;
    return [
      nameOf(link),
      link.cable?.name ?? '',
      lengthOf(analysis, link),
      loadOf(link, traffic.base.forward),
      loadOf(link, traffic.base.backward),
      ...(segments.size > 0 ? [fullestOf(link, traffic)] : []),
    ];
  });
  return { name: 'links', columns, rows, empty: 'No links in this plan.' };
}

function nameOf({ named, name, from, to, bothWays }: Link): string {
  const ends = `${from.text} ${bothWays ? '<->' : '->'} ${to.text}`;
  return named ? `${name}: ${ends}` : ends;
}

function lengthOf({ settings, reaches }: Analysis, { length, chain }: Link): string {
  const { reach_m, verdict } = reaches[chain.index]!;
  if (length.length_m === undefined) return 'not known';
  const own = formatLength(length.length_m, settings.units, reach_m);
  const most = reach_m === undefined ? '' : ` of ${formatLength(reach_m, settings.units, length.length_m)}`;
  return own + most + verdicts[verdict];
}

/** On the network the load and its share; on any other cable whose picture it is. */
function loadOf({ network }: Link, { load_bits_per_second, pictures, share }: DirectionLoad): string {
  if (!network) return pictures.map((source) => source.name).join(', ');
  if (load_bits_per_second === 0) return '0';
  const rate = formatRate(load_bits_per_second);
  return share === undefined ? rate : `${rate}, ${formatShare(share)}`;
}

function fullestOf({ network }: Link, { worst }: Traffic): string {
  if (!network || worst.share === undefined || worst.load_bits_per_second === 0) return '';
  const where = worst.segment === undefined ? '' : ` in ${worst.segment.name}`;
  return `${worst.direction} ${formatShare(worst.share)}${where}`;
}
