import type { LangiumDocument } from 'langium';
import type { ReferencesProvider } from 'langium/lsp';
import { Location, type ReferenceParams } from 'vscode-languageserver';
import { leafAt } from './positions.ts';
import { planReferences } from './references.ts';
import type { FeedplotLspServices } from './services.ts';

/** Everywhere in the workspace that a name is used; for a numbered port, all uses of its row of ports. */
export class FindReferences implements ReferencesProvider {
  readonly #services: FeedplotLspServices;

  constructor(services: FeedplotLspServices) {
    this.#services = services;
  }

  findReferences(document: LangiumDocument, params: ReferenceParams): Location[] {
    const leaf = leafAt(document, params.position);
    const references = planReferences(this.#services);
    const [target] = leaf ? references.findDeclarations(leaf) : [];
    if (!target) return [];
    const { includeDeclaration } = params.context;
    return references
      .findReferences(target, { includeDeclaration })
      .map(({ sourceUri, segment }) => Location.create(sourceUri.toString(), segment.range))
      .toArray();
  }
}
