import { FileType, Uri, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { type FileKind, type FileQuestion, type FolderEntry, fileRequests } from '../server/protocol.ts';

/** Reads for the server what only the editor can: files of a browser's workspace or of a remote file system. */
export function answerFileRequests(client: BaseLanguageClient): void {
  client.onRequest<FileKind | null, void>(fileRequests.kind, ({ uri }: FileQuestion) =>
    kindOfFile(Uri.parse(uri)),
  );
  client.onRequest(fileRequests.read, async ({ uri }: FileQuestion): Promise<string> => {
    return new TextDecoder().decode(await workspace.fs.readFile(Uri.parse(uri)));
  });
  client.onRequest(fileRequests.list, async ({ uri }: FileQuestion): Promise<FolderEntry[]> => {
    const folder = Uri.parse(uri);
    const entries = await workspace.fs.readDirectory(folder);
    return entries.flatMap(([name, type]) => {
      const kind = kindOf(type);
      return kind ? [{ uri: Uri.joinPath(folder, name).toString(), kind }] : [];
    });
  });
}

async function kindOfFile(uri: Uri): Promise<FileKind | null> {
  try {
    return kindOf((await workspace.fs.stat(uri)).type);
  } catch {
    return null;
  }
}

/** Links are not followed: a plan's files lie where they seem to lie. */
function kindOf(type: FileType): FileKind | null {
  if (type === FileType.File) return 'file';
  return type === FileType.Directory ? 'folder' : null;
}
