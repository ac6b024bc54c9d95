import { URI } from 'langium';
import {
  type Connection,
  DidChangeWorkspaceFoldersNotification,
  type WorkspaceFoldersChangeEvent,
} from 'vscode-languageserver';
import type { FeedplotSharedServices } from './services.ts';
import type { PlanWorkspaceManager } from './workspace-manager.ts';

/** Reads folders that are added to the workspace, and forgets those that are taken out. */
export function addWorkspaceFolders(connection: Connection, services: FeedplotSharedServices): void {
  const { workspace } = services;
  const change = async ({ added, removed }: WorkspaceFoldersChangeEvent) => {
    const manager = workspace.WorkspaceManager as PlanWorkspaceManager;
    await manager.ready;
    manager.changeFolders(added, removed);
    const found = await Promise.all(added.map((folder) => manager.searchFolder(URI.parse(folder.uri))));
    const gone = removed.map((folder) => URI.parse(folder.uri));
    await workspace.WorkspaceLock.write((cancel) =>
      workspace.DocumentBuilder.update(found.flat(), gone, cancel),
    );
  };
  // The library's own handler of this notification is set when the editor says hello, so ours comes after that.
  services.lsp.LanguageServer.onInitialized(() => {
    connection.onNotification(DidChangeWorkspaceFoldersNotification.type, ({ event }) => change(event));
  });
}
