import { resolveImport } from '../../language/imports.ts';
import { isLibrary } from '../../language/visibility.ts';
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

function relativePath(from: string, to: string): string | undefined {
  const start = from.split('/').slice(0, -1);
  const end = to.split('/');
  let common = 0;
  while (common < start.length && start[common] === end[common]) common++;
  if (common < 3) return undefined;
  const up = start.slice(common).map(() => '..');
  return [...up, ...end.slice(common).map(decodeURIComponent)].join('/');
}
