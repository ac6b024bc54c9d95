import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { feedplot, folderWith } from './command-line.ts';

const untidy = 'plan   "x" {rate 50}\n\n\n\n// kept\nplace  desk   "Desk"   // here\n';
const tidy = 'plan "x" {\n  rate 50\n}\n\n// kept\nplace desk "Desk" // here\n';

test('a file is put into canonical layout, once', () => {
  const folder = folderWith({ 'show.feedplot': untidy });
  expect(feedplot(['format', 'show.feedplot'], { folder })).toMatchObject({
    code: 0,
    stderr: '',
    stdout: 'show.feedplot is formatted\n',
  });
  expect(readFileSync(join(folder, 'show.feedplot'), 'utf8')).toBe(tidy);
  expect(feedplot(['format', 'show.feedplot'], { folder })).toMatchObject({
    code: 0,
    stdout: 'Nothing to change.\n',
  });
  expect(readdirSync(folder)).toEqual(['show.feedplot']);
});

test('with --verify nothing is written, and the exit code tells', () => {
  const folder = folderWith({ 'show.feedplot': untidy });
  expect(feedplot(['format', '--verify', 'show.feedplot'], { folder })).toMatchObject({
    code: 1,
    stdout: 'show.feedplot would change\n',
  });
  expect(readFileSync(join(folder, 'show.feedplot'), 'utf8')).toBe(untidy);
});

test('without a name: the plan of the folder and all that it imports, not the library', () => {
  const folder = folderWith({
    'show.feedplot': `${tidy}import "kit.feedplot"\n`,
    'kit.feedplot': 'kit   a { }\n',
    'other.feedplot': 'place   z\n',
  });
  const { code, stdout } = feedplot(['format'], { folder });
  expect({ code, stdout }).toEqual({ code: 0, stdout: 'kit.feedplot is formatted\n' });
  expect(readFileSync(join(folder, 'other.feedplot'), 'utf8')).toBe('place   z\n');
});

test('what cannot be read is left alone, with the reason', () => {
  const folder = folderWith({ 'show.feedplot': 'place  a $ "x"\n' });
  writeFileSync(join(folder, 'bytes.feedplot'), Buffer.from([0x70, 0xff, 0xfe]));
  for (const [name, reason] of [
    ['show.feedplot', 'nothing was changed'],
    ['bytes.feedplot', 'cannot be read as UTF-8'],
    ['none.feedplot', 'No such file'],
  ] as const) {
    const { code, stderr } = feedplot(['format', name], { folder });
    expect({ code, told: stderr.includes(reason) }, stderr).toEqual({ code: 2, told: true });
  }
  expect(readFileSync(join(folder, 'show.feedplot'), 'utf8')).toBe('place  a $ "x"\n');
});
