import { GrammarUtils, type LangiumDocument } from 'langium';
import type { InlayHintProvider } from 'langium/lsp';
import type { InlayHint, InlayHintParams, Position } from 'vscode-languageserver';
import type { Analysis, Delivery, Link, Load } from '../analysis/model.ts';
import type { PlanFile, Statement as StatementNode } from '../language/generated/ast.ts';
import { formatLength, formatShare, formatTime } from '../physics/display.ts';
import type { Statement } from '../plan/plan.ts';
import { delayText } from './delay-text.ts';
import { linkHover } from './hover/link-hover.ts';
import { deliveryText } from './hover/picture-hovers.ts';
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
    return within(document, range).flatMap((node) => {
      const statement = read.statementOf(node);
      return statement ? hintsFor(analysis, node, statement, settings) : [];
    });
  }
}

/** The statements of a part of the file. */
function within(document: LangiumDocument, { start, end }: InlayHintParams['range']): StatementNode[] {
  return (document.parseResult.value as PlanFile).statements.filter(({ $cstNode }) => {
    const range = $cstNode?.range;
    return range !== undefined && range.end.line >= start.line && range.start.line <= end.line;
  });
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
  return [hint(position, shown.filter((part) => part).join('  '), linkHover(analysis, link))];
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
  return [hint(after.range.end, from === 'measured' ? `${text} measured` : text, linkHover(analysis, link))];
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
    const tooltip = (deliveries.get(feed) ?? []).map(deliveryText).join('\n\n');
    // Editors cut what they show in one line: of several targets each gets its time alone.
    if (node.targets.length > 1) return [hint(target.range.end, shortOutcome(delivery), tooltip)];
    return [hint(node.$cstNode!.range.end, outcome(delivery), tooltip)];
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

function hint(position: Position, label: string, tooltip: string): InlayHint {
  return { position, label, tooltip: { kind: 'markdown', value: tooltip }, paddingLeft: true };
}
