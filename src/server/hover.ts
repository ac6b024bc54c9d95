import { type AstNode, CstUtils, type LangiumDocument, type LeafCstNode } from 'langium';
import type { HoverProvider } from 'langium/lsp';
import type { Hover, HoverParams } from 'vscode-languageserver';
import type { Analysis } from '../analysis/model.ts';
import type { Format, Quantity } from '../language/generated/ast.ts';
import { formatLength } from '../physics/display.ts';
import { parseQuantity, requireQuantity } from '../physics/quantity.ts';
import { parseFormat, type StatedFormat } from '../physics/raster.ts';
import type { Statement } from '../plan/plan.ts';
import { kitHover, nodeHover, portHover } from './hover/box-hovers.ts';
import { checkHover } from './hover/check-hover.ts';
import { placeHover, runHover, segmentHover } from './hover/house-hovers.ts';
import { cableHover, formatHover, interfaceHover } from './hover/kind-hovers.ts';
import { linkHover } from './hover/link-hover.ts';
import { code, paragraphs } from './hover/markdown.ts';
import { destinationHover, feedHover, sourceHover } from './hover/picture-hovers.ts';
import { caseHover, circuitHover, stockHover, uplinkHover } from './hover/supply-hovers.ts';
import type { Plans } from './plans.ts';
import { enclosing, leafAt, statementNodeOf } from './positions.ts';
import { planReferences } from './references.ts';
import type { FeedplotLspServices, FeedplotSharedServices } from './services.ts';
import { statementHelp, wordHelp } from './word-help.ts';

/** What the analysis knows of whatever the pointer is on: a name, a port, a cable without a name, a format, a word. */
export class PlanHover implements HoverProvider {
  readonly #services: FeedplotLspServices;

  constructor(services: FeedplotLspServices) {
    this.#services = services;
  }

  getHoverContent(document: LangiumDocument, params: HoverParams): Hover | undefined {
    const leaf = leafAt(document, params.position);
    if (!leaf || leaf.hidden) return undefined;
    const value = this.#text(document, leaf);
    return value ? { contents: { kind: 'markdown', value }, range: leaf.range } : undefined;
  }

  get #plans(): Plans {
    return (this.#services.shared as FeedplotSharedServices).plans.Plans;
  }

  #text(document: LangiumDocument, leaf: LeafCstNode): string | undefined {
    const analysis = this.#plans.of(document)?.analysis;
    if (!analysis) return helpFor(leaf);
    const [target] = planReferences(this.#services).findDeclarations(leaf);
    if (target) return this.#named(analysis, leaf, target);
    return valueHover(analysis, leaf) ?? this.#unnamed(analysis, leaf) ?? helpFor(leaf);
  }

  #named(analysis: Analysis, leaf: LeafCstNode, target: AstNode): string | undefined {
    const { node, thing } = leaf.astNode as { node?: { $refText: string }; thing?: { $refText: string } };
    const statement = this.#plans.statementOf(target);
    if (target.$type === 'Port') {
      const owner = (node ?? thing)?.$refText ?? ownNodeName(leaf);
      const box = owner === undefined ? undefined : analysis.nodes.get(owner);
      if (box) return portHover(analysis, box, leaf.text);
      const kit = statement?.fact.kind === 'kit' ? analysis.kits.get(statement.fact.name) : undefined;
      return kit && kitHover(analysis, kit);
    }
    return statement && hoverOf(analysis, statement);
  }

  /** On the first word or the arrow of what has no name of its own: a cable, a wish, a run. */
  #unnamed(analysis: Analysis, leaf: LeafCstNode): string | undefined {
    const statement = this.#plans.statementOf(leaf.astNode);
    const { kind } = statement?.fact ?? {};
    const opens =
      leaf.text === kind && (kind === 'link' || kind === 'feed' || kind === 'run' || kind === 'stock');
    if (!statement || !(opens || leaf.text === '->' || leaf.text === '<->')) return undefined;
    return hoverOf(analysis, statement);
  }
}

