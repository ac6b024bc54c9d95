import { type CstNode, type LangiumDocument, URI } from 'langium';
import { DefaultDefinitionProvider } from 'langium/lsp';
import { type DefinitionParams, LocationLink } from 'vscode-languageserver';
import type { Import } from '../language/generated/ast.ts';
import { resolveImport } from '../language/imports.ts';
import { enclosing, leafAt } from './positions.ts';
import type { FeedplotLspServices } from './services.ts';

/** From a name to where it is declared, also in the shipped library; from the path of an import to the file. */
export class PlanDefinition extends DefaultDefinitionProvider {
  readonly #services: FeedplotLspServices;

  constructor(services: FeedplotLspServices) {
    super(services);
    this.#services = services;
  }

  override getDefinition(document: LangiumDocument, params: DefinitionParams): LocationLink[] | undefined {
    const leaf = leafAt(document, params.position);
    if (!leaf) return undefined;
    return this.#importedFile(document, leaf) ?? this.#declarations(leaf);
  }

  #declarations(leaf: CstNode): LocationLink[] | undefined {
    const links = this.findLinks(leaf).map(({ source, target, targetDocument }) =>
      LocationLink.create(
        targetDocument.textDocument.uri,
        (target.astNode.$cstNode ?? target).range,
        target.range,
        source.range,
      ),
    );
    return links.length > 0 ? links : undefined;
  }

  #importedFile(document: LangiumDocument, leaf: CstNode): LocationLink[] | undefined {
    const statement = enclosing<Import>(leaf, 'Import');
    const target = statement && resolveImport(document.uri.toString(), statement.path ?? '');
    if (!target || !this.#services.shared.workspace.LangiumDocuments.hasDocument(URI.parse(target)))
      return undefined;
    const start = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };
    return [LocationLink.create(target, start, start, leaf.range)];
  }
}
