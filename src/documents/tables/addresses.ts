import { addressingOf } from '../../analysis/addresses.ts';
import type { Analysis } from '../../analysis/model.ts';
import type { Table } from '../text-table.ts';

/** Addresses of boxes, and multicast groups of sources. */
export function addressTables(analysis: Analysis): Table[] {
  const { nodes, groups } = addressingOf(analysis);
  return [
    {
      name: 'addresses',
      columns: [{ title: 'Node' }, { title: 'Address' }, { title: 'From' }],
      rows: nodes.map(({ node, address, stated }) => [
        node.name,
        address ?? 'no place left',
        stated ? 'stated' : 'assigned',
      ]),
      empty: 'No addresses: the plan states none, and no `subnet` to take them from.',
    },
    {
      name: 'groups',
      columns: [{ title: 'Source' }, { title: 'Group' }, { title: 'On the wire' }],
      rows: groups.map(({ source, group, hardwareAddress, flooded }) => [
        source.name,
        group ?? 'no place left',
        `${hardwareAddress ?? ''}${flooded ? ', flooded' : ''}`,
      ]),
      empty: 'No groups: the plan states no `multicast` to take them from, or nothing rides on the network.',
    },
  ];
}
