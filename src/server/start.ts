import * as lsp from 'langium/lsp';
import type { Connection } from 'vscode-languageserver';
import { addBookHandler } from './book.ts';
import { addCodeLensResolveHandler } from './code-lenses.ts';
import { addCompletionResolveHandler } from './completion.ts';
import { addDrawingHandlers } from './drawing.ts';
import { addExplanationHandler } from './explanation.ts';
import { guarded } from './faults.ts';
import { addHealthHandler } from './health.ts';
import { addInlayHintResolveHandler } from './inlay-hints.ts';
import { addLinkedEditingHandler } from './linked-editing.ts';
import { addRefresh } from './refresh.ts';
import { addSelectionRangeHandler } from './selection-ranges.ts';
import type { FeedplotSharedServices } from './services.ts';
import { addWorkspaceFolders } from './workspace-folders.ts';

/** Starts answering. Findings are published by plan (publish.ts), so the handler that publishes by file is left out. */
export function startServer(services: FeedplotSharedServices): void {
  const connection = services.lsp.Connection;
  if (!connection) throw new Error('A server needs a connection.');
  addHandlers(connection, services);
  connection.onInitialize((params) => services.lsp.LanguageServer.initialize(params));
  connection.listen();
}

/** Everything but the first request and the start itself. */
export function addHandlers(connection: Connection, services: FeedplotSharedServices): void {
  const safe = guarded(connection, services.plans.Faults);
  for (const add of Object.values(handlers)) add(safe, services);
  safe.onInitialized((params) => services.lsp.LanguageServer.initialized(params));
  services.workspace.TextDocuments.listen(safe);
}

const handlers: Record<string, (connection: Connection, services: FeedplotSharedServices) => void> = {
  documents: lsp.addDocumentUpdateHandler,
  fileOperations: lsp.addFileOperationHandler,
  completion: lsp.addCompletionHandler,
  completionResolve: addCompletionResolveHandler,
  references: lsp.addFindReferencesHandler,
  documentSymbols: lsp.addDocumentSymbolHandler,
  definition: lsp.addGotoDefinitionHandler,
  highlights: lsp.addDocumentHighlightHandler,
  folding: lsp.addFoldingRangeHandler,
  formatting: lsp.addFormattingHandler,
  codeActions: lsp.addCodeActionHandler,
  rename: lsp.addRenameHandler,
  hover: lsp.addHoverHandler,
  inlayHints: lsp.addInlayHintHandler,
  inlayHintResolve: addInlayHintResolveHandler,
  semanticTokens: lsp.addSemanticTokenHandler,
  commands: lsp.addExecuteCommandHandler,
  calls: lsp.addCallHierarchyHandler,
  codeLenses: lsp.addCodeLensHandler,
  codeLensResolve: addCodeLensResolveHandler,
  documentLinks: lsp.addDocumentLinkHandler,
  configuration: lsp.addConfigurationChangeHandler,
  workspaceSymbols: lsp.addWorkspaceSymbolHandler,
  workspaceFolders: addWorkspaceFolders,
  selectionRanges: addSelectionRangeHandler,
  linkedEditing: addLinkedEditingHandler,
  health: addHealthHandler,
  refresh: addRefresh,
  drawing: addDrawingHandlers,
  book: addBookHandler,
  explanation: addExplanationHandler,
};
