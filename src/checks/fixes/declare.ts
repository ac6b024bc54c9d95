/** Statements that declare what is missing, put where such things stand already. */
import type { Analysis, Kit, Node, UnknownName, Use } from '../../analysis/model.ts';
import { socketsOf } from '../../analysis/ports.ts';
import type { Fact } from '../../plan/facts.ts';
import type { Statement } from '../../plan/plan.ts';
import type { Edit, Fix } from '../finding.ts';
import { quoted } from '../words.ts';

/** A line behind the last statement of its kind in the same file; where there is none, behind the one that needs it. */
export function addStatement(
  { plan }: Analysis,
  kind: Fact['kind'],
  text: string,
  needing: Statement,
): Extract<Edit, { kind: 'insertAfter' }> {
  const { file } = needing.source;
  let statement = needing;
  for (const one of plan.statements) {
    if (one.source.file === file && one.fact.kind === kind) statement = one;
  }
  return { kind: 'insertAfter', statement, text };
}

/** Declares a missing name where it is clear how; the rest a person has to write. */
export function declareFix(analysis: Analysis, { wanted, name, uses }: UnknownName): Fix | undefined {
  const [use] = uses;
  if (!use) return undefined;
  const declared = declarationOf(analysis, wanted, name, uses);
  if (!declared) return undefined;
  return {
    title: `Declare the ${declared.kind} ${quoted(name)}`,
    edits: [addStatement(analysis, declared.kind, declared.text, use.statement)],
  };
}

interface Declaration {
  readonly kind: Fact['kind'];
  readonly text: string;
}

function declarationOf(
  analysis: Analysis,
  wanted: UnknownName['wanted'],
  name: string,
  uses: readonly Use[],
): Declaration | undefined {
  switch (wanted) {
    case 'place':
      return { kind: 'place', text: `place ${name}` };
    case 'segment':
      return { kind: 'segment', text: `segment ${name}` };
    case 'node':
      return nodeFor(analysis, name, uses);
    case 'destination':
    case 'target':
      return uses.some((use) => portAt(use) !== undefined)
        ? nodeFor(analysis, name, uses)
        : destinationFor(analysis, name, uses);
    default:
      return undefined;
  }
}

/** A node of the first kit that has every port that is spoken of. */
function nodeFor({ kits, nodes }: Analysis, name: string, uses: readonly Use[]): Declaration | undefined {
  const ports = uses.flatMap((use) => portAt(use) ?? []);
  const kit = [...kits.values()].find((one) => ports.every((port) => one.portsByName.has(port)));
  if (!kit) return undefined;
  const place = placeFor(uses, nodes);
  return { kind: 'node', text: `node ${name} : ${kit.name}${place === undefined ? '' : ` at ${place}`}` };
}

/** A destination at the first free output of a box that takes pictures off the network, or of any node. */
function destinationFor(analysis: Analysis, name: string, uses: readonly Use[]): Declaration | undefined {
  const { fact } = uses[0]!.statement;
  if (fact.kind !== 'feed') return undefined;
  const source = analysis.sources.get(fact.source);
  const format = source?.statement.fact.format?.text;
  const near = source?.link?.to.port?.owner;
  const free = freeOutput(analysis, (node) => node !== near) ?? freeOutput(analysis, () => true);
  if (!source || format === undefined || !free) return undefined;
  const { node, port, face } = free;
  const cable = analysis.links.find(
    (link) => link.chain.interface?.signal === face.signal && link.cable !== undefined,
  )?.cable;
  const over = cable ? ` over ${cable.name}${analysis.settings.slackStated ? '' : ' 5 m'}` : '';
  const at = node.place ? ` at ${node.place.name}` : '';
  return {
    kind: 'destination',
    text: `destination ${name}${at} takes ${format} as ${face.name} from ${node.name}.${port}${over}`,
  };
}

function freeOutput({ nodes }: Analysis, wanted: (node: Node) => boolean) {
  for (const node of nodes.values()) {
    if (!wanted(node) || !carriesPictures(node.kit)) continue;
    for (const { kitPort, port } of socketsOf(node)) {
      const { interface: face, role, follows } = kitPort;
      if (role !== 'output' || follows || !face || (port?.links.length ?? 0) > 0) continue;
      return { node, port: kitPort.name, face };
    }
  }
  return undefined;
}

function carriesPictures(kit: Kit | undefined): boolean {
  return kit?.carries !== undefined || kit?.routes === true;
}

/** The port that stands behind a node's name where it is used. */
function portAt({ statement: { fact }, part }: Use): string | undefined {
  const index = Number(/\/(\d+)/.exec(part)?.[1] ?? 0);
  if (fact.kind === 'link') return part.startsWith('from') ? fact.from.port : fact.to.port;
  if (fact.kind === 'source') return part.startsWith('into') ? fact.into?.port : fact.from?.port;
  if (fact.kind === 'destination') return fact.from?.port;
  if (fact.kind === 'feed') return part.startsWith('via') ? fact.via[index]?.port : fact.targets[index]?.port;
  return undefined;
}

/** Where the missing node stands: beside what is plugged into it, else at the other end of its link. */
function placeFor(uses: readonly Use[], nodes: ReadonlyMap<string, Node>): string | undefined {
  const facts = uses.map(({ statement }) => statement.fact);
  for (const fact of facts) {
    if ((fact.kind === 'source' || fact.kind === 'destination') && fact.place !== undefined)
      return fact.place;
  }
  for (const fact of facts) {
    if (fact.kind === 'link') return (nodes.get(fact.from.node) ?? nodes.get(fact.to.node))?.place?.name;
  }
  return undefined;
}
