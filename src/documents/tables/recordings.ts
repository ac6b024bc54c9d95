import type { Analysis } from '../../analysis/model.ts';
import { recordingsOf } from '../../analysis/recordings.ts';
import { formatBytes, formatRate } from '../../physics/display.ts';
import type { Table } from '../text-table.ts';

/** What records, and the storage to bring. */
export function recordingsTable(analysis: Analysis): Table {
  return {
    name: 'recordings',
    columns: [{ title: 'Recorder' }, { title: 'Rate', right: true }, { title: 'Storage', right: true }],
    rows: recordingsOf(analysis).map(({ destination, bytes }) => {
      const rate = destination.statement.fact.records_bits_per_second;
      return [
        destination.name,
        rate === undefined ? '' : formatRate(rate),
        bytes === undefined ? 'the plan does not say how long it lasts' : formatBytes(bytes),
      ];
    }),
    empty: 'Nothing records in this plan.',
  };
}
