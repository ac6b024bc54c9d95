import { type TextDocument, URI } from 'langium';
import { DefaultDocumentUpdateHandler } from 'langium/lsp';
import type { FileSystemWatcher, TextDocumentChangeEvent } from 'vscode-languageserver';
import type { PlanDocumentBuilder } from './document-builder.ts';
import type { FeedplotSharedServices } from './services.ts';

/** Reads changed texts anew, and asks the editor to tell of changed plan files only. */
export class PlanUpdateHandler extends DefaultDocumentUpdateHandler {
  readonly #shared: FeedplotSharedServices;

  constructor(services: FeedplotSharedServices) {
    super(services);
    this.#shared = services;
  }

  /** Every other file of a workspace is none of our business. */
  protected override getWatchers(): FileSystemWatcher[] {
    return [{ globPattern: '**/*.feedplot' }];
  }

  override didChangeContent(change: TextDocumentChangeEvent<TextDocument>): void {
    (this.documentBuilder as PlanDocumentBuilder).followTyping(URI.parse(change.document.uri));
    super.didChangeContent(change);
  }

  /** What was typed and not saved is gone: the file is again what lies on disk. */
  didCloseDocument({ document }: TextDocumentChangeEvent<TextDocument>): void {
    this.fireDocumentUpdate([URI.parse(document.uri)], []);
  }

  /** A fault while reading is told and survived: the next edit reads again. */
  protected override fireDocumentUpdate(changed: URI[], deleted: URI[]): void {
    const { WorkspaceManager, WorkspaceLock, DocumentBuilder } = this.#shared.workspace;
    const update = async () => {
      await WorkspaceManager.ready;
      await WorkspaceLock.write((token) => DocumentBuilder.update(changed, deleted, token));
    };
    update().catch((error: unknown) => {
      this.#shared.plans.Faults.tell('reading a change', { changed: changed.map(String) }, error);
    });
  }
}
