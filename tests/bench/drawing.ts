/**
 * How the drawing behaves beside the typing: `node tests/bench/drawing.ts` after a build.
 *
 * The first table is that of a keystroke over stdio, from the change to its findings, with the drawing closed and open;
 * when it is open, the server is asked for it as the extension does, and asked again as soon as it has answered, which
 * is more than the extension does. The second is that of the steps between a plan and a picture.
 */
import { loadavg } from 'node:os';
import { resolve } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { drawParts } from '../../src/documents/drawing/draw-svg.ts';
import { makeScene } from '../../src/documents/drawing/make-scene.ts';
import { placeScene } from '../../src/documents/drawing/place-scene.ts';
import { type Drawing, serverRequests } from '../../src/server/protocol.ts';
import { analysisOfText } from '../drawing/scenes.ts';
import { figures, median, quantile, table } from './figures.ts';
import { keystrokes } from './keystrokes.ts';
import { benchText } from './plans.ts';
import { Session } from './session.ts';

const program = resolve(import.meta.dirname, '../../dist/feedplot.cjs');
const sizes = [1000, 5000];
const strokes = 60;
/** Between keystrokes, as somebody types. */
const PACE_MS = 100;

/** Types and deletes; asks for the drawing all the while when it is open. */
async function type(session: Session, isOpen: boolean): Promise<{ times: number[]; drawings: number }> {
  let going = isOpen;
  let drawings = 0;
  const asking = (async () => {
    let have: number | null = null;
    while (going) {
      const answer: Drawing | null = await session
        .ask<Drawing | null>(serverRequests.drawing, { uri: session.uri, place: null, have })
        .catch(() => null);
      if (answer?.scene) drawings++;
      have = answer?.version ?? null;
      await pause(20);
    }
  })();
  const times: number[] = [];
  for (let i = 0; i < strokes; i++) {
    const { at, text } = keystrokes[i % keystrokes.length]!.find(session.text);
    times.push(await session.type(at, at, text));
    await pause(PACE_MS);
    times.push(await session.type(at, at + text.length, ''));
    await pause(PACE_MS);
  }
  going = false;
  await asking;
  return { times, drawings };
}

async function typing(): Promise<string> {
  const rows: string[][] = [];
  for (const size of sizes) {
    const files = new Map([['show.feedplot', benchText(size)]]);
    const session = await Session.start(`${size}`, [program, 'serve', '--stdio'], files);
    await type(session, false);
    const closed = await type(session, false);
    const open = await type(session, true);
    await session.end();
    rows.push([
      String(size),
      ...[closed, open].flatMap(({ times }) =>
        [0.5, 0.95, 1].map((share) => figures(quantile(times, share))),
      ),
      String(open.drawings),
    ]);
  }
  return table(
    ['statements', 'closed, median ms', '95 %', 'worst', 'open, median ms', '95 %', 'worst', 'drawings sent'],
    rows,
  );
}

async function steps(): Promise<string> {
  const rows: string[][] = [];
  for (const size of [300, 1000, 2800]) {
    const analysis = analysisOfText(benchText(size));
    const scene = makeScene(analysis);
    const placement = await placeScene(scene);
    const times = { scene: [] as number[], layout: [] as number[], drawing: [] as number[] };
    for (let i = 0; i < 5; i++) {
      let began = performance.now();
      makeScene(analysis);
      times.scene.push(performance.now() - began);
      began = performance.now();
      if (i < 2) {
        await placeScene(scene);
        times.layout.push(performance.now() - began);
      }
      began = performance.now();
      drawParts(scene, placement);
      times.drawing.push(performance.now() - began);
    }
    const nodes = scene.boxes.filter(({ kind }) => kind === 'node').length;
    rows.push([
      String(size),
      String(nodes),
      String(scene.boxes.length),
      ...Object.values(times).map((list) => figures(median(list))),
      figures(JSON.stringify(scene).length / 1024),
    ]);
  }
  return table(
    [
      'statements',
      'nodes',
      'boxes in all',
      'scene ms',
      'layout ms (in a thread of its own)',
      'drawing ms',
      'scene KiB',
    ],
    rows,
  );
}

console.log(
  `Load of the machine: ${loadavg()
    .map((load) => load.toFixed(1))
    .join(', ')}\n`,
);
console.log(`${await typing()}\n`);
console.log(await steps());
