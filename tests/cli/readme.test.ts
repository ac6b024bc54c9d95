/**
 * What the README shows is what the commands print. `npx vitest run tests/cli/readme.test.ts -u` writes it anew, after
 * which a person reads it.
 */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { feedplot, root } from './command-line.ts';

const path = join(root, 'README.md');
const readme = readFileSync(path, 'utf8');

/** The blocks in which a command stands with what it prints. */
const BLOCK = /```console\n\$ feedplot (.+)\n([\s\S]*?)```/g;

function output(command: string): string {
  const words = [...command.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain!);
  const { stdout, code } = feedplot(words);
  expect([0, 1]).toContain(code);
  return stdout;
}

test('the commands print what the README shows', async () => {
  expect([...readme.matchAll(BLOCK)].length).toBeGreaterThan(4);
  const written = readme.replace(
    BLOCK,
    (_, command) => `\`\`\`console\n$ feedplot ${command}\n${output(command)}\`\`\``,
  );
  await expect(written).toMatchFileSnapshot(path);
});

test('every command is in the README, and no other', () => {
  const listed = [...readme.matchAll(/^- `feedplot (\w+)/gm)].map(([, name]) => name);
  const help = feedplot(['--help']).stdout;
  const there = [...help.matchAll(/^ {2}(\w+) {2,}/gm)]
    .map(([, name]) => name)
    .filter((name) => name !== 'help');
  expect(listed).toEqual(there);
});

test('every table is in the README', () => {
  const help = feedplot(['show', '--help']).stdout.replace(/\s+/g, ' ');
  const tables = /which tables: ([\w, ]+);/.exec(help)![1]!.split(', ');
  for (const table of tables) expect(readme).toContain(`\`${table}\``);
});

test('the statements it shows are in the starter plan', () => {
  const starter = readFileSync(join(root, 'examples/starter/starter.feedplot'), 'utf8');
  const [, statements] = /```feedplot\n([\s\S]*?)```/.exec(readme)!;
  for (const line of statements!.split('\n').filter(Boolean)) expect(starter).toContain(line);
});

test('files that it speaks of are there', () => {
  const files = [...readme.matchAll(/`((?:examples|dist)\/[\w./-]+|[A-Z]+\.md)`/g)].map(([, file]) => file!);
  expect(files.length).toBeGreaterThan(5);
  for (const file of files) expect(existsSync(join(root, file)), file).toBe(true);
});
