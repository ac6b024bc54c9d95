import {
  createDefaultCoreModule,
  createDefaultSharedCoreModule,
  type DefaultSharedCoreModuleContext,
  EmptyFileSystem,
  inject,
  type LangiumCoreServices,
  type LangiumSharedCoreServices,
  type Module,
  type PartialLangiumCoreServices,
} from 'langium';
import { FeedplotGeneratedModule, FeedplotGeneratedSharedModule } from './generated/module.ts';
import { createFeedplotParser } from './incremental/parser.ts';
import { FeedplotLexer } from './lexer.ts';
import { FeedplotLexerMessages, FeedplotParserMessages } from './parser-messages.ts';
import { FeedplotLinker, Revision } from './reference.ts';
import { NameScope } from './scope.ts';
import { FeedplotTokenBuilder } from './token-builder.ts';
import { FeedplotValueConverter } from './value-converter.ts';
import { Visibility } from './visibility.ts';

/** Services of our own beside Langium's. */
export interface FeedplotAddedServices {
  references: { Revision: Revision; Visibility: Visibility };
}

export type FeedplotServices = LangiumCoreServices & FeedplotAddedServices;

/** What every face of the language shares: lexing, parsing, names. */
export const FeedplotModule: Module<FeedplotServices, PartialLangiumCoreServices & FeedplotAddedServices> = {
  parser: {
    LangiumParser: (services) => createFeedplotParser(services),
    Lexer: (services) => new FeedplotLexer(services),
    TokenBuilder: () => new FeedplotTokenBuilder(),
    ValueConverter: () => new FeedplotValueConverter(),
    ParserErrorMessageProvider: () => new FeedplotParserMessages(),
    LexerErrorMessageProvider: () => new FeedplotLexerMessages(),
  },
  references: {
    Revision: () => new Revision(),
    Visibility: (services) =>
      new Visibility(() => services.shared.workspace.LangiumDocuments, services.references.Revision),
    ScopeProvider: (services) => new NameScope(services, services.references.Visibility),
    Linker: (services) => new FeedplotLinker(services, services.references.Revision),
  },
};

/** The language without an editor: enough to read text into syntax trees. */
export function createFeedplotServices(context: DefaultSharedCoreModuleContext = EmptyFileSystem): {
  shared: LangiumSharedCoreServices;
  Feedplot: FeedplotServices;
} {
  const shared = inject(createDefaultSharedCoreModule(context), FeedplotGeneratedSharedModule);
  const Feedplot = inject(createDefaultCoreModule({ shared }), FeedplotGeneratedModule, FeedplotModule);
  shared.ServiceRegistry.register(Feedplot);
  return { shared, Feedplot };
}
