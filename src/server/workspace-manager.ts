import { DefaultWorkspaceManager, type LangiumDocument, URI } from 'langium';
import type { InitializeParams, WorkspaceFolder } from 'vscode-languageserver-protocol';
import { libraryTexts } from '../language/library/texts.ts';
import { declareLibraryFile } from '../language/visibility.ts';
import type { PlanDocumentFactory } from './document-factory.ts';
import type { FeedplotSharedServices } from './services.ts';

/** Opens the workspace's plans, and the shipped library as documents of their own so that an editor can show them. */
export class PlanWorkspaceManager extends DefaultWorkspaceManager {
  readonly #libraryFolder: string;
  readonly #services: FeedplotSharedServices;

  constructor(services: FeedplotSharedServices, libraryFolder: string) {
    super(services);
    this.#services = services;
    this.#libraryFolder = libraryFolder;
  }

  /** URIs of the folders that files may be read from. */
  get folderUris(): string[] {
    return (this.folders ?? []).map((folder) => URI.parse(folder.uri).toString());
  }

  /** An editor that knows no workspace folders may still have one folder open. */
  override initialize(params: InitializeParams): void {
    super.initialize(params);
    if (!this.folders && params.rootUri) this.folders = [{ uri: params.rootUri, name: '' }];
  }

  changeFolders(added: readonly WorkspaceFolder[], removed: readonly WorkspaceFolder[]): void {
    const gone = new Set(removed.map(({ uri }) => uri));
    this.folders = [...(this.folders ?? []).filter(({ uri }) => !gone.has(uri)), ...added];
  }

  protected override async loadAdditionalDocuments(
    _folders: WorkspaceFolder[],
    collect: (document: LangiumDocument) => void,
  ): Promise<void> {
    for (const [name, text] of libraryTexts) {
      const uri = `${this.#libraryFolder}/${name}`;
      declareLibraryFile(uri, text);
      const factory = this.#services.workspace.LangiumDocumentFactory as PlanDocumentFactory;
      collect(factory.libraryFile(URI.parse(uri), text));
    }
  }
}
