import { AstUtils, type LangiumDocument } from 'langium';
import type { DocumentHighlightProvider } from 'langium/lsp';
import {
  DocumentHighlight,
  DocumentHighlightKind,
  type DocumentHighlightParams,
} from 'vscode-languageserver';
import { leafAt } from './positions.ts';
import { planReferences } from './references.ts';
import type { FeedplotLspServices } from './services.ts';

/** The uses of the name under the cursor in this file; where it is declared is marked as such. */
export class NameHighlights implements DocumentHighlightProvider {
  readonly #services: FeedplotLspServices;

  constructor(services: FeedplotLspServices) {
    this.#services = services;
  }

  getDocumentHighlight(document: LangiumDocument, params: DocumentHighlightParams): DocumentHighlight[] {
    const leaf = leafAt(document, params.position);
    const references = planReferences(this.#services);
    const [target] = leaf ? references.findDeclarations(leaf) : [];
    if (!target) return [];
    const uses = references.findReferences(target, { documentUri: document.uri }).toArray();
    const highlights = uses.map(({ segment }) =>
      DocumentHighlight.create(segment.range, DocumentHighlightKind.Read),
    );
    const declared = references.declaredName(target);
    if (declared && AstUtils.getDocument(target) === document)
      highlights.unshift(DocumentHighlight.create(declared.range, DocumentHighlightKind.Write));
    return highlights;
  }
}
