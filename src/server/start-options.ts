import type { LanguageServer } from 'langium/lsp';
import type { InitializeParams } from 'vscode-languageserver';
import type { StartOptions } from './protocol.ts';

/** What the editor said of itself when it started the server. */
export class EditorAbilities {
  options: StartOptions = {};
  /** It understands tab stops in what completion inserts. */
  snippets = false;
  /** It can create files as part of an edit. */
  createsFiles = false;

  constructor(server: LanguageServer) {
    server.onInitialize((params) => this.#read(params));
  }

  #read({ initializationOptions, capabilities }: InitializeParams): void {
    if (typeof initializationOptions === 'object' && initializationOptions !== null)
      this.options = initializationOptions as StartOptions;
    this.snippets = capabilities.textDocument?.completion?.completionItem?.snippetSupport === true;
    const { documentChanges, resourceOperations = [] } = capabilities.workspace?.workspaceEdit ?? {};
    this.createsFiles = documentChanges === true && resourceOperations.includes('create');
  }
}
