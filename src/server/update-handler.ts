import { DefaultDocumentUpdateHandler } from 'langium/lsp';
import type { FileSystemWatcher } from 'vscode-languageserver';

/** Asks the editor to tell of changed plan files only: every other file of a workspace is none of our business. */
export class PlanUpdateHandler extends DefaultDocumentUpdateHandler {
  protected override getWatchers(): FileSystemWatcher[] {
    return [{ globPattern: '**/*.feedplot' }];
  }
}
