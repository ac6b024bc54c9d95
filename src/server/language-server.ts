import { DefaultLanguageServer } from 'langium/lsp';
import type { InitializeParams, InitializeResult } from 'vscode-languageserver';

/** Tells the editor also of the abilities that are answered beside Langium's own. */
export class PlanLanguageServer extends DefaultLanguageServer {
  protected override buildInitializeResult(params: InitializeParams): InitializeResult {
    const result = super.buildInitializeResult(params);
    return {
      ...result,
      serverInfo: { name: 'feedplot' },
      capabilities: {
        ...result.capabilities,
        workspace: {
          ...result.capabilities.workspace,
          workspaceFolders: { supported: true, changeNotifications: true },
        },
        codeLensProvider: { resolveProvider: true },
        inlayHintProvider: { resolveProvider: true },
        selectionRangeProvider: true,
        linkedEditingRangeProvider: true,
      },
    };
  }
}
