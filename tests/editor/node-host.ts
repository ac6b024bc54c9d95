/** A workbench whose extension host is Node, as on a desk: code-server with the packaged extension installed. */
import path from 'node:path';
import { CodeServer } from './code-server.ts';
import type { Installation } from './installation.ts';
import { type OpenOptions, openWorkbench, type Server, type Start } from './open-workbench.ts';
import type { Workbench } from './workbench.ts';

/** Installs the extension, starts the server and shows the workbench with a copy of the folder open. */
export async function openNodeHost(installation: Installation, options: OpenOptions): Promise<Workbench> {
  return openWorkbench(installation, options, startServer);
}

async function startServer({ installation, vsix, folder, home, onClose }: Start): Promise<Server> {
  const server = new CodeServer(installation.codeServer, path.join(home, 'server'));
  onClose(() => server.stop());
  await server.install(vsix);
  const address = await server.start();
  return {
    address: `${address}/?folder=${encodeURIComponent(folder)}`,
    externalConnections: () => server.externalConnections(),
  };
}
