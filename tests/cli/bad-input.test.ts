import { chmodSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { feedplot, folderWith, type Ran } from './command-line.ts';

/** Checks one file with this content. */
function check(content: string | Uint8Array, ...more: string[]): Ran {
  const folder = folderWith({ 'show.feedplot': content });
  return feedplot(['check', 'show.feedplot', ...more], { folder });
}

/** Something is found, and the tool has no fault of its own. */
function expectFinding(ran: Ran, pattern: RegExp): void {
  expect(ran.code).toBe(1);
  expect(ran.stdout).toMatch(pattern);
  expect(ran.stdout).not.toContain('tool-fault');
  expect(ran.stderr).toBe('');
}

describe('files that are no plan', () => {
  test('an empty file', () => {
    expectFinding(check(''), /^show\.feedplot:1:1: error plan-missing: /);
  });

  test('nothing but a comment', () => {
    expectFinding(check('// to do\n'), /^show\.feedplot:1:1: error plan-missing: /);
  });

  test('a binary file', () => {
    const bytes = Uint8Array.from({ length: 5000 }, (_, i) => (i * 37) % 256);
    expectFinding(check(bytes), /^show\.feedplot:1:1: error unreadable: This is no text/m);
  });

  test('text in UTF-16', () => {
    const text = Buffer.from('\uFEFFplan "Show"\n', 'utf16le');
    expectFinding(check(text), /^show\.feedplot:1:1: error unreadable: This file is UTF-16 text\./m);
  });

  test('text in Latin-1: the place where it stops being UTF-8', () => {
    const text = Buffer.from('plan "Show"\nplace b\u00FChne\n', 'latin1');
    expectFinding(check(text), /^show\.feedplot:2:8: error unreadable: This file is not UTF-8 text/m);
  });

  test('10 MB of one line', () => {
    expectFinding(
      check('x'.repeat(10_000_000)),
      /^show\.feedplot:1:1: error unreadable: This file has 10\.0 million/m,
    );
  });

  test('3 MB of one line', () => {
    const { code, stdout } = check(`plan "Show"\nplace ${'x'.repeat(3_000_000)}\n`);
    expect(code === 0 || code === 1).toBe(true);
    expect(stdout.length).toBeLessThan(100_000);
  });

  test('more than is ever read', () => {
    const ran = check(Buffer.alloc(17_000_000, 'x'));
    expect(ran.code).toBe(2);
    expect(ran.stderr).toContain('The file has more than 16 MB');
  });

  test.skipIf(process.getuid?.() === 0)('a file that may not be read', () => {
    const folder = folderWith({ 'show.feedplot': 'plan "Show"\n' });
    chmodSync(join(folder, 'show.feedplot'), 0);
    expect(feedplot(['check', 'show.feedplot'], { folder })).toMatchObject({ code: 2 });
  });

  test('a device', () => {
    expect(feedplot(['check', '/dev/zero'])).toMatchObject({ code: 2, stdout: '' });
  });
});

describe('marks and line ends', () => {
  const text = 'plan "Show"\nplace desk\nplace stage 5\n';

  test('a byte order mark moves no column', () => {
    expect(check(`\uFEFF${text}`).stdout).toBe(check(text).stdout);
  });

  test('lines may end as on Windows or on old Macs', () => {
    expect(check(text.replaceAll('\n', '\r\n')).stdout).toBe(check(text).stdout);
  });
});

describe('broken text', () => {
  test('an unclosed string', () => {
    expectFinding(check('plan "Show\nplace desk\n'), /^show\.feedplot:1:6: error open-string: /m);
  });

  test('an unclosed brace', () => {
    expectFinding(
      check('plan "Show" {\n  rate 50\nplace desk\n'),
      /^show\.feedplot:\d+:\d+: error unreadable: /m,
    );
  });

  test('an unclosed comment', () => {
    expectFinding(
      check('plan "Show"\n/* place desk\n'),
      /^show\.feedplot:2:1: error unreadable: .*not closed/m,
    );
  });

  test('100,000 opening braces', () => {
    expectFinding(check(`plan "Show"\n${'{'.repeat(100_000)}`), /error unreadable: /);
  });
});

describe('plans that make no sense', () => {
  const head =
    'plan "Show" {\n  slack 2 m\n}\nplace desk\nkit box {\n  inputs in[1..2] as sdi_3g\n  outputs out[1..2] as sdi_3g\n  network net[1..2] as ethernet_10g_t\n  carries uncompressed\n}\nnode a : box at desk\n';

  test('files that import each other', () => {
    const folder = folderWith({
      'show.feedplot': 'plan "Show"\nimport "one.feedplot"\nplace desk\n',
      'one.feedplot': 'import "two.feedplot"\n',
      'two.feedplot': 'import "one.feedplot"\nplace stage\n',
    });
    const { code, stdout } = feedplot(['check', 'show.feedplot'], { folder });
    expect(code).toBe(0);
    expect(stdout).not.toContain('error');
  });

  test('a file that imports itself', () => {
    const { code, stdout } = check('plan "Show"\nimport "show.feedplot"\n');
    expect(code === 0 || code === 1).toBe(true);
    expect(stdout).not.toContain('tool-fault');
  });

  test('a cable from a port to itself', () => {
    expectFinding(check(`${head}link a.net1 <-> a.net1 over cat6a\n`), /error self-link: /);
  });

  test('a feed to its own source', () => {
    expectFinding(
      check(`${head}source cam at desk sends 1080p50 as sdi_3g into a.in1 over rg6 2 m\nfeed cam -> cam\n`),
      /error unknown-name: `cam` is a source; a destination is expected/,
    );
  });

  test('1,000 equal names are one finding each at most, told in little space', () => {
    const ran = check(`plan "Show"\n${'place desk\n'.repeat(1000)}`);
    expectFinding(ran, /error duplicate-name: /);
    expect(ran.stdout.length).toBeLessThan(1_000_000);
  });

  test('names that mean something to JavaScript', () => {
    const names = ['__proto__', 'constructor', 'toString', 'hasOwnProperty'];
    const folder = folderWith({
      'show.feedplot': `plan "Show"\n${names.map((name) => `place ${name}\nnode ${name} : camera at ${name}`).join('\n')}\nkit camera {\n}\n`,
    });
    const { stdout, code } = feedplot(['show', 'show.feedplot', '--json'], { folder });
    expect(code).toBe(0);
    expect(JSON.parse(stdout).nodes.map((node: { name: string }) => node.name)).toEqual(names);
  });
});
