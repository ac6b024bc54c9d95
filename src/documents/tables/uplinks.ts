import type { Analysis } from '../../analysis/model.ts';
import { uplinkLoadsOf } from '../../analysis/uplink-loads.ts';
import { formatRate, formatShare } from '../../physics/display.ts';
import type { Table } from '../text-table.ts';

/** What streams over every uplink, against what may be planned with. */
export function uplinksTable(analysis: Analysis): Table {
  const rate = (value: number | undefined) => (value === undefined ? '' : formatRate(value));
  return {
    name: 'uplinks',
    columns: [
      { title: 'Uplink' },
      { title: 'Streams' },
      { title: 'Stated', right: true },
      { title: 'Measured', right: true },
      { title: 'Usable', right: true },
      { title: 'Needed', right: true },
      { title: 'Used', right: true },
      { title: 'Still fits', right: true },
    ],
    rows: uplinkLoadsOf(analysis).map((load) => [
      load.uplink.name,
      load.destinations.map(({ name }) => name).join(', '),
      rate(load.stated_bits_per_second),
      rate(load.measured_bits_per_second),
      rate(load.usable_bits_per_second),
      formatRate(load.needed_bits_per_second, load.usable_bits_per_second),
      load.share === undefined ? '' : formatShare(load.share),
      rate(load.fits_bits_per_second),
    ]),
    empty: 'No uplinks in this plan.',
  };
}
