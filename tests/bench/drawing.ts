/**
 * How the drawing behaves beside the typing: `node tests/bench/drawing.ts` after a build.
 *
 * The first table is that of a keystroke over stdio, from the change to its findings, with the drawing closed and open;
 * when it is open, the server is asked for it as the extension does, and asked again as soon as it has answered, which
 * is more than the extension does. The second is that of the steps between a plan and a picture.
 */
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import {
  createProtocolConnection,
  type ProtocolConnection,
  type PublishDiagnosticsParams,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver-protocol/node';
import { drawParts } from '../../src/documents/drawing/draw-svg.ts';
import { makeScene } from '../../src/documents/drawing/make-scene.ts';
import { placeScene } from '../../src/documents/drawing/place-scene.ts';
import { type Drawing, serverRequests } from '../../src/server/protocol.ts';
import { analysisOfText } from '../drawing/scenes.ts';
import { figures, median, quantile, table } from './figures.ts';
import { keystrokes } from './keystrokes.ts';
import { benchText } from './plans.ts';

const program = resolve(import.meta.dirname, '../../dist/feedplot.cjs');
const sizes = [1000, 5000];
const strokes = 60;
/** Between keystrokes, as somebody types. */
const PACE_MS = 100;

class Typist {
  readonly #child: ChildProcess;
  readonly #connection: ProtocolConnection;
  readonly #folder = mkdtempSync(join(tmpdir(), 'feedplot-bench-'));
  readonly #uri: string;
  #text: string;
  #version = 1;
  #published: (() => void) | undefined;
  drawings = 0;

  constructor(text: string) {
    this.#text = text;
    const file = join(this.#folder, 'show.feedplot');
    writeFileSync(file, text);
    this.#uri = pathToFileURL(file).toString();
    this.#child = spawn(process.execPath, [program, 'serve', '--stdio'], {
      stdio: ['pipe', 'pipe', 'inherit'],
    });
    this.#connection = createProtocolConnection(
      new StreamMessageReader(this.#child.stdout!),
      new StreamMessageWriter(this.#child.stdin!),
    );
  }

  async start(): Promise<void> {
    const connection = this.#connection;
    connection.onNotification('textDocument/publishDiagnostics', (params: PublishDiagnosticsParams) => {
      if (params.uri === this.#uri && params.version === this.#version) this.#published?.();
    });
    for (const method of [
      'client/registerCapability',
      'workspace/configuration',
      'workspace/inlayHint/refresh',
      'workspace/codeLens/refresh',
    ])
      connection.onRequest(method, () => null);
    connection.listen();
    const folder = { uri: pathToFileURL(this.#folder).toString(), name: 'bench' };
    await connection.sendRequest('initialize', {
      processId: process.pid,
      rootUri: folder.uri,
      workspaceFolders: [folder],
      capabilities: { textDocument: { publishDiagnostics: { versionSupport: true } } },
    });
    await connection.sendNotification('initialized', {});
    const first = this.#findings();
    await connection.sendNotification('textDocument/didOpen', {
      textDocument: { uri: this.#uri, languageId: 'feedplot', version: 1, text: this.#text },
    });
    await first;
  }

  /** Types and deletes; asks for the drawing all the while when it is open. @returns milliseconds for each keystroke. */
  async type(drawing: boolean): Promise<number[]> {
    let going = drawing;
    const asking = (async () => {
      let have: number | null = null;
      while (going) {
        const answer: Drawing | null = await this.#connection
          .sendRequest<Drawing | null>(serverRequests.drawing, { uri: this.#uri, place: null, have })
          .catch(() => null);
        if (answer?.scene) this.drawings++;
        have = answer?.version ?? null;
        await pause(20);
      }
    })();
    const times: number[] = [];
    for (let i = 0; i < strokes; i++) {
      const { at, text } = keystrokes[i % keystrokes.length]!.find(this.#text);
      times.push(await this.#change(at, at, text));
      await pause(PACE_MS);
      times.push(await this.#change(at, at + text.length, ''));
      await pause(PACE_MS);
    }
    going = false;
    await asking;
    return times;
  }

  async #change(start: number, end: number, text: string): Promise<number> {
    const position = (offset: number) => {
      const before = this.#text.slice(0, offset);
      return { line: before.split('\n').length - 1, character: offset - (before.lastIndexOf('\n') + 1) };
    };
    const range = { start: position(start), end: position(end) };
    this.#text = this.#text.slice(0, start) + text + this.#text.slice(end);
    this.#version++;
    const published = this.#findings();
    const began = performance.now();
    await this.#connection.sendNotification('textDocument/didChange', {
      textDocument: { uri: this.#uri, version: this.#version },
      contentChanges: [{ range, text }],
    });
    await published;
    return performance.now() - began;
  }

  #findings(): Promise<void> {
    return new Promise((done) => {
      this.#published = done;
    });
  }

  async end(): Promise<void> {
    const ended = new Promise((done) => this.#child.once('exit', done));
    await this.#connection.sendRequest('shutdown');
    await this.#connection.sendNotification('exit');
    await ended;
    this.#connection.dispose();
    rmSync(this.#folder, { recursive: true });
  }
}

function pause(time_ms: number): Promise<void> {
  return new Promise((done) => setTimeout(done, time_ms));
}

async function typing(): Promise<string> {
  const rows: string[][] = [];
  for (const size of sizes) {
    const typist = new Typist(benchText(size));
    await typist.start();
    await typist.type(false);
    const closed = await typist.type(false);
    const open = await typist.type(true);
    await typist.end();
    rows.push([
      String(size),
      ...[closed, open].flatMap((times) => [0.5, 0.95, 1].map((share) => figures(quantile(times, share)))),
      String(typist.drawings),
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
