/** Every command of the command line, called in this process on one plan, with all that it prints and writes looked at. */

import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js';
import { CommanderError } from 'commander';
import { createProgram } from '../../src/cli/program.ts';
import type { Terminal } from '../../src/cli/terminal.ts';
import { Trouble } from '../../src/cli/trouble.ts';
import { bookSections } from '../../src/documents/book/book.ts';
import { schemas } from '../../src/documents/json/schemas.ts';
import { plainPaint } from '../../src/documents/paint.ts';
import { printable } from '../../src/documents/printable.ts';
import { tables } from '../../src/documents/tables/tables.ts';
import { hostileNames } from './texts.ts';
import { misspoken, readable } from './words.ts';

/** Where the fonts, the library and the plan to start from lie: what `npm run build` wrote. */
const built = resolve(import.meta.dirname, '../../dist');

/** One way into the command line. */
export interface Entry {
  readonly args: readonly string[];
  /** How often it is drawn: what takes long less often. */
  readonly weight: number;
  /** The JSON Schema that ships for what it prints. */
  readonly schema?: string;
}

const plain = (weight: number, ...args: string[]): Entry => ({ args, weight });

/** `show.feedplot` is the hostile plan, `before.feedplot` the one that it is compared with. */
export const entries: readonly Entry[] = [
  ...['text', 'sarif', 'github', 'markdown'].map((form) =>
    plain(12, 'check', 'show.feedplot', '--output', form),
  ),
  { args: ['check', 'show.feedplot', '--output', 'json'], weight: 12, schema: 'feedplot-check.schema.json' },
  plain(6, 'check', 'show.feedplot', 'before.feedplot', '--strict'),
  plain(12, 'show', 'show.feedplot', ...tables.keys()),
  { args: ['show', 'show.feedplot', '--json'], weight: 12, schema: 'feedplot-analysis.schema.json' },
  plain(6, 'show', 'show.feedplot', '--beside', 'before.feedplot'),
  ...['trunk', 'cam_1', 'screen', 'box_s', 'program -> screen', ...hostileNames.slice(0, 6)].map((name) =>
    plain(2, 'show', 'show.feedplot', '--why', name),
  ),
  plain(10, 'format', 'copy.feedplot'),
  plain(4, 'format', '--verify', 'show.feedplot'),
  ...['cat6a', 'own', 'cage', '1080p50 4:2:2 10 bit'].map((thing) => plain(1, 'explain', thing)),
  { args: ['explain', '--json', 'own'], weight: 1, schema: 'feedplot-explain.schema.json' },
  plain(3, 'draw', 'show.feedplot', '--to', 'out/drawing.svg'),
  plain(1, 'draw', 'show.feedplot', '--place', 'desk', '--segment', 'last', '--theme', 'dark'),
  plain(1, 'draw', 'show.feedplot', '--feed', 'cam_1'),
  plain(1, 'book', 'show.feedplot', '--to', 'out'),
  ...bookSections
    .filter((section) => section !== 'drawing')
    .map((section) => plain(2, 'book', 'show.feedplot', '--to', 'out', '--only', section)),
  plain(1, 'book', 'show.feedplot', '--to', 'out', '--only', 'labels', '--label-codes'),
  plain(1, 'book', 'show.feedplot', '--to', 'out', '--only', 'pictures'),
  ...['text', 'markdown', 'html'].map((form) =>
    plain(4, 'review', 'before.feedplot', 'show.feedplot', '--output', form),
  ),
  plain(4, 'review', 'show.feedplot', 'before.feedplot'),
  {
    args: ['review', 'before.feedplot', 'show.feedplot', '--output', 'json'],
    weight: 4,
    schema: 'feedplot-review.schema.json',
  },
];

const ajv = new Ajv2020({ allErrors: false, strict: true });
const validators = new Map<string, ValidateFunction>();

function schemaFault(name: string, printed: string): string | undefined {
  let validate = validators.get(name);
  if (!validate) {
    validate = ajv.compile(schemas.get(name)!);
    validators.set(name, validate);
  }
  if (validate(JSON.parse(printed))) return undefined;
  const [first] = validate.errors ?? [];
  return `not as ${name} says: ${first?.instancePath} ${first?.message}`;
}

/** A folder to work in, with a plan to compare with. */
export class CommandLine implements Disposable {
  readonly folder = realpathSync(mkdtempSync(join(tmpdir(), 'feedplot-hostile-')));

  constructor(before: string) {
    writeFileSync(join(this.folder, 'before.feedplot'), before);
  }

  [Symbol.dispose](): void {
    rmSync(this.folder, { recursive: true, force: true });
  }

  /** Runs one command on one text. @returns what is wrong with what it did, in words; undefined for nothing. */
  async faultOf(entry: Entry, text: string): Promise<string | undefined> {
    const called = `feedplot ${entry.args.join(' ')}`;
    try {
      const fault = await this.#run(entry, text);
      return fault && `${called}: ${fault}`;
    } catch (error) {
      return `${called}: ${error instanceof Error ? error.stack : String(error)}`;
    } finally {
      process.exitCode = undefined;
    }
  }

  async #run({ args, schema }: Entry, text: string): Promise<string | undefined> {
    for (const name of ['show.feedplot', 'copy.feedplot']) writeFileSync(join(this.folder, name), text);
    const out = join(this.folder, 'out');
    rmSync(out, { recursive: true, force: true });
    mkdirSync(out);
    const printed: string[] = [];
    const noted: string[] = [];
    const terminal: Terminal = {
      folder: this.folder,
      width: 100,
      paint: plainPaint,
      out: (line) => void printed.push(line),
      note: (line) => void noted.push(printable(line)),
      progress: () => undefined,
    };
    try {
      const program = await createProgram({ terminal, program: built, version: '0' }, args);
      await program.parseAsync(['node', 'feedplot', ...args]);
    } catch (error) {
      // What cannot be done is said in words; anything else is a fault.
      if (!(error instanceof Trouble || error instanceof CommanderError)) throw error;
      return misspoken(printable(error.message), 'terminal');
    }
    const whole = printed.join('\n');
    const isData = /^[{<]/.test(whole);
    const fault =
      misspoken(readable(whole), isData ? 'file' : 'terminal') ?? misspoken(noted.join('\n'), 'terminal');
    return fault ?? (schema && schemaFault(schema, whole)) ?? this.#faultInWritten(out);
  }

  /** What was written is written where it was wanted, and says nothing that it should not. */
  #faultInWritten(out: string): string | undefined {
    const outside = readdirSync(this.folder).filter(
      (name) => !['show.feedplot', 'copy.feedplot', 'before.feedplot', 'out'].includes(name),
    );
    if (outside.length > 0) return `wrote ${outside.join()} outside of its folder`;
    for (const name of readdirSync(out, { recursive: true, encoding: 'utf8' })) {
      if (!/\.(svg|html|csv|md)$/.test(name)) continue;
      const fault = misspoken(readable(readFileSync(join(out, name), 'utf8')), 'file');
      if (fault) return `in ${name}: ${fault}`;
    }
    return undefined;
  }
}
