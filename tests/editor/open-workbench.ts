/** Opens a workbench in Chromium: what both kinds of extension host share. */
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { openBrowser, type Settings, type Theme } from './browser.ts';
import type { Installation } from './installation.ts';
import { Workbench } from './workbench.ts';

export interface OpenOptions {
  /** The packaged extension. */
  vsix: string;
  /** The folder to open; the workbench gets a copy of it. */
  folder: string;
  /** Light if not given. */
  theme?: Theme;
  settings?: Settings;
}

/** What a kind of host gets to start its server with. */
export interface Start {
  installation: Installation;
  vsix: string;
  /** The copy of the folder to open. */
  folder: string;
  /** A folder for all that the server writes. */
  home: string;
  /** Adds a step that is taken when the workbench closes or does not open. */
  onClose(step: () => unknown): void;
}

/** A started server. */
export interface Server {
  /** Where it shows the workbench with the folder open. */
  address: string;
  /** Hosts outside this machine that it has connected to since its start. */
  externalConnections(): string[];
}

/** Starts the server, then Chromium, and shows the workbench. */
export async function openWorkbench(
  installation: Installation,
  options: OpenOptions,
  start: (what: Start) => Promise<Server>,
): Promise<Workbench> {
  const steps: (() => unknown)[] = [];
  const onClose = (step: () => unknown) => steps.unshift(step);
  const close = async () => {
    for (const step of steps.splice(0)) await step();
  };
  try {
    const home = mkdtempSync(path.join(os.tmpdir(), 'feedplot-workbench-'));
    onClose(() => rmSync(home, { recursive: true, force: true, maxRetries: 5 }));
    const folder = path.join(home, path.basename(options.folder));
    cpSync(options.folder, folder, { recursive: true });
    const server = await start({ installation, vsix: options.vsix, folder, home, onClose });

    const profile = path.join(home, 'profile');
    const browser = await openBrowser(installation.chromium, profile, options.theme, options.settings);
    onClose(() => browser.context.close());
    const workbench = new Workbench({
      page: browser.page,
      folder,
      externalRequests: () => [...browser.externalRequests, ...server.externalConnections()],
      close,
    });
    return await workbench.show(server.address);
  } catch (error) {
    await close();
    throw error;
  }
}
