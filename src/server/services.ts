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
  type PartialLangiumServices,
  type PartialLangiumSharedServices,
} from 'langium/lsp';
import { FeedplotGeneratedModule, FeedplotGeneratedSharedModule } from '../language/generated/module.ts';
import { type FeedplotAddedServices, FeedplotModule } from '../language/services.ts';
import { PlanDocumentBuilder } from './document-builder.ts';
import { Plans } from './plans.ts';
import { PlanWorkspaceManager } from './workspace-manager.ts';

/** What the surroundings give the server beside a connection and a file system. */
export interface FeedplotServerContext extends DefaultSharedModuleContext {
  /** URI of the folder in which the files of the shipped library lie, for an editor to open. */
  readonly libraryFolder: string;
}

export type FeedplotLspServices = LangiumServices & FeedplotAddedServices;
export type FeedplotSharedServices = LangiumSharedServices & { plans: { Plans: Plans } };

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
  references: { ScopeComputation: (services) => new NoLocalSymbols(services) },
  validation: { DocumentValidator: () => noValidation },
};

/** Everything the language server is made of, for Node, a browser worker and tests alike. */
export function createServerServices(context: FeedplotServerContext): {
  shared: FeedplotSharedServices;
  Feedplot: FeedplotLspServices;
} {
  const sharedModule: Module<
    FeedplotSharedServices,
    PartialLangiumSharedServices & { plans: { Plans: Plans } }
  > = {
    plans: { Plans: (services) => new Plans(services, () => Feedplot) },
    workspace: {
      IndexManager: (services) => new NoIndex(services),
      DocumentBuilder: (services) => new PlanDocumentBuilder(services, () => Feedplot.references.Revision),
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
