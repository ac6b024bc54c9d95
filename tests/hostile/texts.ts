/** Plans that nobody would write: the examples and small plans, their words cut, doubled, swapped and replaced. */

import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import fc from 'fast-check';
import { everyStatement } from '../support/every-statement.ts';
import { hostileShow } from '../support/hostile-show.ts';
import { smallPlan } from '../support/small-plan.ts';

const root = resolve(import.meta.dirname, '../..');

export const examples: readonly string[] = ['examples', 'tests/checks/fixtures']
  .flatMap((folder) =>
    readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' }).map((file) => join(folder, file)),
  )
  .filter((file) => file.endsWith('.feedplot'))
  .sort()
  .map((file) => readFileSync(join(root, file), 'utf8'));

/** Names that mean something to JavaScript, to a file system or to a table, that are very long, or in other letters. */
export const hostileNames: readonly string[] = [
  ...['__proto__', 'constructor', 'prototype', 'toString', 'hasOwnProperty', 'valueOf', 'then', 'length'],
  ...['null', 'true', 'con', 'NUL', 'in', 'feed', 'node', 'plan', '_', 'x', 'n\u0303', 'ﬁ'],
  ...['日本語', 'שולחן', 'صندوق', 'Ünïcödé', 'ªº', 'n'.repeat(300), '長'.repeat(300), 'a-b-c'],
];

const hostileNumbers: readonly string[] = [
  ...[
    '0',
    '1',
    '00000',
    '0.0',
    '0.000000000000000000001',
    '58,5',
    '1000000',
    '4294967296',
    '9007199254740993',
  ],
  ...['99999999999999999999', `${'9'.repeat(400)}`, `0.${'0'.repeat(400)}1`, '1e9', '-1', '0x10', '1_000'],
];

const hostileStrings: readonly string[] = [
  ...[
    '""',
    '"',
    '“x”',
    '"../../x"',
    '"/etc/passwd"',
    '"=HYPERLINK(1)"',
    '"</script><script>alert(1)</script>"',
  ],
  ...['"\u0007\u001b[31mred"', '"\u202Eturned"', `"${'x'.repeat(300)}"`, `"${'wörter '.repeat(60)}"`],
  ...['"צליל مرحبا 日本"', '"a\u0000b"', '"\uD800"', '"%s %n $x"', '"| *a* `b` [c](d)"', '"\u{1F3A5}\u200D"'],
];

const marks: readonly string[] = [
  ...[
    '{',
    '}',
    '"',
    '/*',
    '*/',
    '//',
    '/**',
    '\n',
    '\r',
    '\r\n',
    ' ',
    '\t',
    '.',
    '..',
    ',',
    ':',
    '->',
    '<->',
  ],
  ...[
    '[',
    ']',
    '\u0000',
    '\u0001',
    '\u001b',
    '\u0085',
    '\u2028',
    '\uFEFF',
    '\u00A0',
    '\uD800',
    '“',
    '\\',
    '%',
  ],
];

/** One change, drawn ahead of the text that it will be made in: `at` and `to` are taken as far as there are words. */
interface Change {
  readonly how: keyof typeof changes;
  readonly at: number;
  readonly to: number;
  readonly by: number;
}

/** Words, numbers, texts, signs and the white space between them. */
function tokensOf(text: string): string[] {
  return text.match(/"[^"\n]*"?|[\p{L}_][\p{L}\p{M}\d_-]*|\d[\d.,:x/]*|\s+|<->|->|\.\.|[\s\S]/gu) ?? [];
}

const pick = <T>(items: readonly T[], at: number): T => items[at % items.length]!;

const isName = (token: string) => /^[\p{L}_]/u.test(token);

/** Another of the same kind, so that what stands around it is still read. */
function hostileLike(token: string, by: number): string {
  if (token.startsWith('"')) return pick(hostileStrings, by);
  if (/^\d/.test(token)) return pick(hostileNumbers, by);
  return isName(token) ? pick(hostileNames, by) : pick(marks, by);
}

type Draw = Omit<Change, 'how'>;

