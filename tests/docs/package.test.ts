/** What is in the package of the extension: what it needs, and nothing else. */
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';

interface Manifest {
  readonly main: string;
  readonly browser: string;
  readonly icon: string;
  readonly contributes: {
    readonly languages: readonly { configuration: string; icon?: { light: string; dark: string } }[];
    readonly grammars: readonly { path: string }[];
    readonly walkthroughs: readonly { steps: readonly { media: { markdown: string } }[] }[];
  };
}

const { main, browser, icon, contributes } = JSON.parse(readFileSync('package.json', 'utf8')) as Manifest;
const packed = execFileSync('vsce', ['ls', '--no-dependencies'], { encoding: 'utf8' }).trim().split(/\r?\n/);
/** The picture of the README is there once it is taken. */
const inside = packed.filter((file) => file !== 'examples/editor.png');

/** Files that the manifest names. */
const named = [
  main,
  browser,
  icon,
  ...contributes.languages.flatMap((language) => [
    language.configuration,
    ...(language.icon ? [language.icon.light, language.icon.dark] : []),
  ]),
  ...contributes.grammars.map((grammar) => grammar.path),
  ...contributes.walkthroughs.flatMap(({ steps }) => steps.map(({ media }) => media.markdown)),
].map((file) => file.replace(/^\.\//, ''));

/** Files that the code opens: the server, its library, the drawing, the plan to start from. */
const opened = [
  'dist/feedplot.cjs',
  'dist/server.cjs',
  'dist/server-worker.js',
  'dist/drawing.js',
  'dist/book.js',
  'dist/review.js',
  'dist/layout-worker.js',
  'dist/library/cables.feedplot',
  'dist/library/ethernet.feedplot',
  'dist/library/interfaces.feedplot',
  'dist/starter/kit.feedplot',
  'dist/starter/starter.feedplot',
  'dist/walkthrough/drawing.svg',
];

const papers = ['CHANGELOG.md', 'LICENSE', 'README.md', 'dist/THIRD-PARTY-NOTICES.txt', 'package.json'];

it('has every file that the manifest names and the code opens, and no other', () => {
  expect(inside.sort()).toEqual([...new Set([...named, ...opened, ...papers])].sort());
});
