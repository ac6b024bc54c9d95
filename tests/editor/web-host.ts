/** A workbench whose extension host is a worker in the browser, as on a web page: no Node behind the extension. */
import { mkdirSync, readdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { CodeServer } from './code-server.ts';
import { findFreePort } from './free-port.ts';
import type { Installation } from './installation.ts';
import { type OpenOptions, openWorkbench, type Server, type Start } from './open-workbench.ts';
import type { Workbench } from './workbench.ts';

/** What is used of @vscode/test-web, which is there only where the editor is installed. */
interface TestWeb {
  open(options: Record<string, unknown>): Promise<{ dispose(): void }>;
}

/** Shows the workbench with the extension and a copy of the folder, whose changes stay in the browser's memory. */
export async function openWebHost(installation: Installation, options: OpenOptions): Promise<Workbench> {
  return openWorkbench(installation, options, startServer);
}

async function startServer({ installation, vsix, folder, home, onClose }: Start): Promise<Server> {
  // Installing is how a packaged extension is unpacked; this server is never started.
  const extension = await new CodeServer(installation.codeServer, path.join(home, 'server')).install(vsix);
  const builds = path.join(home, 'builds');
  linkBuild(installation.vscodeWeb, builds);
  const port = await findFreePort();
  const { open }: TestWeb = createRequire(import.meta.url)('@vscode/test-web');
  const server = await open({
    browserType: 'none', // ours is opened later
    quality: 'stable',
    commit: 'local',
    testRunnerDataDir: builds,
    esm: false,
    extensionDevelopmentPath: extension,
    folderPath: folder,
    port,
  });
  onClose(() => server.dispose());
  // The server only hands out files; whatever the extension asks for, the browser asks for.
  return { address: `http://localhost:${port}/`, externalConnections: () => [] };
}

/** Lays the workbench's files where the server looks for a build before it would download one. */
function linkBuild(vscodeWeb: string, builds: string): void {
  const build = path.join(builds, 'vscode-web-stable-local');
  mkdirSync(build, { recursive: true });
  for (const name of readdirSync(vscodeWeb)) symlinkSync(path.join(vscodeWeb, name), path.join(build, name));
  writeFileSync(path.join(build, 'version'), 'local');
}
