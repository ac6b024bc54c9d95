import type { InitializeParams } from 'vscode-languageserver';
import {
  BrowserMessageReader,
  BrowserMessageWriter,
  createConnection,
  ProposedFeatures,
} from 'vscode-languageserver/browser';
import { ClientFiles } from './client-files.ts';
import { guarded } from './faults.ts';
import type { StartOptions } from './protocol.ts';
import { addReviewHandlers } from './review.ts';
import { createServerServices } from './services.ts';
import { addHandlers } from './start.ts';

/** The language server in a worker of a browser. Its files come from the editor that started it. */
function serve(scope: Worker): void {
  const reader = new BrowserMessageReader(scope);
  const writer = new BrowserMessageWriter(scope);
  const connection = createConnection(ProposedFeatures.all, reader, writer);
  // Where the library lies is known only when the editor says so.
  connection.onInitialize((params: InitializeParams) => {
    const { library = '' } = (params.initializationOptions ?? {}) as StartOptions;
    const fileSystemProvider = () => new ClientFiles(connection);
    const { shared } = createServerServices({ connection, libraryFolder: library, fileSystemProvider });
    addReviewHandlers(guarded(connection, shared.plans.Faults), shared, library);
    addHandlers(connection, shared);
    return shared.lsp.LanguageServer.initialize(params);
  });
  connection.listen();
}

serve(globalThis as unknown as Worker);
