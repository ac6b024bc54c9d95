/**
 * `node --expose-gc tests/incremental/soak.ts [edits]`: somebody who works all day. Tells every so often what memory is
 * in use after collecting, which must not grow with the number of edits.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { getHeapSpaceStatistics } from 'node:v8';
import { Typist, wildEdit } from './edits.ts';
import { Random } from './random.ts';
import { Workspace } from './workspace.ts';

const wanted = Number(process.argv[2] ?? 100_000);
const folder = 'examples/finals';
const REPORTS = 20;
/** A file that has grown so much is brought back to what it was, as a whole, like a revert does. */
const MOST_CHARACTERS = 12_000;

const names = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) =>
  name.endsWith('.feedplot'),
);
const texts = new Map(names.map((name) => [name, readFileSync(`${folder}/${name}`, 'utf8')]));
const workspace = new Workspace();
for (const [name, text] of texts) workspace.disk.files.set(workspace.uri(name).toString(), text);
await workspace.start();
for (const [name, text] of texts) await workspace.open(name, text);

const random = new Random(1);
const typist = new Typist();
const used: number[] = [];
for (let done = 1; done <= wanted; done++) {
  const name = random.pick(names);
  const text = workspace.openText(name)!.getText();
  const edit =
    text.length > MOST_CHARACTERS || random.below(200) === 0
      ? { start: 0, end: text.length, text: texts.get(name)! }
      : random.below(2) === 0
        ? typist.next(text, random)
        : wildEdit(text, random);
  const start = Math.min(edit.start, text.length);
  await workspace.type(name, [
    { start, end: Math.max(start, Math.min(edit.end, text.length)), text: edit.text },
  ]);
  if (done % Math.ceil(wanted / REPORTS) === 0) await report(done);
}
const half = used.slice(used.length / 2);
const growth_mib = Math.max(...half) - Math.max(...used.slice(0, used.length / 2));
console.log(`The second half needed at most ${growth_mib.toFixed(1)} MiB more than the first.`);
process.exit(0);

/** Measured with the files as they were at the beginning, so that what is left over is all that differs. */
async function report(done: number): Promise<void> {
  for (const [name, text] of texts)
    await workspace.type(name, [{ start: 0, end: workspace.openText(name)!.getText().length, text }]);
  globalThis.gc?.();
  const spaces = new Map(getHeapSpaceStatistics().map((one) => [one.space_name, one.space_used_size]));
  const all_mib = process.memoryUsage().heapUsed / 2 ** 20;
  // What the machine has compiled goes on growing a little with whatever it meets; it is none of ours.
  const code_mib = ((spaces.get('code_space') ?? 0) + (spaces.get('trusted_space') ?? 0)) / 2 ** 20;
  used.push(all_mib - code_mib);
  console.log(
    `${done} edits: ${(all_mib - code_mib).toFixed(1)} MiB in use, and ${code_mib.toFixed(1)} MiB of compiled code; ${(process.memoryUsage().rss / 2 ** 20).toFixed(0)} MiB resident`,
  );
}
