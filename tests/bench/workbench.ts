/**
 * Typing in the real workbench with the drawing open: `node tests/bench/workbench.ts [statements …]` after a build.
 *
 * A probe in the extension host writes down how long each change waits for its finding; in the page it is written down
 * when a squiggle comes after its key, and how long the screen stood still. Findings come from the packaged extension.
 */
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import path from 'node:path';
import { CodeServer } from '../editor/code-server.ts';
import { findInstallation } from '../editor/installation.ts';
import { openWorkbench } from '../editor/open-workbench.ts';
import { packageExtension } from '../editor/package-extension.ts';
import { see } from '../editor/see.ts';
import type { Workbench } from '../editor/workbench.ts';
import { figures, quantile, table } from './figures.ts';
import { benchText } from './plans.ts';
import { type Edit, packageProbe, type Recording } from './probe.ts';

const root = path.resolve(import.meta.dirname, '../..');
const sizes = process.argv.length > 2 ? process.argv.slice(2).map(Number) : [1000, 5000];
const rounds = 15;
/** Between keystrokes, as somebody types. */
const PACE_MS = 100;

interface Measured {
  readonly recording: Recording;
  /** From a key to the squiggle that it makes or takes away, on the screen. */
  readonly squiggles: readonly number[];
  /** Between two pictures of the screen while somebody types. */
  readonly frames: readonly number[];
}

async function measure(size: number): Promise<Measured> {
  const { installation, missing } = findInstallation();
  if (!installation) throw new Error(`No editor to measure in: ${missing.join('; ')}`);
  const folder = mkdtempSync(path.join(tmpdir(), 'feedplot-bench-'));
  const target = path.join(folder, 'recording.json');
  const text = benchText(size);
  const show = path.join(folder, 'show');
  mkdirSync(show);
  writeFileSync(path.join(show, 'show.feedplot'), text);
  const edits = editsIn(text);
  const probe = await packageProbe(folder, edits, target, root);
  let workbench: Workbench | undefined;
  try {
    workbench = await openWorkbench(
      installation,
      { vsix: await packageExtension(folder), folder: show },
      async ({ vsix, folder: opened, home, onClose }) => {
        const server = new CodeServer(installation.codeServer, path.join(home, 'server'));
        onClose(() => server.stop());
        await server.install(vsix);
        await server.install(probe);
        const address = `${await server.start()}/?folder=${encodeURIComponent(opened)}`;
        return { address, externalConnections: () => server.externalConnections() };
      },
    );
    await openPlanAndDrawing(workbench);
    await workbench.page.evaluate(watchScreen);
    for (const edit of edits) await type(workbench, text, edit);
    const seen = await workbench.page.evaluate(
      () => (window as unknown as { seen: { squiggles: number[]; frames: number[] } }).seen,
    );
    await pause(1500); // until the probe has written
    return { recording: JSON.parse(readFileSync(target, 'utf8')) as Recording, ...seen };
  } finally {
    await workbench?.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

/** A name that there is none of, and a cable that grows too long: the one changes what is linked, the other figures. */
function editsIn(text: string): Edit[] {
  const lines = text.split('\n');
  const lineOf = (start: string) => lines.findIndex((line) => line.startsWith(start));
  const camera = lineOf('source camera0_1 ');
  const length = / over rg6 (\d+) m/.exec(lines[camera]!)![1]!;
  return [
    {
      name: 'a name',
      line: lineOf('feed camera0_2 '),
      written: 'feed (camera0_2\\w*)',
      told: '(camera0_2x\\w*)',
      calm: 'camera0_2',
    },
    {
      name: 'a length',
      line: camera,
      written: ' over rg6 (\\d+) m',
      told: ' is (\\d+) m of',
      calm: length,
    },
  ];
}

async function openPlanAndDrawing(workbench: Workbench): Promise<void> {
  const { page } = workbench;
  await workbench.openFile('show.feedplot');
  await workbench.runCommand('View: Toggle Primary Side Bar Visibility');
  await workbench.runCommand('Feedplot: Show the drawing beside the text');
  const drawing = workbench.webview().locator('g[data-id]').first();
  await see(page, 'the drawing', () => drawing.isVisible(), { limit_ms: 120_000 });
}

async function type(workbench: Workbench, text: string, { line, written, name }: Edit): Promise<void> {
  const found = new RegExp(written, 'd').exec(text.split('\n')[line]!)!;
  await workbench.goTo(line + 1, found.indices![1]![1] + 1);
  await pause(2000);
  const keys = name === 'a name' ? ['x', 'y', 'z'] : ['9', '0'];
  for (let round = 0; round < rounds; round++) {
    for (const key of [...keys, ...keys.map(() => 'Backspace')]) {
      await workbench.page.keyboard.press(key);
      await pause(PACE_MS);
    }
  }
  await pause(1000);
}

/** Runs in the page: writes down pictures of the screen, and when a squiggle follows a key. */
function watchScreen(): void {
  const seen = { squiggles: [] as number[], frames: [] as number[] };
  Object.assign(window, { seen });
  let pressed: number | undefined;
  let count = document.querySelectorAll('.squiggly-error').length;
  let typed = 0;
  window.addEventListener(
    'keydown',
    () => {
      typed = performance.now();
      pressed ??= typed;
    },
    true,
  );
  let last = performance.now();
  const look = () => {
    const now = performance.now();
    if (now - typed < 300) seen.frames.push(now - last);
    else pressed = undefined;
    last = now;
    const present = document.querySelectorAll('.squiggly-error').length;
    if (present !== count && pressed !== undefined) seen.squiggles.push(now - pressed);
    if (present !== count) pressed = undefined;
    count = present;
    requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
}

function pause(time_ms: number): Promise<void> {
  return new Promise((done) => setTimeout(done, time_ms));
}

const load = () =>
  loadavg()
    .map((one) => one.toFixed(1))
    .join(', ');

console.log(`Load of the machine before: ${load()}`);
const rows: string[][] = [];
for (const size of sizes) {
  const { recording, squiggles, frames } = await measure(size);
  const kinds: [string, readonly number[]][] = [
    ...Object.entries(recording.waits).map(([name, waits]): [string, readonly number[]] => [
      `host: from ${name} to its finding`,
      waits,
    ]),
    ['host: how late a timer was', recording.late],
    ['screen: from a key to its squiggle', squiggles],
    ['screen: between two pictures', frames],
  ];
  for (const [what, times] of kinds)
    rows.push([
      String(size),
      what,
      String(times.length),
      ...[0.5, 0.95, 1].map((share) => figures(quantile(times, share))),
    ]);
  rows.push([String(size), 'host: changes overtaken by the next', String(recording.overtaken), '', '', '']);
}
console.log(`Load of the machine after: ${load()}\n`);
console.log(table(['statements', 'what', 'times', 'median ms', '95 %', 'worst'], rows));
