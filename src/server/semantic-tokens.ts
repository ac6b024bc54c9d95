import { type AstNode, AstUtils, GrammarUtils, type LangiumDocument, type ReferenceInfo } from 'langium';
import type { SemanticTokenProvider } from 'langium/lsp';
import {
  type Range,
  type SemanticTokens,
  SemanticTokensBuilder,
  type SemanticTokensDelta,
  type SemanticTokensDeltaParams,
  type SemanticTokensOptions,
  type SemanticTokensParams,
  type SemanticTokensRangeParams,
} from 'vscode-languageserver';
import type { PlanFile, Statement as StatementNode } from '../language/generated/ast.ts';
import { statementsWithin } from './positions.ts';
import type { FeedplotLspServices } from './services.ts';

const types = [
  'namespace',
  'class',
  'struct',
  'interface',
  'variable',
  'function',
  'property',
  'enumMember',
  'macro',
] as const;
type Type = (typeof types)[number];
const modifiers = ['declaration', 'readonly'] as const;

/** What a name stands for, by the kind of thing that is meant or declared. */
const typeOf: Record<string, Type> = {
  Place: 'namespace',
  Case: 'namespace',
  Kit: 'class',
  Cable: 'struct',
  Interface: 'interface',
  Node: 'variable',
  Link: 'variable',
  Circuit: 'variable',
  Uplink: 'variable',
  Thing: 'variable',
  Named: 'variable',
  Source: 'function',
  Destination: 'function',
  Target: 'function',
  Port: 'property',
  Segment: 'enumMember',
};

/** One word, counted from the beginning of its statement. */
interface Token {
  readonly line: number;
  readonly character: number;
  readonly length: number;
  readonly type: number;
  readonly modifiers: number;
}

/**
 * Names by what they stand for, so that a node called `rate` looks like a node. What a word is follows from its own
 * statement alone, so the words of a statement are kept until it is read anew.
 */
export class NameTokens implements SemanticTokenProvider {
  readonly tokenTypes = Object.fromEntries(types.map((type, i) => [type, i]));
  readonly tokenModifiers = Object.fromEntries(modifiers.map((modifier, i) => [modifier, 1 << i]));
  readonly semanticTokensOptions: SemanticTokensOptions = {
    legend: { tokenTypes: [...types], tokenModifiers: [...modifiers] },
    full: { delta: true },
    range: true,
  };
  readonly #services: FeedplotLspServices;
  readonly #known = new WeakMap<StatementNode, readonly Token[]>();
  readonly #builders = new Map<string, SemanticTokensBuilder>();

  constructor(services: FeedplotLspServices) {
    this.#services = services;
    services.shared.workspace.TextDocuments.onDidClose(({ document }) => this.#builders.delete(document.uri));
  }

  semanticHighlight(document: LangiumDocument, _params: SemanticTokensParams): SemanticTokens {
    const builder = new SemanticTokensBuilder();
    this.#builders.set(document.textDocument.uri, builder);
    this.#push(document, builder);
    return builder.build();
  }

  semanticHighlightRange(document: LangiumDocument, { range }: SemanticTokensRangeParams): SemanticTokens {
    const builder = new SemanticTokensBuilder();
    this.#push(document, builder, range);
    return builder.build();
  }

  semanticHighlightDelta(
    document: LangiumDocument,
    { previousResultId }: SemanticTokensDeltaParams,
  ): SemanticTokens | SemanticTokensDelta {
    const builder = this.#builders.get(document.textDocument.uri);
    if (!builder) return this.semanticHighlight(document, { textDocument: document.textDocument });
    builder.previousResult(previousResultId);
    this.#push(document, builder);
    return builder.buildEdits();
  }

  #push(document: LangiumDocument, builder: SemanticTokensBuilder, within?: Range): void {
    const statements = within
      ? statementsWithin(document, within)
      : (document.parseResult.value as PlanFile).statements;
    for (const statement of statements) {
      const start = statement.$cstNode?.range.start;
      if (!start) continue;
      for (const { line, character, length, type, modifiers: bits } of this.#tokens(statement)) {
        builder.push(
          start.line + line,
          line === 0 ? start.character + character : character,
          length,
          type,
          bits,
        );
      }
    }
  }

  #tokens(statement: StatementNode): readonly Token[] {
    let tokens = this.#known.get(statement);
    if (!tokens) {
      tokens = tokensOf(statement, (info) => this.#services.shared.AstReflection.getReferenceType(info));
      this.#known.set(statement, tokens);
    }
    return tokens;
  }
}

function tokensOf(statement: StatementNode, typeMeant: (info: ReferenceInfo) => string): Token[] {
  const start = statement.$cstNode!.range.start;
  const tokens: Token[] = [];
  const add = (range: Range | undefined, type: Type | undefined, bits: number) => {
    if (!range || type === undefined || range.start.line !== range.end.line) return;
    const line = range.start.line - start.line;
    const character = line === 0 ? range.start.character - start.character : range.start.character;
    const length = range.end.character - range.start.character;
    tokens.push({ line, character, length, type: types.indexOf(type), modifiers: bits });
  };
  for (const node of AstUtils.streamAst(statement)) {
    const declared = declaredType(node);
    if (declared)
      add(
        GrammarUtils.findNodeForProperty(node.$cstNode, 'name')?.range,
        declared,
        node.$type === 'Link' ? 3 : 1,
      );
    for (const info of AstUtils.streamReferences(node)) {
      const meant = typeMeant(info);
      add(info.reference.$refNode?.range, typeOf[meant], meant === 'Link' ? 2 : 0);
    }
    if (node.$type === 'Accept')
      add(GrammarUtils.findNodeForProperty(node.$cstNode, 'check')?.range, 'macro', 0);
  }
  return tokens.sort((a, b) => a.line - b.line || a.character - b.character);
}

function declaredType(node: AstNode): Type | undefined {
  return (node as { name?: string }).name === undefined ? undefined : typeOf[node.$type];
}
