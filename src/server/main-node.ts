import '../language/object-group-by.ts';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { ClientFiles, FilesByScheme } from './client-files.ts';
import { DiskFiles } from './disk-files.ts';
import { guarded } from './faults.ts';
import { gitRevisions } from './git/revisions.ts';
import { keepMemorySmall } from './memory.ts';
import { addReviewHandlers } from './review.ts';
import { createServerServices } from './services.ts';
import { startServer } from './start.ts';

/**
 * The language server over the streams or the channel that the command line names (`--stdio`, `--node-ipc`).
 *
 * @param libraryFolder URI of the folder with the shipped library.
 */
export function serve(libraryFolder: string): void {
  keepMemorySmall();
  const connection = createConnection(ProposedFeatures.all);
  const disk = new DiskFiles(() => shared.plans.Plans.folders());
  const fileSystemProvider = () => new FilesByScheme(disk, new ClientFiles(connection));
  const { shared } = createServerServices({ connection, libraryFolder, fileSystemProvider });
  const { Faults } = shared.plans;
  process.on('uncaughtException', (error) => Faults.tell('an exception that nobody caught', {}, error));
  process.on('unhandledRejection', (error) => Faults.tell('a promise that nobody kept', {}, error));
  addReviewHandlers(guarded(connection, shared.plans.Faults), shared, libraryFolder, gitRevisions);
  startServer(shared);
}
