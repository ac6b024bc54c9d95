/**
 * `npm run fuzz [-- inputs] [start]`: random inputs until so many are made (default: until it is ended). An input is an
 * edit whose outcome is compared with a fresh reading, a hostile text through a command, or a request of the server about
 * one. What fails is made small and kept in the folders `failures`, which the tests do again.
 */
import { createHash } from 'node:crypto';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import fc from 'fast-check';
import { Random } from '../incremental/random.ts';
import { run } from '../incremental/run.ts';
import { shrink } from '../incremental/shrink.ts';
import { smallPlan } from '../support/small-plan.ts';
import { CommandLine } from './commands.ts';
import { commandInput, faultOfCommand, faultOfServer, serverInput } from './properties.ts';
import { AskedServer } from './server.ts';

const wanted = Number(process.argv[2] ?? Number.POSITIVE_INFINITY);
const first = Number(process.argv[3] ?? Math.floor(Date.now() / 1000));

/** What one piece, with one start, is made of. */
const EDITS = 1500;
const COMMANDS = 60;
const SERVER_TEXTS = 15;

/** Longer than this nothing takes; what does hangs. */
const LONGEST_S = 120;

/** What fails is tried in so many smaller forms. */
const MOST_SMALLER = 150;

const counts = { edits: 0, commands: 0, requests: 0 };
let failures = 0;
// Errors are made by the thousand; how they came about is told by doing it again.
Error.stackTraceLimit = 6;
// The server says why a file that cannot be read is not laid out, which here is nearly every one.
console.warn = () => undefined;

const beats = new Int32Array(new SharedArrayBuffer(4));
let current = '';
let watcher: Worker | undefined;
watchOver();

const before = `${smallPlan.join('\n')}\n`;
using line = new CommandLine(before);

for (let start = first; counts.edits + counts.commands + counts.requests < wanted; start++) {
  await fuzzEdits(start);
  await fuzzCommands(start);
  await fuzzServer(start);
  const total = counts.edits + counts.commands + counts.requests;
  console.log(
    `${total} inputs: ${counts.edits} edits, ${counts.commands} commands, ${counts.requests} requests; ${failures} failures; start ${start}`,
  );
}
process.exitCode = failures > 0 ? 1 : 0;
process.exit();

async function fuzzEdits(start: number): Promise<void> {
  beat(`edits from ${start}`);
  const outcome = await run(new Random(start), EDITS, 92, () => beat(`edits from ${start}`));
  counts.edits += outcome.edits;
  if (!outcome.failure) return;
  const script = await shrink(outcome.failure.script);
  keep('../incremental/failures', script, start, outcome.failure.difference);
}

async function fuzzCommands(start: number): Promise<void> {
  const failed = await smallestFailure(commandInput, COMMANDS, start, (input) => {
    beat(`commands from ${start}`);
    return faultOfCommand(line, input);
  });
  counts.commands += failed?.before ?? COMMANDS;
  if (failed)
    keep('failures', { command: failed.input.entry.args, text: failed.input.text }, start, failed.fault);
}

async function fuzzServer(start: number): Promise<void> {
  using server = await AskedServer.start(before);
  let asked: number | undefined;
  const failed = await smallestFailure(serverInput, SERVER_TEXTS, start, async (input) => {
    beat(`requests from ${start}`);
    const fault = await faultOfServer(server, input);
    if (fault) asked ??= server.asked;
    return fault;
  });
  counts.requests += asked ?? server.asked;
  if (failed) keep('failures', failed.input, start, failed.fault);
}

/** Tries so many inputs; one that fails is tried in smaller forms for a while, which do not count. */
async function smallestFailure<T>(
  inputs: fc.Arbitrary<T>,
  most: number,
  start: number,
  faultOf: (input: T) => Promise<string | undefined>,
): Promise<{ input: T; fault: string; before: number } | undefined> {
  let tried = 0;
  let failed: { input: T; fault: string; before: number } | undefined;
  let patience = MOST_SMALLER;
  const property = fc.asyncProperty(inputs, async (input) => {
    if (failed && patience-- <= 0) return true;
    if (!failed) tried++;
    const fault = await faultOf(input);
    if (fault !== undefined) failed = { input, fault, before: tried };
    return fault === undefined;
  });
  await fc.check(property, { seed: start, numRuns: most });
  return failed;
}

function keep(folder: string, input: object, start: number, told: string): void {
  failures++;
  const text = `${JSON.stringify(input, undefined, 1)}\n`;
  const name = `${createHash('sha256').update(text).digest('hex').slice(0, 12)}.json`;
  mkdirSync(join(import.meta.dirname, folder), { recursive: true });
  writeFileSync(join(import.meta.dirname, folder, name), text);
  console.log(`\nStart ${start}: ${told}\nkept as ${name}`);
}

/** Says that something was done. What is being done is told when nothing follows. */
function beat(doing: string): void {
  Atomics.add(beats, 0, 1);
  if (doing !== current) {
    current = doing;
    watcher?.postMessage(doing);
  }
}

/** A thread of its own sees when this one goes round in circles, and ends the process. */
function watchOver(): void {
  const source = `
    const { parentPort, workerData } = require('node:worker_threads');
    let doing = '', seen = -1;
    parentPort.on('message', (message) => { doing = message; });
    setInterval(() => {
      const now = Atomics.load(workerData, 0);
      if (now === seen) {
        require('node:fs').writeSync(1, 'HANGS: ' + doing + ', input ' + now + '\\n');
        process.kill(process.pid, 'SIGKILL');
      }
      seen = now;
    }, ${LONGEST_S * 1000});
  `;
  watcher = new Worker(source, { eval: true, workerData: beats });
  watcher.unref();
}
