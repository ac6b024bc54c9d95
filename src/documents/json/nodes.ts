import type { FirmwareState, Node, NodeAddress, Powering } from '../../analysis/model.ts';
import { type Socket, socketsOf } from '../../analysis/ports.ts';
import { poweredByJson, poweredByShape } from './power.ts';
import { list, number, object, oneOf, orNull, text, type ValueOf } from './schema.ts';

const portShape = object('A socket', {
  name: text('Its name on the node: `in1`'),
  role: oneOf('pass: it leads on either way without regenerating', [
    'input',
    'output',
    'network',
    'pass',
    'unknown',
  ]),
  interface: orNull(text('What its socket is')),
  label: orNull(text('What the crew calls it')),
  link: orNull(text('Name of the cable that is plugged in; of several, the first')),
});

export const nodeShape = object('A box', {
  name: text('Its name'),
  kit: orNull(text('What kind of thing it is')),
  place: orNull(text('Where it stands')),
  power_w: orNull(number('What it draws, in watts')),
  powered_by: poweredByShape,
  address: orNull(text('Its network address: as written, else assigned from the prefix of the plan')),
  firmware_wanted: orNull(text('The version that its kit is to have')),
  firmware_found: orNull(text('The version that was found in it')),
  ports: list('All its sockets, in the order of its kit', portShape),
});

/** What is worked out for all nodes at once. */
export interface NodeFacts {
  readonly powering: Powering;
  readonly addresses: ReadonlyMap<Node, NodeAddress>;
  readonly firmware: ReadonlyMap<Node, FirmwareState>;
}

export function nodeJson(
  node: Node,
  { powering, addresses, firmware }: NodeFacts,
): ValueOf<typeof nodeShape> {
  return {
    name: node.name,
    kit: node.kit?.name ?? null,
    place: node.place?.name ?? null,
    power_w: node.kit?.statement.fact.draws_w ?? null,
    powered_by: poweredByJson(node, powering),
    address: addresses.get(node)?.address ?? null,
    firmware_wanted: firmware.get(node)?.wanted ?? null,
    firmware_found: firmware.get(node)?.found ?? null,
    ports: socketsOf(node).map(portJson),
  };
}

function portJson({ kitPort, label, port }: Socket): ValueOf<typeof portShape> {
  return {
    name: kitPort.name,
    role: kitPort.role,
    interface: kitPort.interface?.name ?? null,
    label: label ?? null,
    link: port?.links[0]?.name ?? null,
  };
}
