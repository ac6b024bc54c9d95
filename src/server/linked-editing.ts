import { AstUtils, DocumentState, type LangiumDocument } from 'langium';
import { createServerRequestHandler } from 'langium/lsp';
import type { Connection, LinkedEditingRangeParams, LinkedEditingRanges } from 'vscode-languageserver';
import { isLibrary } from '../language/visibility.ts';
import { leafAt } from './positions.ts';
import { planReferences } from './references.ts';
import type { FeedplotLspServices, FeedplotSharedServices } from './services.ts';

const NAME = '[\\p{L}_][\\p{L}\\p{N}_]*(?:-[\\p{L}\\p{N}_]+)*';

export function addLinkedEditingHandler(connection: Connection, services: FeedplotSharedServices): void {
  connection.languages.onLinkedEditingRange(
    createServerRequestHandler(
      (language, document, params: LinkedEditingRangeParams) =>
        linkedEditingRanges(language as FeedplotLspServices, document, params),
      services,
      DocumentState.Parsed,
    ),
  );
}

/**
 * The declaration of a name and its uses, to be typed over together. Only where the cursor is on the declaration and
 * all uses are in this file: what is used elsewhere is renamed, and a use is retyped alone to name something else.
 */
function linkedEditingRanges(
  services: FeedplotLspServices,
  document: LangiumDocument,
  params: LinkedEditingRangeParams,
): LinkedEditingRanges | undefined {
  const leaf = leafAt(document, params.position);
  const references = planReferences(services);
  const [target] = leaf ? references.findDeclarations(leaf) : [];
  if (!leaf || !target || target.$type === 'Port' || references.declaredName(target) !== leaf)
    return undefined;
  if (isLibrary(AstUtils.getDocument(target).uri.toString())) return undefined;
  const uses = references.findReferences(target, { includeDeclaration: true }).toArray();
  if (uses.some(({ sourceUri }) => sourceUri.toString() !== document.uri.toString())) return undefined;
  return { ranges: uses.map(({ segment }) => segment.range), wordPattern: NAME };
}
