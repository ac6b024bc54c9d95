import type { LangiumDocument } from 'langium';
import type { CodeLensProvider } from 'langium/lsp';
import type { CodeLens, Command, Position } from 'vscode-languageserver';
import type { Analysis, Kit, Link, Node, Segment } from '../analysis/model.ts';
import type { PlanFile } from '../language/generated/ast.ts';
import { formatShare } from '../physics/display.ts';
import type { Statement } from '../plan/plan.ts';
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
    const analysis = Plans.of(document)?.analysis;
    if (!analysis || !(await wantsLenses(this.#shared.workspace.ConfigurationProvider))) return [];
    const read = Plans.read(document);
    return (document.parseResult.value as PlanFile).statements.flatMap((node) => {
      const statement = read.statementOf(node);
      const told = statement && tell(analysis, statement);
      const range = node.$cstNode?.range;
      if (!told || !range) return [];
      return [{ range, command: this.#command(document, range.start, told) }];
    });
  }

  #command(document: LangiumDocument, position: Position, { title, places }: Told): Command {
    // An editor that cannot show places gets words without a click.
    if (!this.#shared.plans.Abilities.options.showsPlaces || places.length === 0)
      return { title, command: '' };
    const shown: PlacesShown = {
      uri: document.uri.toString(),
      position,
      places: places.map(({ source }) => ({ uri: source.file, range: rangeOf(source.range()) })),
    };
    return { title, command: clientCommands.showPlaces, arguments: [shown] };
  }
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

function tellOf<T>(found: T | undefined, tellIt: (found: T) => Told | undefined): Told | undefined {
  return found === undefined ? undefined : tellIt(found);
}

function nodeLens(analysis: Analysis, node: Node): Told | undefined {
  const deliveries = indexOf(analysis).through.get(node) ?? [];
  const pictures = new Set(deliveries.map(({ feed }) => feed.sourceName));
  const ports = node.kit?.ports.length ?? 0;
  if (ports === 0) return undefined;
  const used = node.usedPorts.filter((port) => (port?.links.length ?? 0) > 0).length;
  const carries = pictures.size === 0 ? 'carries no picture' : `carries ${counted(pictures.size, 'picture')}`;
  return {
    title: `${carries} · ${ports - used} of ${counted(ports, 'port')} free`,
    places: [...new Set(deliveries.map(({ feed }) => feed.statement))],
  };
}

/** `3 feeds, worst segment results, 80.5 %` */
function linkLens(analysis: Analysis, link: Link): Told | undefined {
  if (!link.network || !link.named) return undefined;
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
