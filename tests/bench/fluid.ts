/**
 * How fluid the drawing's view is in Chromium: `node tests/bench/fluid.ts`. Times between two pictures of the screen
 * while a large drawing is moved, scaled, followed and searched; 16.7 ms is a screen's own pace.
 */
import { loadavg } from 'node:os';
import { makeScene } from '../../src/documents/drawing/make-scene.ts';
import { analysisOfText } from '../drawing/scenes.ts';
import { type View, ViewBrowser } from '../drawing/view.ts';
import { findChromium } from '../editor/installation.ts';
import { figures, quantile, table } from './figures.ts';
import { benchText } from './plans.ts';

const size = 2800;
const steps = 60;

/** Does something at every picture of the screen. @returns the milliseconds between them */
async function whileDoing(view: View, act: (step: number) => Promise<unknown>): Promise<number[]> {
  await view.page.evaluate(() => {
    const frames: number[] = [];
    Object.assign(window, { frames, going: true });
    let last = performance.now();
    const look = () => {
      const now = performance.now();
      frames.push(now - last);
      last = now;
      if ((window as unknown as { going: boolean }).going) requestAnimationFrame(look);
    };
    requestAnimationFrame(look);
  });
  for (let step = 0; step < steps; step++) await act(step);
  return view.page.evaluate(() => {
    const state = window as unknown as { frames: number[]; going: boolean };
    state.going = false;
    return state.frames.slice(1);
  });
}

const chromium = findChromium();
if (!chromium) throw new Error('No Chromium to measure in.');
const scene = makeScene(analysisOfText(benchText(size)));
const nodes = scene.boxes.filter(({ kind }) => kind === 'node').length;
const feeds = scene.situations[0]!.traces.map(({ feed }) => feed);
const browser = await ViewBrowser.start(chromium);
try {
  const view = await browser.open({ width: 1000, height: 800 });
  const { page } = view;
  await view.draw(scene);
  await page.mouse.move(500, 400);
  await page.waitForTimeout(2000);
  const wheel = (dx: number, dy: number) => page.mouse.wheel(dx, dy);
  const zoom = async (step: number) => {
    await page.keyboard.down('Control');
    await wheel(0, step < steps / 2 ? 40 : -40);
    await page.keyboard.up('Control');
  };
  const doings: [string, () => Promise<number[]>][] = [
    ['nothing', () => whileDoing(view, () => page.waitForTimeout(16))],
    ['moving, where words can be read', () => whileDoing(view, () => wheel(40, 15))],
    ['scaling', () => whileDoing(view, zoom)],
    [
      'moving, all in sight',
      async () => {
        await page.locator('#whole').click();
        return whileDoing(view, (step) => wheel(step % 2 ? 10 : -10, 5));
      },
    ],
    [
      'following one feed after the other',
      () => whileDoing(view, (step) => page.locator('#feed').selectOption(feeds[step % feeds.length]!)),
    ],
    ['searching', () => whileDoing(view, (step) => page.locator('#search').fill(`camera${step % 10}`))],
  ];
  const rows: string[][] = [];
  for (const [what, measure] of doings) {
    const times = await measure();
    rows.push([
      what,
      String(times.length),
      ...[0.5, 0.95, 1].map((share) => figures(quantile(times, share))),
    ]);
  }
  const load = loadavg()
    .map((one) => one.toFixed(1))
    .join(', ');
  console.log(`${nodes} nodes, ${scene.boxes.length} boxes in all; load of the machine: ${load}\n`);
  console.log(table(['while', 'pictures', 'median ms', '95 %', 'worst'], rows));
} finally {
  await browser.close();
}
