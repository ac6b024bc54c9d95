/**
 * `npm run fuzz [-- edits] [start]`: random edits until so many are made (default: until it is ended), each compared
 * with a fresh reading. What differs is kept in tests/incremental/failures, which the tests do again.
 */
import { createHash } from 'node:crypto';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Random } from './random.ts';
import { run } from './run.ts';
import { shrink } from './shrink.ts';

const wanted = Number(process.argv[2] ?? Number.POSITIVE_INFINITY);
const first = Number(process.argv[3] ?? Math.floor(Date.now() / 1000));
const PIECE = 2000;

let done = 0;
let failures = 0;
for (let start = first; done < wanted; start++) {
  const outcome = await run(new Random(start), Math.min(PIECE, wanted - done));
  done += outcome.edits;
  if (outcome.failure) {
    failures++;
    const script = await shrink(outcome.failure.script);
    const text = `${JSON.stringify(script, undefined, 1)}\n`;
    const name = `${createHash('sha256').update(text).digest('hex').slice(0, 12)}.json`;
    const folder = join(import.meta.dirname, 'failures');
    mkdirSync(folder, { recursive: true });
    writeFileSync(join(folder, name), text);
    console.log(`\nStart ${start}: ${outcome.failure.difference}\nkept as ${name}`);
    done++;
  }
  console.log(`${done} edits, ${failures} differences, start ${start}`);
}
process.exitCode = failures > 0 ? 1 : 0;
