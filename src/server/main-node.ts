import '../language/object-group-by.ts';
import { NodeFileSystem } from 'langium/node';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { ClientFiles, FilesByScheme } from './client-files.ts';
import { createServerServices } from './services.ts';
import { startServer } from './start.ts';

/**
 * The language server over the streams or the channel that the command line names (`--stdio`, `--node-ipc`).
 *
 * @param libraryFolder URI of the folder with the shipped library.
 */
export function serve(libraryFolder: string): void {
  const connection = createConnection(ProposedFeatures.all);
  const fileSystemProvider = () =>
    new FilesByScheme(NodeFileSystem.fileSystemProvider(), new ClientFiles(connection));
  startServer(createServerServices({ connection, libraryFolder, fileSystemProvider }).shared);
}
