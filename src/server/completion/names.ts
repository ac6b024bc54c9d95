import type { Analysis, Wanted } from '../../analysis/model.ts';
import { formatRate } from '../../physics/display.ts';
import type { Fact } from '../../plan/facts.ts';
import type { Statement } from '../../plan/plan.ts';
import { titleOf } from '../titles.ts';
import { type Asked, CompletionItemKind, type Offer } from './asked.ts';

/** The kinds of statement whose names fit where the grammar asks for one of these. */
const kindsFor: Record<string, readonly Fact['kind'][]> = {
  Place: ['place'],
  Kit: ['kit'],
  Cable: ['cable'],
  Interface: ['interface'],
  Segment: ['segment'],
  Node: ['node'],
  Source: ['source'],
  Link: ['link'],
  Circuit: ['circuit'],
  Uplink: ['uplink'],
  Target: ['destination', 'node'],
  Thing: ['node', 'source', 'destination', 'link', 'circuit', 'uplink'],
  Named: ['node', 'source', 'destination', 'link', 'circuit', 'uplink', 'place', 'segment'],
};

const icons: Partial<Record<Fact['kind'], CompletionItemKind>> = {
  place: CompletionItemKind.Folder,
  kit: CompletionItemKind.Class,
  cable: CompletionItemKind.Struct,
  interface: CompletionItemKind.Interface,
  segment: CompletionItemKind.Enum,
  node: CompletionItemKind.Module,
  source: CompletionItemKind.Event,
  destination: CompletionItemKind.Variable,
  link: CompletionItemKind.Operator,
  circuit: CompletionItemKind.Constant,
  uplink: CompletionItemKind.Constant,
};

const listed: ReadonlySet<string> = new Set(['Thing', 'Target', 'Segment', 'Circuit', 'Source', 'Uplink']);

/** Names that can stand here, with what people call them. */
export function nameOffers(asked: Asked, of: string): Offer[] {
  const kinds = kindsFor[of] ?? [];
  // What stands in a list already is not named again.
  const taken = new Set(listed.has(of) ? asked.where.before.map(({ image }) => image) : []);
  return asked.visible
    .filter(({ fact }) => kinds.includes(fact.kind))
    .flatMap((statement) => {
      const offer = namedOffer(asked, statement);
      return offer && !taken.has(offer.label) ? [offer] : [];
    });
}

/** Sources for a feed, those that go nowhere yet first. */
export function sourceOffers(asked: Asked): Offer[] {
  const used = new Set(
    asked.analysis?.feeds
      .filter(({ statement }) => statement !== asked.statement)
      .map(({ sourceName }) => sourceName),
  );
  return nameOffers(asked, 'Source').map((offer) =>
    used.has(offer.label)
      ? offer
      : {
          ...offer,
          detail: ['not fed anywhere yet', offer.detail].filter((part) => part).join(' · '),
          group: 1,
        },
  );
}

export function namedOffer({ where, analysis, plan }: Asked, statement: Statement): Offer | undefined {
  const { fact } = statement;
  const name = 'name' in fact ? fact.name : undefined;
  if (name === undefined) return undefined;
  const fromLibrary = plan?.assembled.plan.libraryFiles.has(statement.source.file);
  return {
    label: name,
    kind: icons[fact.kind] ?? CompletionItemKind.Value,
    detail: detailOf(analysis, statement),
    group: fromLibrary ? 4 : 2,
    named: { uri: where.document.uri.toString(), kind: fact.kind, name },
    // A port follows the name of a node, and a dot accepts it.
    ...(fact.kind === 'node' ? { commit: '.' } : {}),
  };
}

function detailOf(analysis: Analysis | undefined, statement: Statement): string {
  const { fact } = statement;
  const { detail } = titleOf(statement);
  if (fact.kind !== 'source') return detail;
  const rate = analysis?.sourceFigures.get(fact.name)?.network_bits_per_second;
  return [statement.label, fact.format?.text, rate === undefined ? undefined : formatRate(rate)]
    .filter((part) => part)
    .join(' · ');
}

/** A new name: one that is spoken of already and that nothing declares yet. */
export function missingNameOffers({ analysis, where }: Asked): Offer[] {
  const opening = where.before[0]?.image ?? '';
  const wanted = wantedBy[opening];
  if (!analysis || !wanted) return [];
  return analysis.names.unknown
    .filter((unknown) => wanted.includes(unknown.wanted) && !unknown.declaredAs)
    .map(({ name, uses }) => ({
      label: name,
      kind: CompletionItemKind.Reference,
      detail: `spoken of ${uses.length === 1 ? 'once' : `${uses.length} times`}, not declared yet`,
      group: 1,
    }));
}

const wantedBy: Record<string, readonly Wanted[]> = {
  place: ['place'],
  kit: ['kit'],
  cable: ['cable'],
  interface: ['interface'],
  segment: ['segment'],
  node: ['node', 'target'],
  source: ['source'],
  destination: ['destination', 'target'],
  link: ['link'],
  circuit: ['circuit'],
  uplink: ['uplink'],
};
