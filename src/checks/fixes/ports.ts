/** Moving a cable to a socket that is free. */

import type { Link, Node, Port } from '../../analysis/model.ts';
import { socketsOf } from '../../analysis/ports.ts';
import type { Edit, Fix } from '../finding.ts';
import { endPart, quoted } from '../words.ts';

/** Plugs a link into a free port of the same kind on the same node; what the feeds say of the old port moves along. */
export function freePortFix(link: Link, port: Port): Fix | undefined {
  const { owner } = port;
  if (owner.kind !== 'node') return undefined;
  const end = link.from.port === port ? 'from' : 'to';
  const part = endPart(link, end);
  const free = freePortLike(owner, port);
  if (part === undefined || free === undefined) return undefined;
  const edit: Edit = { kind: 'replace', statement: link.statement, part: `${part}.port`, text: free };
  return { title: `Use the free port ${quoted(`${owner.name}.${free}`)}`, edits: [edit] };
}

/** The first port of the node that has the same role and interface and nothing plugged in. */
export function freePortLike(node: Node, port: Port): string | undefined {
  const { kitPort } = port;
  return socketsOf(node).find(
    ({ kitPort: other, port: used }) =>
      other.role === port.role &&
      other.interface === port.interface &&
      other.gives === kitPort?.gives &&
      other.follows === kitPort?.follows &&
      (used?.links.length ?? 0) === 0,
  )?.kitPort.name;
}
