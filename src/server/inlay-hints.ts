import { GrammarUtils, type LangiumDocument, URI } from 'langium';
import type { InlayHintProvider } from 'langium/lsp';
import type { Connection, InlayHint, InlayHintParams, Position } from 'vscode-languageserver';
import type { Analysis, Delivery, Link, Load } from '../analysis/model.ts';
import type { Statement as StatementNode } from '../language/generated/ast.ts';
import { formatLength, formatShare, formatTime } from '../physics/display.ts';
import type { Statement } from '../plan/plan.ts';
import { delayText } from './delay-text.ts';
import { linkHover } from './hover/link-hover.ts';
import { withoutWorkings } from './hover/markdown.ts';
import { hoverOf } from './hover.ts';
import { statementAt, statementsWithin } from './positions.ts';
import type { FeedplotLspServices, FeedplotSharedServices } from './services.ts';
import { type HintSettings, hintSettings } from './settings.ts';
import { indexOf } from './statements-of.ts';

/** Computed figures behind the text: load of a network link, length of a cable that states none, delay of a feed. */
export class FigureHints implements InlayHintProvider {
  readonly #shared: FeedplotSharedServices;

  constructor(services: FeedplotLspServices) {
    this.#shared = services.shared as FeedplotSharedServices;
  }

  async getInlayHints(document: LangiumDocument, { range }: InlayHintParams): Promise<InlayHint[]> {
    const settings = await hintSettings(this.#shared.workspace.ConfigurationProvider);
    const { Plans } = this.#shared.plans;
    const analysis = Plans.of(document)?.analysis;
    if (!analysis) return [];
    const read = Plans.read(document);
    const uri = document.uri.toString();
    return statementsWithin(document, range).flatMap((node) => {
      const statement = read.statementOf(node);
      const hints = statement ? hintsFor(analysis, node, statement, settings) : [];
      return hints.map((one) => ({ ...one, data: uri }));
    });
  }
}

/** Tells all about a figure when the pointer rests on it. */
export function addInlayHintResolveHandler(connection: Connection, shared: FeedplotSharedServices): void {
  connection.languages.inlayHint.resolve((hint: InlayHint): InlayHint => {
    const document = shared.workspace.LangiumDocuments.getDocument(URI.parse(hint.data as string));
    const analysis = document && shared.plans.Plans.of(document)?.analysis;
    const node = document && statementAt(document, document.textDocument.offsetAt(hint.position));
    const statement = node && shared.plans.Plans.read(document).statementOf(node);
    const value = analysis && statement && tooltipOf(analysis, statement);
    return value ? { ...hint, tooltip: { kind: 'markdown', value } } : hint;
  });
}

function tooltipOf(analysis: Analysis, statement: Statement): string | undefined {
  const link = indexOf(analysis).links.get(statement);
  const text = link ? linkHover(analysis, link) : hoverOf(analysis, statement);
  return text && withoutWorkings(text);
}

function hintsFor(
  analysis: Analysis,
  node: StatementNode,
  statement: Statement,
  settings: HintSettings,
): InlayHint[] {
  if (node.$type === 'Feed') return settings.delay ? feedHints(analysis, node, statement) : [];
  const link = indexOf(analysis).links.get(statement);
  if (!link || !node.$cstNode) return [];
  return [
    ...(settings.length ? lengthHints(analysis, node, link) : []),
    ...(settings.load && node.$type === 'Link' ? loadHints(analysis, node.$cstNode.range.end, link) : []),
  ];
}

/** `54 % → 81 % ←` behind a network link; the fullest segment when that is more. */
function loadHints(analysis: Analysis, position: Position, link: Link): InlayHint[] {
  const { base, worst } = analysis.traffic[link.index]!;
  if (!link.network || link.standbyFor || link.chain.capacity_bits_per_second === undefined) return [];
  const shown = [shareOf(base, 'forward', '→'), ...(link.bothWays ? [shareOf(base, 'backward', '←')] : [])];
  if (worst.segment && worst.share !== undefined)
    shown.push(
      `${formatShare(worst.share)} ${worst.direction === 'forward' ? '→' : '←'} in ${worst.segment.name}`,
    );
  return [hint(position, shown.filter((part) => part).join('  '))];
}

function shareOf(load: Load, direction: 'forward' | 'backward', arrow: string): string {
  const { share } = load[direction];
  return share === undefined ? '' : `${formatShare(share)} ${arrow}`;
}

/** The length behind the cable that states none. */
function lengthHints(analysis: Analysis, node: StatementNode, link: Link): InlayHint[] {
  const { length_m, from } = link.length;
  const cable = GrammarUtils.findNodeForProperty(node.$cstNode, 'cables', 0);
  const stated = GrammarUtils.findNodeForProperty(node.$cstNode, 'lengths', 0);
  if (length_m === undefined || !cable || (stated && from === 'stated')) return [];
  const text = formatLength(length_m, analysis.settings.units);
  const after = stated ?? cable;
  return [hint(after.range.end, from === 'measured' ? `${text} measured` : text)];
}

/** Delay and way behind each target of a feed. */
function feedHints(
  analysis: Analysis,
  node: Extract<StatementNode, { $type: 'Feed' }>,
  statement: Statement,
): InlayHint[] {
  const { feeds, deliveries } = indexOf(analysis);
  return (feeds.get(statement) ?? []).flatMap((feed) => {
    const target = node.targets[feed.targetIndex]?.$cstNode;
    const [delivery] = deliveries.get(feed) ?? [];
    if (!target || !delivery) return [];
    // Editors cut what they show in one line: of several targets each gets its time alone.
    if (node.targets.length > 1) return [hint(target.range.end, shortOutcome(delivery))];
    return [hint(node.$cstNode!.range.end, outcome(delivery))];
  });
}

function outcome({ noRoute, delay, routes, feed }: Delivery): string {
  if (noRoute) return 'no way there';
  const time = `${delayText(delay, feed) ?? ''}${delay.over ? ', too late' : ''}`;
  const ways = routes.map(({ steps }) =>
    steps.flatMap(({ link }) => (link.network ? [link.name] : [])).join(', '),
  );
  const by = ways.filter((way) => way).join(' and ');
  return [time, by && `by ${by}`].filter((part) => part).join(' ');
}

function shortOutcome({ noRoute, delay }: Delivery): string {
  if (noRoute) return 'no way';
  if (delay.delay_s === undefined) return '';
  return `${formatTime(delay.delay_s, delay.limit_s)}${delay.over ? ', too late' : ''}`;
}

function hint(position: Position, label: string): InlayHint {
  return { position, label, paddingLeft: true };
}
