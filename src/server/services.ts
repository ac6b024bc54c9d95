import {
  DefaultIndexManager,
  DefaultScopeComputation,
  type DocumentValidator,
  inject,
  type LangiumDocument,
  type LocalSymbols,
  type Module,
  MultiMap,
} from 'langium';
import {
  createDefaultModule,
  createDefaultSharedModule,
  type DefaultSharedModuleContext,
  type LangiumServices,
  type LangiumSharedServices,
  NormalizedTextDocuments,
  type PartialLangiumServices,
  type PartialLangiumSharedServices,
} from 'langium/lsp';
import { FeedplotGeneratedModule, FeedplotGeneratedSharedModule } from '../language/generated/module.ts';
import { type FeedplotAddedServices, FeedplotModule } from '../language/services.ts';
import { SignalFlowHierarchy } from './call-hierarchy.ts';
import { PlanCodeActions } from './code-actions.ts';
import { PlanLenses } from './code-lenses.ts';
import { PlanCompletion } from './completion.ts';
import { PlanDefinition } from './definition.ts';
import { PlanDocumentBuilder } from './document-builder.ts';
import { PlanDocumentFactory } from './document-factory.ts';
import { ImportLinks } from './document-links.ts';
import { PlanSymbols } from './document-symbols.ts';
import { Faults } from './faults.ts';
import { ImportsFollowFiles } from './file-renames.ts';
import { FindReferences } from './find-references.ts';
import { PlanFolding } from './folding.ts';
import { PlanFormatter } from './formatting.ts';
import { NameHighlights } from './highlights.ts';
import { PlanHover } from './hover.ts';
import { FigureHints } from './inlay-hints.ts';
import { PlanLanguageServer } from './language-server.ts';
import { openTexts } from './open-text.ts';
import { Plans } from './plans.ts';
import { PlanReferences } from './references.ts';
import { PlanRename } from './rename.ts';
import { NameTokens } from './semantic-tokens.ts';
import { EditorAbilities } from './start-options.ts';
import { PlanUpdateHandler } from './update-handler.ts';
import { PlanWorkspaceManager } from './workspace-manager.ts';
import { PlanWorkspaceSymbols } from './workspace-symbols.ts';

/** What the surroundings give the server beside a connection and a file system. */
export interface FeedplotServerContext extends DefaultSharedModuleContext {
  /** URI of the folder in which the files of the shipped library lie, for an editor to open. */
  readonly libraryFolder: string;
}

export type FeedplotLspServices = LangiumServices & FeedplotAddedServices;
export type FeedplotSharedServices = LangiumSharedServices & {
  plans: { Plans: Plans; Abilities: EditorAbilities; Faults: Faults };
};

/** Names are looked up where they stand: nothing is indexed or linked ahead of a question. */
class NoIndex extends DefaultIndexManager {
  override async updateContent(): Promise<void> {}
  override async updateReferences(): Promise<void> {}
  override isAffected(): boolean {
    return false;
  }
}

class NoLocalSymbols extends DefaultScopeComputation {
  override async collectLocalSymbols(): Promise<LocalSymbols> {
    return new MultiMap();
  }
}

/** Findings belong to plans, not to files: see publish.ts. */
const noValidation: DocumentValidator = { validateDocument: async (_document: LangiumDocument) => [] };

const lspModule: Module<FeedplotLspServices, PartialLangiumServices> = {
  references: {
    ScopeComputation: (services) => new NoLocalSymbols(services),
    References: (services) => new PlanReferences(services),
  },
  validation: { DocumentValidator: () => noValidation },
  lsp: {
    CallHierarchyProvider: (services) => new SignalFlowHierarchy(services),
    CodeActionProvider: (services) => new PlanCodeActions(services),
    CodeLensProvider: (services) => new PlanLenses(services),
    CompletionProvider: (services) => new PlanCompletion(services),
    DefinitionProvider: (services) => new PlanDefinition(services),
    DocumentHighlightProvider: (services) => new NameHighlights(services),
    DocumentLinkProvider: (services) => new ImportLinks(services),
    DocumentSymbolProvider: (services) => new PlanSymbols(services),
    FoldingRangeProvider: () => new PlanFolding(),
    HoverProvider: (services) => new PlanHover(services),
    Formatter: (services) => new PlanFormatter(services),
    InlayHintProvider: (services) => new FigureHints(services),
    ReferencesProvider: (services) => new FindReferences(services),
    RenameProvider: (services) => new PlanRename(services),
    SemanticTokenProvider: (services) => new NameTokens(services),
  },
};

/** Everything the language server is made of, for Node, a browser worker and tests alike. */
export function createServerServices(context: FeedplotServerContext): {
  shared: FeedplotSharedServices;
  Feedplot: FeedplotLspServices;
} {
  const sharedModule: Module<
    FeedplotSharedServices,
    PartialLangiumSharedServices & Pick<FeedplotSharedServices, 'plans'>
  > = {
    plans: {
      Plans: (services) => new Plans(services, () => Feedplot),
      Abilities: (services) => new EditorAbilities(services.lsp.LanguageServer),
      Faults: (services) => new Faults(services.lsp.Connection),
    },
    lsp: {
      DocumentUpdateHandler: (services) => new PlanUpdateHandler(services),
      FileOperationHandler: (services) => new ImportsFollowFiles(services),
      LanguageServer: (services) => new PlanLanguageServer(services),
      WorkspaceSymbolProvider: (services) => new PlanWorkspaceSymbols(services),
    },
    workspace: {
      IndexManager: (services) => new NoIndex(services),
      DocumentBuilder: (services) => new PlanDocumentBuilder(services, () => Feedplot.references.Revision),
      LangiumDocumentFactory: (services) => new PlanDocumentFactory(services, () => Feedplot),
      TextDocuments: () => new NormalizedTextDocuments(openTexts),
      WorkspaceManager: (services) => new PlanWorkspaceManager(services, context.libraryFolder),
    },
  };
  const shared: FeedplotSharedServices = inject(
    createDefaultSharedModule(context),
    FeedplotGeneratedSharedModule,
    sharedModule,
  );
  const Feedplot: FeedplotLspServices = inject(
    createDefaultModule({ shared }),
    FeedplotGeneratedModule,
    FeedplotModule,
    lspModule,
  );
  shared.ServiceRegistry.register(Feedplot);
  return { shared, Feedplot };
}
