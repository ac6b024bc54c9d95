import '../language/object-group-by.ts';
import { NodeFileSystem } from 'langium/node';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { createServerServices } from './services.ts';
import { startServer } from './start.ts';

/** The language server over the streams or the channel that the command line names (`--stdio`, `--node-ipc`). */
export function serve(libraryFolder: string): void {
  const connection = createConnection(ProposedFeatures.all);
  startServer(createServerServices({ connection, libraryFolder, ...NodeFileSystem }).shared);
}
