/**
 * What it costs to work with plans of several sizes: `npm run bench [-- rounds]`. Sizes and kinds of keystrokes are
 * measured in turn within one run, so that whatever else the machine does meets all of them.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { availableParallelism, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { figures, median, quantile, table } from './figures.ts';
import { measureParts } from './in-process.ts';
import { keystrokes } from './keystrokes.ts';
import { benchFiles, benchText, withFindings } from './plans.ts';
import { Session } from './session.ts';
import { stockReading_ms } from './stock.ts';

const rounds = Number(process.argv[2] ?? 30);
const program = join(import.meta.dirname, '../../dist/feedplot.cjs');
const server = [program, 'serve', '--stdio'];
const nothing = [join(import.meta.dirname, 'nothing-server.ts')];
const sizes = [300, 1000, 5000, 20_000];
const paces_ms = [15, 100];

const only = (text: string) => new Map([['show.feedplot', text]]);

console.log(
  `Node ${process.version}, ${availableParallelism()} cores, load ${load()} at the start, ${rounds} rounds\n`,
);

// ---- The server over stdio
const sessions = [
  await Session.start('nothing is done', nothing, only(benchText(1000))),
  ...(await inTurn(sizes, (size) => Session.start(`${size}`, server, only(benchText(size))))),
  await Session.start('5000 in 20 files', server, benchFiles(5000, 20), 'part10.feedplot'),
  await Session.start('5000, 500 findings', server, only(withFindings(benchText(5000), 500))),
];
const took = new Map<string, number[]>();
for (const pace_ms of paces_ms) {
  for (let round = -5; round < rounds; round++) {
    for (const { kind, find } of keystrokes) {
      for (const session of sessions) {
        const { at, text } = find(session.text);
        for (const [end, by] of [
          [at, text],
          [at + text.length, ''],
        ] as const) {
          await pause(pace_ms);
          const time_ms = await session.type(at, end, by);
          if (round >= 0) add(`${session.name} ${kind} ${pace_ms}`, time_ms);
        }
      }
    }
  }
}
console.log('Keystroke to published findings, ms: median (95th percentile)\n');
console.log(
  table(
    [
      'statements',
      ...paces_ms.flatMap((pace) => keystrokes.map(({ kind }) => `${kind}, ${pace} ms apart`)),
      'findings',
    ],
    sessions.map((session) => [
      session.name,
      ...paces_ms.flatMap((pace) => keystrokes.map(({ kind }) => spread(`${session.name} ${kind} ${pace}`))),
      `${session.findings}`,
    ]),
  ),
);

const asked = sessions.filter(({ name }) => name !== 'nothing is done');
const questions = ['hover', 'completion', 'inlayHint'];
for (let round = -5; round < rounds; round++) {
  for (const question of questions) {
    for (const session of asked) {
      const { at, text } = keystrokes[1]!.find(session.text);
      for (const [end, by] of [
        [at, text],
        [at + text.length, ''],
      ] as const) {
        await pause(15);
        const { line } = session.position(at);
        const place =
          question === 'inlayHint'
            ? { range: { start: { line: line - 20, character: 0 }, end: { line: line + 40, character: 0 } } }
            : { position: session.position(at - 2) };
        const time_ms = await session.typeAndAsk(at, end, by, `textDocument/${question}`, place);
        if (round >= 0) add(`${session.name} ${question}`, time_ms);
      }
    }
  }
}
console.log(
  '\nAnswer to a question that comes with a keystroke, ms: median (95th percentile); start and memory\n',
);
console.log(
  table(
    ['statements', ...questions, 'cold start to findings, ms', 'peak memory, MiB'],
    asked.map((session) => [
      session.name,
      ...questions.map((question) => spread(`${session.name} ${question}`)),
      figures(session.cold_ms),
      figures(session.peakMemory_mib() ?? Number.NaN),
    ]),
  ),
);
for (const session of sessions) await session.end();

// ---- The command line
const folder = mkdtempSync(join(tmpdir(), 'feedplot-bench-'));
const checks = sizes.map((size) => {
  const file = join(folder, `${size}.feedplot`);
  writeFileSync(file, benchText(size));
  const times: { wall_ms: number; cpu_ms: number }[] = [];
  for (let i = 0; i < 5; i++) times.push(runCheck(file));
  return [
    `${size}`,
    figures(median(times.map(({ wall_ms }) => wall_ms))),
    figures(median(times.map(({ cpu_ms }) => cpu_ms))),
  ];
});
rmSync(folder, { recursive: true });
console.log('\n`feedplot check`, a process of its own, ms\n');
console.log(table(['statements', 'time', 'processor time'], checks));

// ---- In this process
const rows: string[][] = [];
for (const size of sizes) {
  const parts = measureParts(size, size > 5000 ? 5 : 11);
  rows.push([
    `${size}`,
    ...Object.values(parts).map(figures),
    figures(await stockReading_ms(benchText(size))),
  ]);
}
console.log('\nIn one process, ms\n');
console.log(
  table(
    [
      'statements',
      'parse',
      'facts',
      'analyse',
      'checks',
      'a keystroke: parse and facts',
      'stock Langium: parse, index, link',
    ],
    rows,
  ),
);
console.log(`\nLoad ${load()} at the end`);

function add(key: string, time_ms: number): void {
  const times = took.get(key) ?? [];
  times.push(time_ms);
  took.set(key, times);
}

function spread(key: string): string {
  const times = took.get(key) ?? [];
  return `${figures(median(times))} (${figures(quantile(times, 0.95))})`;
}

function load(): string {
  return loadavg()
    .map((value) => value.toFixed(1))
    .join(' ');
}

async function inTurn<A, B>(items: readonly A[], work: (item: A) => Promise<B>): Promise<B[]> {
  const results: B[] = [];
  for (const item of items) results.push(await work(item));
  return results;
}

/** Processor time as the process itself counted it. */
function runCheck(file: string): { wall_ms: number; cpu_ms: number } {
  const tell = `process.on('exit', () => { const { user, system } = process.cpuUsage(); process.stderr.write('cpu ' + (user + system)); });`;
  const began = performance.now();
  const { stderr } = spawnSync(
    process.execPath,
    ['--import', `data:text/javascript,${encodeURIComponent(tell)}`, program, 'check', file],
    { encoding: 'utf8' },
  );
  return { wall_ms: performance.now() - began, cpu_ms: Number(/cpu (\d+)/.exec(stderr)?.[1]) / 1000 };
}