/** Everything about what a statement declares. */
export function hoverOf(analysis: Analysis, statement: Statement): string | undefined {
  const { fact } = statement;
  const one = <T>(found: T | undefined, hover: (analysis: Analysis, found: T) => string) =>
    found === undefined ? undefined : hover(analysis, found);
  switch (fact.kind) {
    case 'link':
      return one(
        analysis.links.find((link) => link.statement === statement),
        linkHover,
      );
    case 'source':
      return one(analysis.sources.get(fact.name), sourceHover);
    case 'destination':
      return one(analysis.destinations.get(fact.name), destinationHover);
    case 'feed':
      return feedHover(
        analysis,
        analysis.feeds.filter((feed) => feed.statement === statement),
      );
    case 'node':
      return one(analysis.nodes.get(fact.name), nodeHover);
    case 'kit':
      return one(analysis.kits.get(fact.name), kitHover);
    case 'cable':
      return one(analysis.cables.get(fact.name), cableHover);
    case 'interface':
      return one(analysis.interfaces.get(fact.name), interfaceHover);
    case 'place':
      return one(analysis.places.get(fact.name), placeHover);
    case 'run':
      return one(
        analysis.runs.find((run) => run.statement === statement),
        runHover,
      );
    case 'segment':
      return one(analysis.segments.get(fact.name), segmentHover);
    case 'circuit':
      return one(analysis.circuits.get(fact.name), circuitHover);
    case 'uplink':
      return one(analysis.uplinks.get(fact.name), uplinkHover);
    case 'case':
      return one(analysis.cases.get(fact.name), caseHover);
    case 'stock':
      return one(
        analysis.stock.find((piece) => piece.statement === statement),
        stockHover,
      );
    default:
      return undefined;
  }
}

/** A format, a check's name, the length of a cable, another quantity. */
function valueHover(analysis: Analysis, leaf: LeafCstNode): string | undefined {
  const format = enclosing<Format>(leaf, 'Format');
  const stated = format && statedFormat(format);
  if (stated) return formatHover(analysis, stated);
  const statement = statementNodeOf(leaf.astNode);
  if (statement?.$type === 'Accept' && leaf.text === statement.check) return checkHover(leaf.text);
  const quantity = enclosing<Quantity>(leaf, 'Quantity');
  return quantity && paragraphs(quantityHover(quantity));
}

function statedFormat({ $cstNode }: Format): StatedFormat | undefined {
  try {
    return parseFormat(($cstNode?.text ?? '').replace(/\s+/g, ' '));
  } catch {
    return undefined;
  }
}

/** A length in the other unit; people talk in both. */
function quantityHover({ value, unit }: Quantity): string | undefined {
  if (unit === undefined) return undefined;
  try {
    const quantity = parseQuantity(`${value} ${unit}`);
    if (quantity.unit.dimension !== 'length') return undefined;
    const length_m = requireQuantity(quantity, 'length');
    const other = formatLength(length_m, quantity.unit.symbol === 'ft' ? 'metric' : 'feet');
    return `${value} ${unit} is ${other}`;
  } catch {
    return undefined;
  }
}

function helpFor(leaf: LeafCstNode): string | undefined {
  const { text, tokenType } = leaf;
  if (tokenType.name !== text) return undefined;
  const pair = `${CstUtils.getPreviousNode(leaf, false)?.text} ${text}`;
  const ofPair = wordHelp.get(pair);
  if (ofPair) return `${code(pair)} – ${ofPair}`;
  const statement = statementHelp.get(text);
  if (statement)
    return paragraphs(`${code(text)} – ${statement.says}`, `\`\`\`feedplot\n${statement.example}\n\`\`\``);
  const says = wordHelp.get(text);
  return says && `${code(text)} – ${says}`;
}

/** In the block of a node its ports are named without it. */
function ownNodeName(leaf: LeafCstNode): string | undefined {
  const statement = statementNodeOf(leaf.astNode);
  return statement?.$type === 'Node' ? statement.name : undefined;
}
