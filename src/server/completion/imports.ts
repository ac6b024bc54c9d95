import { resolveImport } from '../../language/imports.ts';
import { isLibrary } from '../../language/visibility.ts';
import { relativePath } from '../relative-path.ts';
import { type Asked, CompletionItemKind, type Offer } from './asked.ts';

/** Files of the workspace that can be imported here and are not yet, by their path from this file. */
export function importOffers({ where, shared }: Asked): Offer[] {
  const own = where.document.uri.toString();
  const { Plans } = shared.plans;
  const imported = new Set(
    Plans.read(where.document).imports.map(({ fact }) => resolveImport(own, fact.path)),
  );
  return shared.workspace.LangiumDocuments.all
    .filter((document) => {
      const uri = document.uri.toString();
      return uri !== own && !isLibrary(uri) && !imported.has(uri) && !Plans.read(document).hasPlan;
    })
    .map((document) => relativePath(own, document.uri.toString()))
    .filter((path): path is string => path !== undefined)
    .map((label): Offer => ({ label, kind: CompletionItemKind.File, group: 1 }))
    .toArray();
}
