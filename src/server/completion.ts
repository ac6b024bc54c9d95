import type { LangiumDocument } from 'langium';
import { URI } from 'langium';
import type { CompletionProvider, CompletionProviderOptions } from 'langium/lsp';
import {
  type CompletionItem,
  CompletionList,
  type CompletionParams,
  CompletionTriggerKind,
  type Connection,
} from 'vscode-languageserver';
import { type Asked, itemOf, type NamedThing, type Offer } from './completion/asked.ts';
import { cableOffers } from './completion/cables.ts';
import { importOffers } from './completion/imports.ts';
import { missingNameOffers, nameOffers, sourceOffers } from './completion/names.ts';
import { nodeOffers, portOffers } from './completion/ports.ts';
import { targetOffers } from './completion/targets.ts';
import { acceptOffers, dateOffers, formatOffers, settingOffers, unitOffers } from './completion/values.ts';
import { type Next, whereIs } from './completion/where.ts';
import { wordOffers } from './completion/words.ts';
import { withoutWorkings } from './hover/markdown.ts';
import { hoverOf } from './hover.ts';
import { statementBefore } from './positions.ts';
import type { FeedplotLspServices, FeedplotSharedServices } from './services.ts';

/** What can be written next, with what the plan knows of it. */
export class PlanCompletion implements CompletionProvider {
  readonly completionOptions: CompletionProviderOptions = { triggerCharacters: ['.', '"', '/', ' '] };
  readonly #services: FeedplotLspServices;
  readonly #shared: FeedplotSharedServices;

  constructor(services: FeedplotLspServices) {
    this.#services = services;
    this.#shared = services.shared as FeedplotSharedServices;
  }

  getCompletion(document: LangiumDocument, { position, context }: CompletionParams): CompletionList {
    const where = whereIs(this.#services, document, position);
    if (!where) return CompletionList.create([]);
    const bySpace =
      context?.triggerKind === CompletionTriggerKind.TriggerCharacter && context.triggerCharacter === ' ';
    // After a space only what must follow pops up by itself: else Enter at the end of a line would write a clause.
    if (bySpace && where.next.some((one) => one.kind === 'word' && one.word === 'plan'))
      return CompletionList.create([]);
    const { Plans, Abilities } = this.#shared.plans;
    const plan = Plans.of(document);
    const node = statementBefore(document, where.offset);
    const asked: Asked = {
      where,
      shared: this.#shared,
      plan,
      analysis: plan?.analysis,
      visible: plan?.assembled.plan.statements ?? this.#visibleFrom(document),
      statement: node && Plans.read(document).statementOf(node),
      snippets: Abilities.snippets,
    };
    const offers = offersFor(asked);
    return CompletionList.create(distinct(offers).map((offer, i) => itemOf(asked, offer, i)));
  }

  #visibleFrom(document: LangiumDocument) {
    const { Plans } = this.#shared.plans;
    return this.#services.references.Visibility.of(document).flatMap((one) => [
      ...Plans.read(one).statements,
    ]);
  }
}

/** Tells all about an item when somebody looks at it. */
export function addCompletionResolveHandler(connection: Connection, shared: FeedplotSharedServices): void {
  connection.onCompletionResolve((item: CompletionItem): CompletionItem => {
    const named = item.data as NamedThing | undefined;
    const document = named && shared.workspace.LangiumDocuments.getDocument(URI.parse(named.uri));
    const plan = document && shared.plans.Plans.of(document);
    const statement = plan?.assembled.plan.statements.find(
      ({ fact }) => fact.kind === named?.kind && 'name' in fact && fact.name === named.name,
    );
    const value = plan && statement && hoverOf(plan.analysis, statement);
    if (!value) return item;
    return { ...item, documentation: { kind: 'markdown', value: withoutWorkings(value) } };
  });
}

function offersFor(asked: Asked): Offer[] {
  const { next, opensLine } = asked.where;
  const words = next.flatMap((one) => (one.kind === 'word' ? [one.word] : []));
  const others = next.filter((one) => one.kind !== 'word');
  // On a fresh line a statement begins, whatever the one above could still take.
  const endsHere = words.includes('plan');
  const fresh = opensLine && endsHere;
  return [...(fresh ? [] : others.flatMap((one) => offersOf(asked, one))), ...wordOffers(asked, words)];
}

function offersOf(asked: Asked, next: Next): Offer[] {
  if (next.kind === 'name') return namesFor(asked, next.slot, next.of);
  if (next.kind === 'value') return valuesFor(asked, next.slot, next.token);
  return [];
}

function namesFor(asked: Asked, slot: string, of: string): Offer[] {
  if (of === 'Port') return portOffers(asked, slot);
  if (slot === 'Endpoint.node') return nodeOffers(asked);
  if (of === 'Cable' && slot !== 'Stock.cable') return cableOffers(asked);
  if (of === 'Target') return targetOffers(asked);
  if (slot === 'Feed.source') return sourceOffers(asked);
  return nameOffers(asked, of);
}

function valuesFor(asked: Asked, slot: string, token: string): Offer[] {
  switch (token) {
    case 'FORMAT':
      return formatOffers(asked);
    case 'UNIT':
      return unitOffers(asked);
    case 'STRING':
      return slot === 'Import.path' ? importOffers(asked) : [];
    case 'DATE':
      return dateOffers(asked, new Date().toISOString().slice(0, 10));
    case 'NAME':
      return slot === 'Accept.check'
        ? acceptOffers(asked)
        : [...settingOffers(slot), ...missingNameOffers(asked)];
    default:
      return [];
  }
}

function distinct(offers: readonly Offer[]): Offer[] {
  const byLabel = new Map<string, Offer>();
  for (const offer of offers) if (!byLabel.has(offer.label)) byLabel.set(offer.label, offer);
  return [...byLabel.values()];
}
