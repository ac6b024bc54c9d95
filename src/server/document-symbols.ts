import { GrammarUtils, type LangiumDocument } from 'langium';
import type { DocumentSymbolProvider } from 'langium/lsp';
import { type DocumentSymbol, SymbolKind } from 'vscode-languageserver';
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

/** The outline of a file: its statements in order, kits with their ports, nodes with what differs from their kit. */
export class PlanSymbols implements DocumentSymbolProvider {
  readonly #shared: FeedplotSharedServices;

  constructor(services: FeedplotLspServices) {
    this.#shared = services.shared as FeedplotSharedServices;
  }

  getSymbols(document: LangiumDocument): DocumentSymbol[] {
    const read = this.#shared.plans.Plans.read(document);
    return (document.parseResult.value as PlanFile).statements.flatMap((node) => {
      const statement = read.statementOf(node);
      return statement && node.$cstNode ? [symbolOf(node, statement)] : [];
    });
  }
}

function symbolOf(node: StatementNode, statement: Statement): DocumentSymbol {
  const range = node.$cstNode!.range;
  const name = GrammarUtils.findNodeForProperty(node.$cstNode, 'name');
  const { name: title, detail } = titleOf(statement);
  const symbol: DocumentSymbol = {
    name: title || statement.fact.kind,
    detail,
    kind: symbolKinds[statement.fact.kind],
    range,
    selectionRange: name?.range ?? { start: range.start, end: range.start },
  };
  const children = childrenOf(node);
  return children.length > 0 ? { ...symbol, children } : symbol;
}

function childrenOf(node: StatementNode): DocumentSymbol[] {
  if (node.$type === 'Kit') return portSymbols(node);
  return node.$type === 'Node' ? labelSymbols(node) : [];
}

function portSymbols(kit: Kit): DocumentSymbol[] {
  return kit.groups.flatMap((group: PortGroup) =>
    group.ports.flatMap((port) => {
      const range = port?.$cstNode?.range;
      if (!range || port.name === undefined) return [];
      const name = port.low === undefined ? port.name : `${port.name}[${port.low}..${port.high ?? ''}]`;
      const as = group.interfaces[0]?.$refText;
      const detail = as ? `${group.role} as ${as}` : group.role;
      return [{ name, detail, kind: SymbolKind.Property, range, selectionRange: range }];
    }),
  );
}

function labelSymbols(node: Node): DocumentSymbol[] {
  return node.labels.flatMap((label) => {
    const range = label.$cstNode?.range;
    const port = label.port?.$refText;
    if (!range || !port) return [];
    return [
      { name: port, detail: label.text ?? '', kind: SymbolKind.Property, range, selectionRange: range },
    ];
  });
}
