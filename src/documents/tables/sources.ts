import type { Analysis } from '../../analysis/model.ts';
import { formatRate } from '../../physics/display.ts';
import { formatFormat } from '../../physics/raster.ts';
import type { Table } from '../text-table.ts';

/** Every source: what it sends, and what that takes on the network and on its own cable. */
export function sourcesTable({ sourceFigures }: Analysis): Table {
  return {
    name: 'sources',
    columns: [
      { title: 'Source' },
      { title: 'Format' },
      { title: 'On the network', right: true },
      { title: 'Carried' },
      { title: 'On its cable', right: true },
    ],
    rows: [...sourceFigures.values()].map((figures) => [
      figures.source.name,
      figures.format ? formatFormat(figures.format) : 'not known',
      rateOf(figures.network_bits_per_second),
      figures.carried.text,
      rateOf(figures.interface_bits_per_second),
    ]),
    empty: 'No sources in this plan.',
  };
}

function rateOf(rate_bits_per_second: number | undefined): string {
  return rate_bits_per_second === undefined ? '' : formatRate(rate_bits_per_second);
}
