import { GrammarUtils, type LangiumDocument, URI } from 'langium';
import type { DocumentLinkProvider } from 'langium/lsp';
import type { DocumentLink } from 'vscode-languageserver';
import type { PlanFile } from '../language/generated/ast.ts';
import { resolveImport } from '../language/imports.ts';
import type { FeedplotLspServices } from './services.ts';

/** The path of an import leads to its file, when that is there. */
export class ImportLinks implements DocumentLinkProvider {
  readonly #services: FeedplotLspServices;

  constructor(services: FeedplotLspServices) {
    this.#services = services;
  }

  getDocumentLinks(document: LangiumDocument): DocumentLink[] {
    const { LangiumDocuments } = this.#services.shared.workspace;
    const links: DocumentLink[] = [];
    for (const statement of (document.parseResult.value as PlanFile).statements) {
      if (statement.$type !== 'Import') continue;
      const path = GrammarUtils.findNodeForProperty(statement.$cstNode, 'path');
      const target = resolveImport(document.uri.toString(), statement.path ?? '');
      if (!path || !target || !LangiumDocuments.hasDocument(URI.parse(target))) continue;
      links.push({
        range: insideQuotes(path.range, path.text),
        target,
        tooltip: 'Open this part of the plan',
      });
    }
    return links;
  }
}

function insideQuotes({ start, end }: DocumentLink['range'], text: string): DocumentLink['range'] {
  const closed = text.length > 1 && text.endsWith('"') ? 1 : 0;
  return {
    start: { line: start.line, character: start.character + 1 },
    end: { line: end.line, character: end.character - closed },
  };
}
