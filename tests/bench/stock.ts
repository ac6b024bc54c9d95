/** The same grammar read by Langium as it comes: everything again after each change. */
import {
  createDefaultCoreModule,
  createDefaultSharedCoreModule,
  createParser,
  EmptyFileSystem,
  inject,
  type LangiumCoreServices,
  LangiumParser,
  URI,
} from 'langium';
import {
  FeedplotGeneratedModule,
  FeedplotGeneratedSharedModule,
} from '../../src/language/generated/module.ts';
import { FeedplotLexer } from '../../src/language/lexer.ts';
import { FeedplotTokenBuilder } from '../../src/language/token-builder.ts';
import { FeedplotValueConverter } from '../../src/language/value-converter.ts';

/** Milliseconds that reading, indexing and linking of a text take, without any check. */
export async function stockReading_ms(text: string): Promise<number> {
  const shared = inject(createDefaultSharedCoreModule(EmptyFileSystem), FeedplotGeneratedSharedModule);
  const language = inject(createDefaultCoreModule({ shared }), FeedplotGeneratedModule, {
    parser: {
      // The tokens are those of the language, which its lexer and its token builder make together.
      Lexer: (services: LangiumCoreServices) => new FeedplotLexer(services),
      TokenBuilder: () => new FeedplotTokenBuilder(),
      ValueConverter: () => new FeedplotValueConverter(),
      LangiumParser: (services: LangiumCoreServices) => {
        const parser = createParser(
          services.Grammar,
          new LangiumParser(services),
          services.parser.Lexer.definition,
        );
        parser.finalize();
        return parser as LangiumParser;
      },
    },
  });
  shared.ServiceRegistry.register(language);
  const { LangiumDocumentFactory, DocumentBuilder } = shared.workspace;
  const times: number[] = [];
  for (let i = 0; i < 2; i++) {
    const began = performance.now();
    const document = LangiumDocumentFactory.fromString(text, URI.parse(`file:///stock${i}.feedplot`));
    await DocumentBuilder.build([document]);
    times.push(performance.now() - began);
  }
  return Math.min(...times);
}
