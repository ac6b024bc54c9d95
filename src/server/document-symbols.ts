import { GrammarUtils, type LangiumDocument } from 'langium';
import type { DocumentSymbolProvider } from 'langium/lsp';
import { type DocumentSymbol, type Position, type Range, SymbolKind } from 'vscode-languageserver';
import type {
  Kit,
  Node,
  PlanFile,
  PortGroup,
  Statement as StatementNode,
} from '../language/generated/ast.ts';
import type { Fact } from '../plan/facts.ts';
import type { Statement } from '../plan/plan.ts';
import type { FeedplotLspServices, FeedplotSharedServices } from './services.ts';
import { titleOf } from './titles.ts';

/** What kind of symbol an editor shows for a statement. */
export const symbolKinds: Record<Fact['kind'], SymbolKind> = {
  plan: SymbolKind.Package,
  import: SymbolKind.File,
  place: SymbolKind.Namespace,
  run: SymbolKind.Key,
  circuit: SymbolKind.Constant,
  kit: SymbolKind.Class,
  cable: SymbolKind.Struct,
  interface: SymbolKind.Interface,
  node: SymbolKind.Object,
  source: SymbolKind.Event,
  destination: SymbolKind.Variable,
  link: SymbolKind.Operator,
  feed: SymbolKind.Function,
  segment: SymbolKind.Enum,
  black: SymbolKind.EnumMember,
  uplink: SymbolKind.Constant,
  stock: SymbolKind.Array,
  case: SymbolKind.Package,
  accept: SymbolKind.Boolean,
  measured: SymbolKind.Number,
  proved: SymbolKind.Boolean,
};

/** A symbol whose lines are counted from the beginning of its statement. */
interface Shape {
  readonly name: string;
  readonly detail: string;
  readonly kind: SymbolKind;
  readonly range: Range;
  readonly selectionRange: Range;
  readonly children: readonly Shape[];
}

/**
 * The outline of a file: its statements in order, kits with their ports, nodes with what differs from their kit. An
 * editor asks for it at every pause, so what a statement looks like is kept until it is read anew.
 */
export class PlanSymbols implements DocumentSymbolProvider {
  readonly #shared: FeedplotSharedServices;
  readonly #shapes = new WeakMap<StatementNode, Shape>();

  constructor(services: FeedplotLspServices) {
    this.#shared = services.shared as FeedplotSharedServices;
  }

  getSymbols(document: LangiumDocument): DocumentSymbol[] {
    const read = this.#shared.plans.Plans.read(document);
    return (document.parseResult.value as PlanFile).statements.flatMap((node) => {
      const start = node.$cstNode?.range.start;
      if (!start) return [];
      const shape = this.#shapes.get(node) ?? this.#shapeOf(node, read.statementOf(node));
      return shape ? [placed(shape, start)] : [];
    });
  }

  #shapeOf(node: StatementNode, statement: Statement | undefined): Shape | undefined {
    if (!statement) return undefined;
    const shape = shapeOf(node, statement);
    this.#shapes.set(node, shape);
    return shape;
  }
}

function shapeOf(node: StatementNode, statement: Statement): Shape {
  const whole = node.$cstNode!.range;
  const within = (range: Range) => relative(range, whole.start);
  const name = GrammarUtils.findNodeForProperty(node.$cstNode, 'name');
  const { name: title, detail } = titleOf(statement);
  return {
    name: title || statement.fact.kind,
    detail,
    kind: symbolKinds[statement.fact.kind],
    range: within(whole),
    selectionRange: within(name?.range ?? { start: whole.start, end: whole.start }),
    children: childrenOf(node, within),
  };
}

function placed(
  { name, detail, kind, range, selectionRange, children }: Shape,
  start: Position,
): DocumentSymbol {
  const symbol = {
    name,
    detail,
    kind,
    range: absolute(range, start),
    selectionRange: absolute(selectionRange, start),
  };
  return children.length > 0
    ? { ...symbol, children: children.map((child) => placed(child, start)) }
    : symbol;
}

type Within = (range: Range) => Range;

function childrenOf(node: StatementNode, within: Within): Shape[] {
  if (node.$type === 'Kit') return portShapes(node, within);
  return node.$type === 'Node' ? labelShapes(node, within) : [];
}

function portShapes(kit: Kit, within: Within): Shape[] {
  return kit.groups.flatMap((group: PortGroup) =>
    group.ports.flatMap((port) => {
      if (!port?.$cstNode || port.name === undefined) return [];
      const name = port.low === undefined ? port.name : `${port.name}[${port.low}..${port.high ?? ''}]`;
      const as = group.interfaces[0]?.$refText;
      const detail = as ? `${group.role} as ${as}` : group.role;
      return [propertyShape(name, detail, within(port.$cstNode.range))];
    }),
  );
}

function labelShapes(node: Node, within: Within): Shape[] {
  return node.labels.flatMap((label) => {
    const port = label.port?.$refText;
    if (!label.$cstNode || !port) return [];
    return [propertyShape(port, label.text ?? '', within(label.$cstNode.range))];
  });
}

function propertyShape(name: string, detail: string, range: Range): Shape {
  return { name, detail, kind: SymbolKind.Property, range, selectionRange: range, children: [] };
}

function relative({ start, end }: Range, { line, character }: Position): Range {
  const from = (position: Position) => ({
    line: position.line - line,
    character: position.line === line ? position.character - character : position.character,
  });
  return { start: from(start), end: from(end) };
}

function absolute({ start, end }: Range, { line, character }: Position): Range {
  const to = (position: Position) => ({
    line: position.line + line,
    character: position.line === 0 ? position.character + character : position.character,
  });
  return { start: to(start), end: to(end) };
}
