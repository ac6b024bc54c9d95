// Bundles what ships into dist/: the command line, the language server (Node and browser worker) and the VS Code
// extension (desktop and web), with the shipped library beside them. `--watch` rebuilds on change.
import { cpSync, existsSync, rmSync } from 'node:fs';
import esbuild from 'esbuild';

const shared = { bundle: true, minify: true, sourcemap: false, logLevel: 'warning', legalComments: 'none', charset: 'utf8' };
const node = { ...shared, platform: 'node', target: 'node20', format: 'cjs' };
const browser = { ...shared, platform: 'browser', target: 'es2022' };

const bundles = [
  { ...node, entryPoints: ['src/cli/main.ts'], outfile: 'dist/feedplot.cjs', banner: { js: '#!/usr/bin/env node' } },
  { ...node, entryPoints: ['src/server/main-node.ts'], outfile: 'dist/server.cjs' },
  { ...browser, entryPoints: ['src/server/main-browser.ts'], outfile: 'dist/server-worker.js', format: 'iife' },
  { ...node, entryPoints: ['src/extension/desktop.ts'], outfile: 'dist/extension.cjs', external: ['vscode'] },
  { ...browser, entryPoints: ['src/extension/web.ts'], outfile: 'dist/extension-web.cjs', format: 'cjs', external: ['vscode'] },
  { ...browser, entryPoints: ['src/extension/webview/drawing.ts'], outfile: 'dist/drawing.js', format: 'iife' },
].filter(({ entryPoints }) => existsSync(entryPoints[0]));

rmSync('dist', { recursive: true, force: true });
if (process.argv.includes('--watch')) {
  for (const options of bundles) await (await esbuild.context(options)).watch();
} else {
  await Promise.all(bundles.map((options) => esbuild.build(options)));
}
cpSync('src/language/library', 'dist/library', { recursive: true, filter: (file) => !file.endsWith('.mjs') });
