import type { Kit, KitPort, Node, PortRole } from '../../analysis/model.ts';
import { socketsOf } from '../../analysis/ports.ts';
import { pluggedText, portHover } from '../hover/box-hovers.ts';
import { type Asked, CompletionItemKind, lastOf, type Offer } from './asked.ts';
import { namedOffer } from './names.ts';

/** Boxes for one end of a cable, those with a fitting free port first. */
export function nodeOffers(asked: Asked): Offer[] {
  const { analysis, visible } = asked;
  const roles = rolesWanted(asked);
  return visible.flatMap((statement) => {
    const { fact } = statement;
    const offer = fact.kind === 'node' ? namedOffer(asked, statement) : undefined;
    const node = fact.kind === 'node' ? analysis?.nodes.get(fact.name) : undefined;
    if (!offer || !node) return offer ? [offer] : [];
    const free = socketsOf(node).filter(
      ({ kitPort, port }) => roles.includes(kitPort.role) && !port?.links.length,
    );
    const count = `${free.length || 'no'} free ${nounFor(roles)}${free.length === 1 ? '' : 's'}`;
    return [
      {
        ...offer,
        detail: [statement.label, count].filter((part) => part).join(' · '),
        group: free.length > 0 ? 1 : 3,
      },
    ];
  });
}

/** The ports of a box: those that fit and are free first, the others with what is plugged into them. */
export function portOffers(asked: Asked, slot: string): Offer[] {
  const node = nodeMeant(asked, slot);
  if (node) return socketOffers(asked, node, slot);
  const kit = kitMeant(asked, slot);
  return (kit?.ports ?? []).map((port) => ({
    label: port.name,
    kind: CompletionItemKind.Property,
    detail: kindText(port),
    group: slot === 'PortFormat.port' && port.role !== 'output' ? 3 : 1,
  }));
}

function socketOffers(asked: Asked, node: Node, slot: string): Offer[] {
  const roles = slot.startsWith('Endpoint') || slot.startsWith('FeedTarget') ? rolesWanted(asked) : allRoles;
  const occupies = slot.startsWith('Endpoint') && lastOf(asked, ['via', 'into', 'from', 'link']) !== 'via';
  return socketsOf(node).map(({ kitPort, label, port }): Offer => {
    const fits = roles.includes(kitPort.role);
    const plugged =
      port && port.links.length > 0 ? `taken: ${pluggedText(port).replaceAll('`', '')}` : 'free';
    const free = plugged === 'free' || !occupies;
    return {
      label: kitPort.name,
      kind: CompletionItemKind.Property,
      detail: [label, plugged, kindText(kitPort)].filter((part) => part).join(' · '),
      documentation: asked.analysis && portHover(asked.analysis, node, kitPort.name),
      group: fits ? (free ? 1 : 2) : 3,
    };
  });
}

const allRoles: readonly PortRole[] = ['input', 'output', 'network', 'pass', 'unknown'];

/** Which ports make sense here: a cable begins at an output and ends at an input. */
function rolesWanted(asked: Asked): readonly PortRole[] {
  switch (lastOf(asked, ['into', 'from', 'via', '->', '<->', 'link'])) {
    case 'into':
      return ['input', 'network', 'pass'];
    case 'from':
      return ['output', 'network', 'pass'];
    case '->':
      return asked.where.before[0]?.image === 'link' ? ['input', 'network', 'pass'] : ['input'];
    case '<->':
      return ['network', 'pass'];
    case 'link':
      return ['output', 'network', 'pass'];
    default:
      return allRoles;
  }
}

function nounFor(roles: readonly PortRole[]): string {
  if (roles.length > 3) return 'port';
  return roles[0] === 'input' || roles[0] === 'output' ? roles[0] : 'port';
}

function kindText({ role, interface: face }: KitPort): string {
  return face ? `${role} as ${face.name}` : role;
}

/** The box that the port is of: before the dot, or the one whose block is open. */
function nodeMeant({ analysis, where }: Asked, slot: string): Node | undefined {
  if (slot === 'PortUse.port') return undefined;
  const { before } = where;
  const own = slot === 'PortLabel.port' || slot === 'PortFormat.port';
  const name = own ? before[1]?.image : before.at(-2)?.image;
  return name === undefined ? undefined : analysis?.nodes.get(name);
}

function kitMeant({ analysis, where }: Asked, slot: string): Kit | undefined {
  const { before } = where;
  if (slot === 'PortUse.port') return analysis?.kits.get(before[1]?.image ?? '');
  const colon = before.findIndex(({ image }) => image === ':');
  return colon < 0 ? undefined : analysis?.kits.get(before[colon + 1]?.image ?? '');
}
