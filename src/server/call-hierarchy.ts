import { type LangiumDocument, URI } from 'langium';
import type { CallHierarchyProvider } from 'langium/lsp';
import type {
  CallHierarchyIncomingCall,
  CallHierarchyIncomingCallsParams,
  CallHierarchyItem,
  CallHierarchyOutgoingCall,
  CallHierarchyOutgoingCallsParams,
  CallHierarchyPrepareParams,
  Range,
} from 'vscode-languageserver';
import type { Analysis } from '../analysis/model.ts';
import { symbolKinds } from './document-symbols.ts';
import { leafAt } from './positions.ts';
import { rangeOf } from './publish.ts';
import { planReferences } from './references.ts';
import type { FeedplotLspServices, FeedplotSharedServices } from './services.ts';
import { type Hop, hopsFrom, hopsInto, type Station } from './signal-flow.ts';

/** What an item remembers between two questions: which pictures it was reached with. */
interface Remembered {
  readonly name: string;
  /** Feeds as they are written; undefined: all. */
  readonly feeds?: readonly string[];
}

/**
 * The way of the pictures as a hierarchy: from a source forward to all that it reaches, from a destination back to
 * all that feeds it, one box at a time, and in which segments.
 */
export class SignalFlowHierarchy implements CallHierarchyProvider {
  readonly #services: FeedplotLspServices;
  readonly #shared: FeedplotSharedServices;

  constructor(services: FeedplotLspServices) {
    this.#services = services;
    this.#shared = services.shared as FeedplotSharedServices;
  }

  prepareCallHierarchy(
    document: LangiumDocument,
    { position }: CallHierarchyPrepareParams,
  ): CallHierarchyItem[] | undefined {
    const leaf = leafAt(document, position);
    const [target] = leaf ? planReferences(this.#services).findDeclarations(leaf) : [];
    const fact = target && this.#shared.plans.Plans.statementOf(target)?.fact;
    const plan = this.#shared.plans.Plans.of(document);
    const station =
      fact && 'name' in fact && fact.name !== undefined ? stationOf(plan?.analysis, fact.name) : undefined;
    return station && [itemOf(station, { name: station.name }, '')];
  }

  outgoingCalls({ item }: CallHierarchyOutgoingCallsParams): CallHierarchyOutgoingCall[] {
    return this.#hops(item, hopsFrom).map((hop) => ({
      to: hopItem(hop),
      fromRanges: rangesIn(item.uri, hop),
    }));
  }

  incomingCalls({ item }: CallHierarchyIncomingCallsParams): CallHierarchyIncomingCall[] {
    return this.#hops(item, hopsInto).map((hop) => ({
      from: hopItem(hop),
      fromRanges: rangesIn(hop.to.statement.source.file, hop),
    }));
  }

  #hops(item: CallHierarchyItem, hops: typeof hopsFrom): Hop[] {
    const document = this.#shared.workspace.LangiumDocuments.getDocument(URI.parse(item.uri));
    const analysis = document && this.#shared.plans.Plans.of(document)?.analysis;
    const { name = item.name, feeds } = (item.data ?? {}) as Partial<Remembered>;
    const station = stationOf(analysis, name);
    return analysis && station ? hops(analysis, station, feeds && new Set(feeds)) : [];
  }
}

function stationOf(analysis: Analysis | undefined, name: string): Station | undefined {
  return analysis?.sources.get(name) ?? analysis?.nodes.get(name) ?? analysis?.destinations.get(name);
}

function hopItem({ to, deliveries, links }: Hop): CallHierarchyItem {
  const pictures = new Set(deliveries.map(({ feed }) => feed.sourceName));
  const segments = new Set(deliveries.map(({ segment }) => segment?.name ?? ''));
  const over = [...links].filter(({ named }) => named).map(({ name }) => name);
  // Where it holds without segments it holds in all; only what is special to segments is worth a word.
  const when = segments.has('') ? '' : `in ${[...segments].join(', ')}`;
  const detail = [[...pictures].join(', '), over.length > 0 ? `over ${over.join(', ')}` : '', when];
  const feeds = [...new Set(deliveries.map(({ feed }) => feed.name))];
  // A picture that begins here goes its own ways.
  const remembered = to.kind === 'source' ? { name: to.name } : { name: to.name, feeds };
  return itemOf(to, remembered, detail.filter((part) => part).join(' · '));
}

function itemOf({ name, statement }: Station, data: Remembered, detail: string): CallHierarchyItem {
  const { source, fact, label } = statement;
  return {
    name,
    kind: symbolKinds[fact.kind],
    detail: detail || (label ?? ''),
    uri: source.file,
    range: rangeOf(source.whole()),
    selectionRange: rangeOf(source.range('name')),
    data,
  };
}

/** The cables of this step that are written in the file that the editor will show. */
function rangesIn(uri: string, { links }: Hop): Range[] {
  return [...links]
    .map(({ statement }) => statement.source)
    .filter(({ file }) => file === uri)
    .map((source) => rangeOf(source.range()));
}
