/** Boxes: nodes, their ports, and the kits that they are. */
import type { Analysis, Kit, KitPort, Link, Node, Port } from '../../analysis/model.ts';
import { formatFrames, formatPower, formatShare, formatTime, formatWeight } from '../../physics/display.ts';
import type { Duration } from '../../plan/facts.ts';
import { lossLines } from './loss-lines.ts';
import { bold, code, description, lines, paragraphs, plain, table } from './markdown.ts';
import { powerLine, preparationLines } from './supply-hovers.ts';

/** A node: what kit it is, where it stands, what is plugged into it and what its network ports carry. */
export function nodeHover(analysis: Analysis, node: Node): string {
  const { kit, place, statement } = node;
  const plugged = node.usedPorts.filter((port): port is Port => port !== undefined && port.links.length > 0);
  const rows = plugged.map((port) => [
    code(port.name),
    plain(port.label ?? ''),
    pluggedText(port),
    loadText(analysis, port),
  ]);
  return paragraphs(
    lines(
      `${bold(node.name)} · ${kit ? plain(kit.statement.label ?? kit.name) : 'kit not known'}${place ? ` at ${plain(place.name)}` : ''}`,
      statement.label && plain(statement.label),
    ),
    lines(
      powerLine(analysis, node),
      ...preparationLines(analysis, node),
      kit && `Free: ${freeText(node, kit)}`,
      ...lossLines(analysis, node),
    ),
    rows.length > 0 && table(['port', 'label', 'plugged', 'carries'], rows),
    description(statement.description),
  );
}

/** A port: its part in the box, what may be plugged in, and what is. */
export function portHover(analysis: Analysis, node: Node, name: string): string | undefined {
  const kitPort = node.kit?.portsByName.get(name);
  if (!kitPort) return undefined;
  const port = node.usedPorts[kitPort.index];
  return paragraphs(
    lines(`${bold(`${node.name}.${name}`)} · ${roleText(kitPort)}`, port?.label && plain(port.label)),
    lines(
      port && port.links.length > 0 ? `Plugged: ${pluggedText(port)}` : '**Free**',
      port && loadText(analysis, port) && `Carries ${loadText(analysis, port)}`,
      ...passes(kitPort),
    ),
  );
}

/** One row of ports as a kit declares it. */
export function kitHover(analysis: Analysis, kit: Kit): string {
  const { fact, label, description: said } = kit.statement;
  const used = [...analysis.nodes.values()].filter((node) => node.kit === kit);
  return paragraphs(
    lines(`${bold(kit.name)} · kit`, label && plain(label)),
    lines(
      ...roles.flatMap((role) => {
        const ports = kit.ports.filter((port) => port.role === role.role);
        return ports.length > 0
          ? [`${ports.length} ${ports.length === 1 ? role.one : role.many}: ${plain(rowsOf(ports))}`]
          : [];
      }),
      kit.carries && `Carries pictures ${plain(kit.carries.text)} on the network`,
      kit.forwards && 'Forwards between its network ports',
      kit.routes && 'Routes any input to any output',
      kit.delay && `Delay ${durationText(kit.delay)} for each passage`,
      fact.draws_w !== undefined && `Draws ${formatPower(fact.draws_w)}`,
      fact.weight_kg !== undefined && `Weighs ${formatWeight(fact.weight_kg)}`,
      used.length > 0 ? `Nodes: ${plain(used.map(({ name }) => name).join(', '))}` : 'No node is one.',
    ),
    description(said),
  );
}

const roles = [
  { role: 'input', one: 'input', many: 'inputs' },
  { role: 'output', one: 'output', many: 'outputs' },
  { role: 'network', one: 'network port', many: 'network ports' },
  { role: 'pass', one: 'port that passes', many: 'ports that pass' },
] as const;

function rowsOf(ports: readonly KitPort[]): string {
  const shown = ports
    .slice(0, 12)
    .map(({ name, interface: face }) => (face ? `${name} (${face.name})` : name));
  return ports.length > 12 ? `${shown.join(', ')} … ${ports.at(-1)!.name}` : shown.join(', ');
}

function roleText({ role, interface: face }: KitPort): string {
  const word = roles.find((one) => one.role === role)?.one ?? 'port';
  return face ? `${word} as ${plain(face.statement.label ?? face.name)}` : word;
}

function passes({ follows, joined, gives }: KitPort): string[] {
  return [
    ...(follows ? [`Copies ${code(follows.name)}`] : []),
    ...(joined ? [`Passes to and from ${code(joined.name)}`] : []),
    ...(gives ? ['Turns every picture into its own format'] : []),
  ];
}

/** Counts of what is left, which is what people look for. */
function freeText(node: Node, kit: Kit): string {
  const counts = roles.flatMap(({ role, one, many }) => {
    const ports = kit.ports.filter((port) => port.role === role);
    const free = ports.filter(({ index }) => (node.usedPorts[index]?.links.length ?? 0) === 0).length;
    return ports.length > 0 ? [`${free} of ${ports.length} ${ports.length === 1 ? one : many}`] : [];
  });
  return counts.join(', ') || 'it has no ports';
}

/** What the other end of each cable in a port is. */
export function pluggedText(port: Port): string {
  return port.links
    .map((link) => {
      const other = link.from.port === port ? link.to : link.from;
      return `${link.named ? `${plain(link.name)} to ` : ''}${code(other.text)}`;
    })
    .join(', ');
}

/** `2 out 53.7 %, 3 in 80.5 %` for the network, else the name of the picture. */
function loadText({ traffic }: Analysis, port: Port): string {
  return port.links
    .map((link) => linkLoad(traffic[link.index]!.base, link, port))
    .filter((part) => part)
    .join('; ');
}

function linkLoad(base: Analysis['traffic'][number]['base'], link: Link, port: Port): string {
  const [out, into] = link.from.port === port ? [base.forward, base.backward] : [base.backward, base.forward];
  if (!link.network) return plain([...out.pictures, ...into.pictures].map(({ name }) => name).join(', '));
  const part = ({ flows, share }: typeof out, way: string) =>
    flows.length === 0 ? '' : `${flows.length} ${way}${share === undefined ? '' : ` ${formatShare(share)}`}`;
  return [part(out, 'out'), part(into, 'in')].filter((text) => text).join(', ');
}

export function durationText(duration: Duration): string {
  return 'frames' in duration ? formatFrames(duration.frames) : formatTime(duration.seconds);
}
