import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { feedplot, folderWith, machinesNode, root } from './command-line.ts';

const overloaded = 'plan "Show" {\n  rate 5 W\n}\n';
const clean = 'plan "Show"\nplace desk\n';

describe('exit codes', () => {
  test('0: nothing wrong', () => {
    const folder = folderWith({ 'show.feedplot': clean });
    expect(feedplot(['check'], { folder }).code).toBe(0);
  });

  test('1: errors', () => {
    const folder = folderWith({ 'show.feedplot': overloaded });
    expect(feedplot(['check'], { folder }).code).toBe(1);
  });

  test('1: warnings, but only when they are to fail', () => {
    // A box that nothing is plugged into is doubtful.
    const folder = folderWith({
      'show.feedplot': `${clean}kit box {\n  inputs in1 as sdi_3g\n}\nnode lonely : box at desk\n`,
    });
    const usual = feedplot(['check'], { folder });
    expect(usual.stdout).toContain('warning ');
    expect(usual.code).toBe(0);
    expect(feedplot(['check', '--strict'], { folder }).code).toBe(1);
  });

  test.each([
    [['chek'], "unknown command 'chek'"],
    [['check', '--loud'], "unknown option '--loud'"],
    [['check', '--output', 'xml'], 'Allowed choices are text, json, sarif, github, markdown.'],
    [['explain'], "missing required argument 'thing'"],
    [['show', '--why'], "option '--why <name>' argument missing"],
  ])('2: %j cannot run', (args, why) => {
    const { code, stdout, stderr } = feedplot(args);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toContain(why);
  });

  test('2 and the help: no command', () => {
    const { code, stderr } = feedplot([]);
    expect(code).toBe(2);
    expect(stderr).toContain('Usage: feedplot');
  });

  test('0: help and version', () => {
    expect(feedplot(['--help'])).toMatchObject({ code: 0, stderr: '' });
    expect(feedplot(['check', '--help']).stdout).toContain('--strict');
    expect(feedplot(['help', 'check']).stdout).toContain('--strict');
    expect(feedplot(['--version'])).toMatchObject({ code: 0, stdout: '0.1.0\n' });
  });
});

// The rule is no-color.org's: any value that is not empty turns colour off.
describe('colour', () => {
  /** Runs it on a terminal that `script` (util-linux) pretends to be; undefined where there is none. */
  function onTerminal(
    args: readonly string[],
    env: Record<string, string>,
    folder: string,
  ): string | undefined {
    const command = [process.execPath, join(root, 'dist/feedplot.cjs'), ...args]
      .map((word) => `'${word}'`)
      .join(' ');
    const { TERM: _, NO_COLOR: __, ...inherited } = process.env;
    const pretender = 'script';
    const ran = spawnSync(pretender, ['-qec', command, '/dev/null'], {
      cwd: folder,
      env: { ...inherited, TERM: 'xterm', ...env },
      encoding: 'utf8',
    });
    return ran.error ? undefined : ran.stdout;
  }

  test('none where no person reads', () => {
    const folder = folderWith({ 'show.feedplot': overloaded });
    const { stdout, stderr } = feedplot(['check'], {
      folder,
      env: { TERM: 'xterm-256color', COLORTERM: 'truecolor' },
    });
    expect(stdout + stderr).not.toContain('\u001b');
  });

  test('on a terminal, but never with NO_COLOR or on one that has none', ({ skip }) => {
    const folder = folderWith({ 'show.feedplot': overloaded });
    const coloured = onTerminal(['check'], {}, folder);
    if (coloured === undefined) skip('no `script` command here to pretend a terminal with');
    expect(coloured).toContain('\u001b[31merror wrong-dimension\u001b[0m');
    expect(onTerminal(['check'], { NO_COLOR: '1' }, folder)).not.toContain('\u001b');
    expect(onTerminal(['check'], { TERM: 'dumb' }, folder)).not.toContain('\u001b');
    // no-color.org: "when present and not an empty string".
    expect(onTerminal(['check'], { NO_COLOR: '' }, folder)).toContain('\u001b[31m');
  });
});

describe('who reads may stop early', () => {
  test('a closed pipe is no fault', ({ skip }) => {
    const command = `'${process.execPath}' dist/feedplot.cjs show examples/finals --json | head -c 10`;
    const ran = spawnSync('sh', ['-c', command], { cwd: root, encoding: 'utf8' });
    if (ran.error) skip('no shell here');
    expect(ran.stdout).toHaveLength(10);
    expect(ran.stderr).not.toContain('fault');
  });
});

describe("the machine's own Node", () => {
  const node = machinesNode();

  test.skipIf(node === undefined || node === process.execPath)('prints the same', () => {
    for (const args of [
      ['check', 'examples/starter'],
      ['show', 'examples/starter', '--json'],
      ['explain', '1080p59.94'],
    ]) {
      expect(feedplot(args, { node: node! })).toEqual(feedplot(args));
    }
  });
});
