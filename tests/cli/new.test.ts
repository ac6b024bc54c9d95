import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { feedplot, folderWith } from './command-line.ts';

test('a plan and a file of kit, which check clean', () => {
  const folder = folderWith({});
  const { code, stdout, stderr } = feedplot(['new'], { folder });
  expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
  expect(readdirSync(folder).sort()).toEqual(['kit.feedplot', 'show.feedplot']);
  expect(stdout).toContain('Wrote show.feedplot and kit.feedplot.');
  expect(feedplot(['check', '--strict'], { folder })).toMatchObject({ code: 0 });
});

test('a folder that is not there yet is made', () => {
  const folder = folderWith({});
  expect(feedplot(['new', 'shows/gala night'], { folder })).toMatchObject({ code: 0 });
  expect(existsSync(join(folder, 'shows/gala night/show.feedplot'))).toBe(true);
});

test('nothing is ever written over, and nothing is written by half', () => {
  const folder = folderWith({ 'kit.feedplot': '// mine\n' });
  const { code, stdout, stderr } = feedplot(['new'], { folder });
  expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
  expect(stderr).toContain('kit.feedplot is there already; nothing was written.');
  expect(readFileSync(join(folder, 'kit.feedplot'), 'utf8')).toBe('// mine\n');
  expect(existsSync(join(folder, 'show.feedplot'))).toBe(false);
});

test('a file where the folder should be', () => {
  const folder = folderWith({});
  writeFileSync(join(folder, 'taken'), '');
  const { code, stderr } = feedplot(['new', 'taken'], { folder });
  expect(code).toBe(2);
  expect(stderr).toMatch(/^feedplot: Nothing was written to .*taken/);
});
