/**
 * Hostile texts through every entry: each command in every form, and each request of the server. `npm run fuzz` goes on
 * where this ends.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { smallPlan } from '../support/small-plan.ts';
import { CommandLine, entries } from './commands.ts';
import {
  commandInput,
  faultOfCommand,
  faultOfKept,
  faultOfServer,
  type HostileInput,
  serverInput,
} from './properties.ts';
import { AskedServer, questions } from './server.ts';
import { examples, hostileNames } from './texts.ts';
import { misspoken } from './words.ts';

const before = `${smallPlan.join('\n')}\n`;
const failures = join(import.meta.dirname, 'failures');
const kept = existsSync(failures) ? readdirSync(failures) : [];

let line: CommandLine;
let server: AskedServer;

beforeAll(async () => {
  // The server says why a file that cannot be read is not laid out, which here is nearly every one.
  vi.spyOn(console, 'warn').mockImplementation(() => undefined);
  line = new CommandLine(before);
  server = await AskedServer.start(before);
});

afterAll(() => {
  line[Symbol.dispose]();
  server[Symbol.dispose]();
});

describe('the commands', () => {
  it.each(entries.map((entry) => [entry.args.join(' '), entry] as const))(
    'take a plan that is well: feedplot %s',
    async (_name, entry) => {
      expect(await line.faultOf(entry, before)).toBeUndefined();
    },
    60_000,
  );

  it('take whatever is written', async () => {
    await fc.assert(
      fc.asyncProperty(commandInput, async (input) => {
        expect(await faultOfCommand(line, input)).toBeUndefined();
      }),
      { seed: 9, numRuns: 200 },
    );
  }, 300_000);
});

describe('the server', () => {
  it('answers whatever is written', async () => {
    await fc.assert(
      fc.asyncProperty(serverInput, async (input) => {
        expect(await faultOfServer(server, input)).toBeUndefined();
      }),
      { seed: 9, numRuns: 25 },
    );
    expect(server.asked).toBeGreaterThan(1000);
  }, 300_000);

  it('is asked everything that it says it can be asked', () => {
    const { capabilities } = server.initialized;
    const words = questions.map(({ method }) => method.replace(/^.*?\//, '').toLowerCase());
    const providers = Object.entries(capabilities).flatMap(([name, has]) =>
      has && name.endsWith('Provider') ? [name] : [],
    );
    expect(providers.length).toBeGreaterThan(15);
    const asked = (name: string) =>
      words.some((word) => word.startsWith(names.get(name) ?? name.replace(/Provider$/, '').toLowerCase()));
    expect(providers.filter((name) => !asked(name))).toEqual([]);
  });
});

/** Abilities whose requests are called otherwise. */
const names = new Map([
  ['documentFormattingProvider', 'formatting'],
  ['documentRangeFormattingProvider', 'rangeformatting'],
  ['documentOnTypeFormattingProvider', 'ontypeformatting'],
  ['callHierarchyProvider', 'preparecallhierarchy'],
  ['workspaceSymbolProvider', 'symbol'],
]);

describe('every example', () => {
  /** A name of it, everywhere, becomes one that JavaScript has a meaning for, or a very long one. */
  const renamed = examples.map((text, i) => {
    const all = [...text.matchAll(/^(?:node|place|kit|source) (\w+)/gm)].map(([, name]) => name!);
    const name = all[(i * 7) % Math.max(1, all.length)];
    const by = hostileNames[i % 8]!;
    return name ? text.replaceAll(new RegExp(`\\b${name}\\b`, 'g'), by) : text;
  });

  it('with a name of it that means something to JavaScript', async () => {
    const check = entries.find(({ schema }) => schema === 'feedplot-check.schema.json')!;
    const show = entries.find(({ schema }) => schema === 'feedplot-analysis.schema.json')!;
    for (const text of renamed)
      for (const entry of [check, show]) expect(await line.faultOf(entry, text)).toBeUndefined();
    for (const text of renamed)
      expect(await faultOfServer(server, { texts: [text], places: [200, 700] })).toBeUndefined();
  }, 300_000);
});

describe('what is looked for', () => {
  it.each([
    ['Power undefined W', 'editor'],
    ['a length of NaN m', 'editor'],
    ['Infinity Gb/s', 'editor'],
    ['[object Object]', 'editor'],
    ['expected a PlanHead', 'editor'],
    ['TypeError: x is not a function', 'editor'],
    ['red \u001b[31m', 'terminal'],
    ['turned \u202e', 'terminal'],
    ['half \ud800', 'file'],
  ] as const)('%s', (text, goesTo) => {
    expect(misspoken(text, goesTo)).toBeDefined();
  });

  it('and is not found where all is well', () => {
    expect(
      misspoken('Nothing is wrong with the plan: 1 node, 2 undefined_names.', 'terminal'),
    ).toBeUndefined();
  });
});

describe.runIf(kept.length > 0)('what failed once', () => {
  it.each(kept)('does so no more: %s', async (name) => {
    const input = JSON.parse(readFileSync(join(failures, name), 'utf8')) as HostileInput;
    expect(await faultOfKept(input, line, server)).toBeUndefined();
  });
});