const changes = {
  cut: (tokens: string[], { at, to }: Draw) => void tokens.splice(at % tokens.length, 1 + (to % 4)),
  double: (tokens: string[], { at, to }: Draw) => {
    const from = at % tokens.length;
    tokens.splice(from, 0, ...tokens.slice(from, from + 1 + (to % 40)));
  },
  swap: (tokens: string[], { at, to }: Draw) => {
    const [a, b] = [at % tokens.length, to % tokens.length];
    [tokens[a], tokens[b]] = [tokens[b]!, tokens[a]!];
  },
  splice: (tokens: string[], { at, to, by }: Draw) => {
    const others = tokensOf(pick(examples, by));
    const from = to % Math.max(1, others.length);
    tokens.splice(at % tokens.length, 0, ' ', ...others.slice(from, from + 1 + (by % 30)), ' ');
  },
  mark: (tokens: string[], { at, by }: Draw) => void tokens.splice(at % tokens.length, 0, pick(marks, by)),
  breakOff: (tokens: string[], { at }: Draw) => {
    const i = at % tokens.length;
    tokens[i] = tokens[i]!.slice(0, -1);
  },
  replace: (tokens: string[], { at, by }: Draw) => {
    const i = at % tokens.length;
    tokens[i] = hostileLike(tokens[i]!, by);
  },
  /** What has a name keeps its meaning, whatever it is called. */
  rename: (tokens: string[], { at, by }: Draw) => {
    const names = tokens.filter(isName);
    if (names.length === 0) return;
    const [old, fresh] = [pick(names, at), pick(hostileNames, by)];
    for (const [i, token] of tokens.entries()) if (token === old) tokens[i] = fresh;
  },
  /** One name for two things. */
  merge: (tokens: string[], { at, to }: Draw) => {
    const names = tokens.filter(isName);
    if (names.length === 0) return;
    const [old, fresh] = [pick(names, at), pick(names, to)];
    for (const [i, token] of tokens.entries()) if (token === old) tokens[i] = fresh;
  },
  figures: (tokens: string[], { at, to, by }: Draw) => {
    const numbers = [...tokens.entries()].filter(([, token]) => /^\d+$/.test(token));
    for (let i = 0; i <= to % 5 && numbers.length > 0; i++)
      tokens[pick(numbers, at + i * 7)[0]] = pick(hostileNumbers, by + i);
  },
  texts: (tokens: string[], { at, by }: Draw) => {
    const texts = [...tokens.entries()].filter(([, token]) => token.startsWith('"'));
    if (texts.length > 0) tokens[pick(texts, at)[0]] = pick(hostileStrings, by);
  },
  /** The end is not written yet. */
  end: (tokens: string[], { at }: Draw) => void tokens.splice(1 + (at % tokens.length)),
} satisfies Record<string, (tokens: string[], draw: Draw) => void>;

function changed(text: string, made: readonly Change[]): string {
  const tokens = tokensOf(text);
  for (const { how, ...draw } of made) if (tokens.length > 0) changes[how](tokens, draw);
  return tokens.join('');
}

const change: fc.Arbitrary<Change> = fc.record({
  how: fc.constantFrom(...(Object.keys(changes) as Change['how'][])),
  at: fc.nat(100_000),
  to: fc.nat(100_000),
  by: fc.nat(100_000),
});

const chosenStatements = fc
  .subarray([...smallPlan, ...everyStatement], { minLength: 3 })
  .map((statements) => `${statements.join('\n')}\n`);

const base: fc.Arbitrary<string> = fc.oneof(
  { weight: 5, arbitrary: fc.constant(`${smallPlan.join('\n')}\n`) },
  { weight: 2, arbitrary: chosenStatements },
  { weight: 1, arbitrary: fc.constant(hostileShow) },
  { weight: 2, arbitrary: fc.constantFrom(...examples) },
);

/** The text of a plan that was worked on by nobody who meant it. */
export const hostileText: fc.Arbitrary<string> = fc.oneof(
  {
    weight: 20,
    arbitrary: fc
      .tuple(base, fc.array(change, { minLength: 1, maxLength: 12 }))
      .map(([text, made]) => changed(text, made)),
  },
  // What is no plan at all.
  { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 200 }) },
  {
    weight: 1,
    arbitrary: fc
      .array(
        fc.constantFrom(
          ...marks,
          ...hostileNames,
          ...hostileNumbers,
          ...hostileStrings,
          'plan "x"',
          '\nfeed ',
        ),
        {
          maxLength: 60,
        },
      )
      .map((parts) => parts.join(' ')),
  },
);
