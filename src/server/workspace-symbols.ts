import { type LangiumDocument, UriUtils } from 'langium';
import type { WorkspaceSymbolProvider } from 'langium/lsp';
import type { WorkspaceSymbol, WorkspaceSymbolParams } from 'vscode-languageserver';
import { isLibrary } from '../language/visibility.ts';
import type { Fact } from '../plan/facts.ts';
import { symbolKinds } from './document-symbols.ts';
import { rangeOf } from './publish.ts';
import type { FeedplotSharedServices } from './services.ts';
import { titleOf } from './titles.ts';

/** As many as a person can look through. */
const MOST_SYMBOLS = 500;

/** Kinds of statement that people look for by name. */
const sought: ReadonlySet<Fact['kind']> = new Set([
  'plan',
  'place',
  'circuit',
  'kit',
  'cable',
  'interface',
  'node',
  'source',
  'destination',
  'link',
  'segment',
  'uplink',
  'case',
]);

/** Names anywhere in the workspace, by name or by the label that the crew knows. */
export class PlanWorkspaceSymbols implements WorkspaceSymbolProvider {
  readonly #shared: FeedplotSharedServices;

  constructor(shared: FeedplotSharedServices) {
    this.#shared = shared;
  }

  getSymbols({ query }: WorkspaceSymbolParams): WorkspaceSymbol[] {
    const found: WorkspaceSymbol[] = [];
    for (const document of this.#shared.workspace.LangiumDocuments.all) {
      if (!isLibrary(document.uri.toString())) this.#collect(document, query, found);
      if (found.length >= MOST_SYMBOLS) break;
    }
    return found.slice(0, MOST_SYMBOLS);
  }

  #collect(document: LangiumDocument, query: string, found: WorkspaceSymbol[]): void {
    const wanted = query.toLowerCase();
    const matcher = this.#shared.lsp.FuzzyMatcher;
    const uri = document.uri.toString();
    for (const statement of this.#shared.plans.Plans.read(document).statements) {
      const { fact, source } = statement;
      if (!sought.has(fact.kind)) continue;
      const { name, detail } = titleOf(statement);
      if (name === '' || !(matcher.match(query, name) || detail.toLowerCase().includes(wanted))) continue;
      found.push({
        name,
        kind: symbolKinds[fact.kind],
        containerName: detail || UriUtils.basename(document.uri),
        location: { uri, range: rangeOf(source.range('name')) },
      });
    }
  }
}
