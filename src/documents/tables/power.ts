import { poweringOf } from '../../analysis/circuit-loads.ts';
import type { Analysis } from '../../analysis/model.ts';
import { formatPower, formatShare, formatVoltage } from '../../physics/display.ts';
import type { Table } from '../text-table.ts';

/** What every circuit carries, what is fed over the network, and what is fed by nothing. */
export function powerTables(analysis: Analysis): Table[] {
  const { circuits, network, unpowered, places } = poweringOf(analysis);
  return [
    {
      name: 'circuits',
      columns: [
        { title: 'Circuit' },
        { title: 'Place' },
        { title: 'Fed by' },
        { title: 'Load', right: true },
        { title: 'Limit', right: true },
        { title: 'Used', right: true },
      ],
      rows: circuits.map(({ circuit, load_w, limit_w, share }) => [
        circuit.name,
        circuit.place?.name ?? '',
        circuit.from?.name ?? '',
        formatPower(load_w, limit_w),
        limit_w === undefined ? 'not known' : formatPower(limit_w, load_w),
        share === undefined ? '' : formatShare(share),
      ]),
      empty: 'No circuits in this plan.',
    },
    {
      name: 'network power',
      columns: [
        { title: 'Fed over the network' },
        { title: 'Supply' },
        { title: 'Class', right: true },
        { title: 'Supplied', right: true },
        { title: 'Arrives', right: true },
        { title: 'At', right: true },
      ],
      rows: network.powers.map((power) => [
        power.device.name,
        power.supply.text,
        String(power.poeClass),
        power.supply_w === undefined ? 'not known' : formatPower(power.supply_w),
        formatPower(power.device_w),
        power.device_v === undefined ? '' : formatVoltage(power.device_v),
      ]),
      empty: 'Nothing is fed over the network.',
    },
    {
      name: 'places',
      columns: [{ title: 'Drawn at' }, { title: 'Load', right: true }],
      rows: places.map(({ place, load_w }) => [place.name, formatPower(load_w)]),
      empty: 'Nothing in this plan says what it draws.',
    },
    {
      name: 'unpowered',
      columns: [{ title: 'Fed by nothing' }, { title: 'Place' }],
      rows: unpowered.map(({ name, place }) => [name, place?.name ?? '']),
      empty: 'Everything that draws power is fed.',
    },
  ];
}
