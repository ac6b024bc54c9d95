import { type LangiumDocument, URI } from 'langium';
import type { CodeLensProvider } from 'langium/lsp';
import type { CodeLens, Command, Connection, Position } from 'vscode-languageserver';
import type { Analysis, Kit, Link, Node, Segment } from '../analysis/model.ts';
import type { PlanFile } from '../language/generated/ast.ts';
import { formatShare } from '../physics/display.ts';
import type { Statement } from '../plan/plan.ts';
import { statementAt } from './positions.ts';
import { clientCommands, type PlacesShown } from './protocol.ts';
import { rangeOf } from './publish.ts';
import type { FeedplotLspServices, FeedplotSharedServices } from './services.ts';
import { wantsLenses } from './settings.ts';
import { indexOf } from './statements-of.ts';

/** What a line above a statement says, and the places that it speaks of. */
interface Told {
  readonly title: string;
  readonly places: readonly Statement[];
}

/** Lines above the text: what a node carries, how full a link is and when, how often a kit is used. */
export class PlanLenses implements CodeLensProvider {
  readonly #shared: FeedplotSharedServices;

  constructor(services: FeedplotLspServices) {
    this.#shared = services.shared as FeedplotSharedServices;
  }

  async provideCodeLens(document: LangiumDocument): Promise<CodeLens[]> {
    const { Plans } = this.#shared.plans;
    if (!(await wantsLenses(this.#shared.workspace.ConfigurationProvider))) return [];
    const analysis = Plans.of(document)?.analysis;
    if (!analysis) return [];
    const read = Plans.read(document);
    const data = document.uri.toString();
    return (document.parseResult.value as PlanFile).statements.flatMap((node) => {
      const statement = lensed.has(node.$type) ? read.statementOf(node) : undefined;
      const range = statement && hasLens(analysis, statement) ? node.$cstNode?.range : undefined;
      return range ? [{ range, data }] : [];
    });
  }
}

/** Says what a lens says once it comes into sight. */
export function addCodeLensResolveHandler(connection: Connection, shared: FeedplotSharedServices): void {
  connection.onCodeLensResolve((lens: CodeLens): CodeLens => {
    const uri = lens.data as string;
    const document = shared.workspace.LangiumDocuments.getDocument(URI.parse(uri));
    const analysis = document && shared.plans.Plans.of(document)?.analysis;
    const node = document && statementAt(document, document.textDocument.offsetAt(lens.range.start));
    const statement = node && shared.plans.Plans.read(document).statementOf(node);
    const told = analysis && statement ? tell(analysis, statement) : undefined;
    // The text has changed meanwhile: new lenses are on their way.
    if (!told) return { ...lens, command: { title: '', command: '' } };
    return { ...lens, command: commandOf(uri, lens.range.start, told, shared) };
  });
}

function commandOf(
  uri: string,
  position: Position,
  { title, places }: Told,
  { plans }: FeedplotSharedServices,
): Command {
  // An editor that cannot show places gets words without a click.
  if (!plans.Abilities.options.showsPlaces || places.length === 0) return { title, command: '' };
  const shown: PlacesShown = {
    uri,
    position,
    places: places.map(({ source }) => ({ uri: source.file, range: rangeOf(source.range()) })),
  };
  return { title, command: clientCommands.showPlaces, arguments: [shown] };
}

const lensed: ReadonlySet<string> = new Set(['Node', 'Kit', 'Segment', 'Link']);

/** Whether there is something to say above a statement. */
function hasLens(analysis: Analysis, statement: Statement): boolean {
  const { fact } = statement;
  if (fact.kind === 'node') return (analysis.nodes.get(fact.name)?.kit?.ports.length ?? 0) > 0;
  if (fact.kind !== 'link') return true;
  const link = indexOf(analysis).links.get(statement);
  return link?.network === true && link.named;
}

function tell(analysis: Analysis, statement: Statement): Told | undefined {
  const { fact } = statement;
  switch (fact.kind) {
    case 'node':
      return tellOf(analysis.nodes.get(fact.name), (node) => nodeLens(analysis, node));
    case 'kit':
      return tellOf(analysis.kits.get(fact.name), (kit) => kitLens(analysis, kit));
    case 'segment':
      return tellOf(analysis.segments.get(fact.name), (segment) => segmentLens(analysis, segment));
    case 'link':
      return tellOf(indexOf(analysis).links.get(statement), (link) => linkLens(analysis, link));
    default:
      return undefined;
  }
}

function tellOf<T>(found: T | undefined, tellIt: (found: T) => Told): Told | undefined {
  return found === undefined ? undefined : tellIt(found);
}

function nodeLens(analysis: Analysis, node: Node): Told {
  const deliveries = indexOf(analysis).through.get(node) ?? [];
  const pictures = new Set(deliveries.map(({ feed }) => feed.sourceName));
  const ports = node.kit?.ports.length ?? 0;
  const used = node.usedPorts.filter((port) => (port?.links.length ?? 0) > 0).length;
  const carries = pictures.size === 0 ? 'carries no picture' : `carries ${counted(pictures.size, 'picture')}`;
  return {
    title: `${carries} · ${ports - used} of ${counted(ports, 'port')} free`,
    places: [...new Set(deliveries.map(({ feed }) => feed.statement))],
  };
}

/** `3 feeds, worst segment results, 80.5 %` */
function linkLens(analysis: Analysis, link: Link): Told {
  const feeds = indexOf(analysis).over.get(link) ?? [];
  const places = [...new Set(feeds.map(({ feed }) => feed.statement))];
  const { worst, unused } = analysis.traffic[link.index]!;
  if (link.standbyFor)
    return { title: `stands by for ${link.standbyFor.name}`, places: [link.standbyFor.statement] };
  if (unused || worst.share === undefined) return { title: 'carries nothing', places: [] };
  const when = worst.segment ? `worst segment ${worst.segment.name}, ` : '';
  return {
    title: `${counted(new Set(feeds.map(({ feed }) => feed)).size, 'feed')}, ${when}${formatShare(worst.share)}`,
    places,
  };
}

function kitLens(analysis: Analysis, kit: Kit): Told {
  const used = indexOf(analysis).ofKit.get(kit) ?? [];
  return {
    title: used.length === 0 ? 'not used in this plan' : `used ${counted(used.length, 'time')}`,
    places: used.map(({ statement }) => statement),
  };
}

function segmentLens(analysis: Analysis, segment: Segment): Told {
  const situation = indexOf(analysis).situations.get(segment);
  const own = situation?.own ?? [];
  const ended = situation?.ended.size ?? 0;
  return {
    title:
      own.length + ended === 0
        ? 'nothing differs here'
        : `${counted(own.length, 'picture')} of its own, ${ended} ended`,
    places: [...new Set([...own.map(({ feed }) => feed.statement)])],
  };
}

function counted(count: number, one: string): string {
  return `${count} ${one}${count === 1 ? '' : 's'}`;
}
