import { firmwareOf } from '../../analysis/firmware.ts';
import type { Analysis, Node } from '../../analysis/model.ts';
import { type Socket, socketsOf } from '../../analysis/ports.ts';
import { formatPower } from '../../physics/display.ts';
import type { Table } from '../text-table.ts';

/** Firmware wanted and found, box by box, where the plan speaks of it. */
export function firmwareTable(analysis: Analysis): Table {
  return {
    name: 'firmware',
    columns: [{ title: 'Firmware of' }, { title: 'Wanted' }, { title: 'Found' }, { title: 'To do' }],
    rows: firmwareOf(analysis).states.map(({ node, wanted, found }) => [
      node.name,
      wanted ?? '',
      found ?? '',
      wanted !== undefined && found !== undefined && wanted !== found ? 'update' : '',
    ]),
    empty: 'This plan speaks of no firmware.',
  };
}

/** Every box: what and where it is, and how many of its sockets are in use. */
export function nodesTable({ nodes }: Analysis): Table {
  return {
    name: 'nodes',
    columns: [
      { title: 'Node' },
      { title: 'Kit' },
      { title: 'Place' },
      { title: 'Draws', right: true },
      { title: 'Inputs', right: true },
      { title: 'Outputs', right: true },
      { title: 'Network', right: true },
    ],
    rows: [...nodes.values()].map((node) => {
      const sockets = socketsOf(node);
      const draws_w = node.kit?.statement.fact.draws_w;
      return [
        titleOf(node),
        node.kit?.name ?? '',
        node.place?.name ?? '',
        draws_w === undefined ? '' : formatPower(draws_w),
        inUse(sockets, 'input'),
        inUse(sockets, 'output'),
        inUse(sockets, 'network'),
      ];
    }),
    empty: 'No nodes in this plan.',
  };
}

function titleOf({ name, statement }: Node): string {
  return statement.label === undefined ? name : `${name}, ${statement.label}`;
}

function inUse(sockets: readonly Socket[], role: Socket['kitPort']['role']): string {
  const some = sockets.filter(({ kitPort }) => kitPort.role === role);
  if (some.length === 0) return '';
  const used = some.filter(({ port }) => port !== undefined && port.links.length > 0);
  return `${used.length} of ${some.length}`;
}
