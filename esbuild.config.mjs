// Bundles what ships into dist/: the command line, the language server (Node and browser worker) and the VS Code
// extension (desktop and web), with the shipped library, the starter plan and the JSON Schemas beside them. `--watch`
// rebuilds on change.
import { execFileSync } from 'node:child_process';
import { cpSync, existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { basename } from 'node:path';
import esbuild from 'esbuild';
import { schemas } from './src/documents/json/schemas.ts';
import { fontFiles } from './src/documents/typeset/font-files.ts';
import { noticesOf, packagesIn } from './src/package/notices.ts';

const shared = {
  bundle: true,
  minify: true,
  sourcemap: false,
  logLevel: 'warning',
  legalComments: 'none',
  charset: 'utf8',
  metafile: true,
};
const node = { ...shared, platform: 'node', target: 'node20', format: 'cjs' };
const browser = { ...shared, platform: 'browser', target: 'es2022' };

/**
 * The command line loads these bundles when it needs them, so that no other command pays for them.
 *
 * @param dist The way from the bundle to `dist/`.
 */
const bundlesBeside = (dist) => ({
  name: 'bundles-beside',
  setup(build) {
    const beside = (filter, path) =>
      build.onResolve({ filter }, ({ kind }) =>
        kind === 'entry-point' ? undefined : { path: `${dist}${path}`, external: true },
      );
    beside(/\/server\/main-node\.ts$/, 'server.cjs');
    beside(/\/documents\/papers\.ts$/, 'papers.cjs');
    beside(/\/place-scene\.ts$/, 'layout.cjs');
  },
});

/** Every command but `serve`, whose work is the server's, is read from `dist/commands/` when somebody gives it. */
const commands = readdirSync('src/cli')
  .filter((file) => /^export const define: Define/m.test(readFileSync(`src/cli/${file}`, 'utf8')))
  .map((file) => basename(file, '.ts'))
  .filter((name) => name !== 'serve');
const commandsBeside = {
  name: 'commands-beside',
  setup(build) {
    build.onResolve({ filter: new RegExp(`^\\./(${commands.join('|')})\\.ts$`) }, ({ path, kind }) =>
      kind === 'dynamic-import'
        ? { path: `./commands/${basename(path, '.ts')}.mjs`, external: true }
        : undefined,
    );
  },
};

const bundles = [
  {
    ...node,
    entryPoints: ['src/cli/main.ts'],
    outfile: 'dist/feedplot.cjs',
    banner: { js: '#!/usr/bin/env node' },
    plugins: [bundlesBeside('./'), commandsBeside],
  },
  {
    // What several commands need is in files that they share.
    ...node,
    entryPoints: commands.map((name) => `src/cli/${name}.ts`),
    outdir: 'dist/commands',
    format: 'esm',
    splitting: true,
    outExtension: { '.js': '.mjs' },
    plugins: [bundlesBeside('../')],
    banner: {
      js: "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);",
    },
  },
  { ...node, entryPoints: ['src/server/main-node.ts'], outfile: 'dist/server.cjs' },
  { ...node, entryPoints: ['src/documents/drawing/place-scene.ts'], outfile: 'dist/layout.cjs' },
  {
    ...node,
    entryPoints: ['src/documents/papers.ts'],
    outfile: 'dist/papers.cjs',
    plugins: [bundlesBeside('./')],
    // The PDF library asks where it lies, which a bundle of this form does not know by itself.
    define: { 'import.meta.url': 'ownAddress' },
    banner: { js: "const ownAddress = require('node:url').pathToFileURL(__filename).href;" },
  },
  {
    ...browser,
    entryPoints: ['src/server/main-browser.ts'],
    outfile: 'dist/server-worker.js',
    format: 'iife',
  },
  { ...node, entryPoints: ['src/extension/desktop.ts'], outfile: 'dist/extension.cjs', external: ['vscode'] },
  {
    ...browser,
    entryPoints: ['src/extension/web.ts'],
    outfile: 'dist/extension-web.js',
    format: 'cjs',
    external: ['vscode'],
  },
  {
    ...browser,
    entryPoints: ['src/extension/webview/drawing.ts'],
    outfile: 'dist/drawing.js',
    format: 'iife',
  },
  {
    ...browser,
    entryPoints: ['src/extension/webview/book.ts'],
    outfile: 'dist/book.js',
    format: 'iife',
  },
  {
    ...browser,
    entryPoints: ['src/extension/webview/review.ts'],
    outfile: 'dist/review.js',
    format: 'iife',
  },
  {
    ...browser,
    entryPoints: ['src/documents/test-pictures/moving/main.ts'],
    outfile: 'dist/moving-picture.js',
    format: 'iife',
  },
].filter(({ entryPoints }) => existsSync(entryPoints[0]));

/** Faces for labels and test pictures, from packages of open fonts; each with the licence that it travels under. */
const fontFamilies = ['noto-sans', 'noto-sans-arabic', 'noto-sans-hebrew', 'noto-sans-jp', 'unifontex'];

const written = new Set([
  'library',
  'starter',
  'fonts',
  'images',
  'walkthrough',
  'layout-worker.js',
  'THIRD-PARTY-NOTICES.txt',
  ...schemas.keys(),
  ...bundles.map(({ outfile, outdir }) => basename(outfile ?? outdir)),
]);

if (process.argv.includes('--watch')) {
  for (const options of bundles) {
    const context = await esbuild.context(options);
    await context.rebuild();
    await context.watch();
  }
} else {
  const built = await Promise.all(bundles.map((options) => esbuild.build(options)));
  const packages = packagesIn(built.map(({ metafile }) => metafile));
  for (const name of ['elkjs', ...fontFamilies.map((family) => `@fontsource/${family}`)])
    if (!packages.has(`node_modules/${name}`)) packages.set(`node_modules/${name}`, new Set());
  writeFileSync('dist/THIRD-PARTY-NOTICES.txt', noticesOf(packages));
  // The names of shared files follow from what is in them.
  const outputs = new Set(built.flatMap(({ metafile }) => Object.keys(metafile.outputs)));
  for (const name of readdirSync('dist/commands'))
    if (!outputs.has(`dist/commands/${name}`)) rmSync(`dist/commands/${name}`);
}
cpSync('src/language/library', 'dist/library', {
  recursive: true,
  filter: (file) => !/\.(mjs|ts)$/.test(file),
});
// The layout library runs in a thread of the drawing's view.
cpSync('node_modules/elkjs/lib/elk-worker.min.js', 'dist/layout-worker.js');
cpSync('examples/starter', 'dist/starter', { recursive: true });
for (const family of fontFamilies) {
  const folder = `node_modules/@fontsource/${family}`;
  cpSync(`${folder}/LICENSE`, `dist/fonts/LICENSE-${family}.txt`);
  for (const file of fontFiles.filter((name) => existsSync(`${folder}/files/${name}`)))
    cpSync(`${folder}/files/${file}`, `dist/fonts/${file}`);
}
cpSync('src/extension/images', 'dist/images', { recursive: true });
cpSync('src/extension/walkthrough', 'dist/walkthrough', { recursive: true });
// The picture of the first steps is a drawing as the program makes it.
const drawn = ['draw', 'examples/starter/starter.feedplot', '--place', 'desk'];
execFileSync(process.execPath, ['dist/feedplot.cjs', ...drawn, '--to', 'dist/walkthrough/drawing.svg']);
for (const [file, schema] of schemas)
  writeFileSync(`dist/${file}`, `${JSON.stringify(schema, undefined, 2)}\n`);
// What an earlier build left goes last: whoever runs the old one meanwhile is not disturbed.
for (const name of readdirSync('dist')) if (!written.has(name)) rmSync(`dist/${name}`, { recursive: true });
