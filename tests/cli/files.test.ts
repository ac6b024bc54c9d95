/** Files as they come, on the command line: linked in circles, oddly named, and in folders that may only be read. */

import { spawnSync } from 'node:child_process';
import { chmodSync, readdirSync, readFileSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { feedplot, folderWith, root } from './command-line.ts';

const show = (path: string) =>
  `plan "Show" { slack 2 m }\nimport "${path}"\nplace desk\nnode box : edge at desk\n`;
const kit = 'kit edge "Edge box" { draws 18 W }\n';

describe('links', () => {
  test('that lead round in circles: the file cannot be had, and everything else counts', () => {
    const folder = folderWith({ 'show.feedplot': show('round.feedplot') });
    symlinkSync(join(folder, 'circle.feedplot'), join(folder, 'round.feedplot'));
    symlinkSync(join(folder, 'round.feedplot'), join(folder, 'circle.feedplot'));
    const { code, stdout } = feedplot(['check', 'show.feedplot'], { folder });
    expect(code).toBe(1);
    expect(stdout).toContain('show.feedplot:2:8: error import-missing: ');
    expect(feedplot(['check', 'round.feedplot'], { folder })).toMatchObject({ code: 2, stdout: '' });
  });

  test('a folder that holds itself', () => {
    const folder = folderWith({ 'show.feedplot': show('up/up/up/kit.feedplot'), 'kit.feedplot': kit });
    symlinkSync(folder, join(folder, 'up'));
    const { stdout } = feedplot(['check', 'show.feedplot'], { folder });
    expect(stdout).not.toContain('import-missing');
  });

  test('one inside the folder is followed', () => {
    const folder = folderWith({ 'show.feedplot': show('inside.feedplot'), 'kit.feedplot': kit });
    symlinkSync(join(folder, 'kit.feedplot'), join(folder, 'inside.feedplot'));
    expect(feedplot(['check', 'show.feedplot'], { folder }).stdout).not.toContain('import-missing');
  });
});

describe('paths of imports', () => {
  test.each([
    ['spaces and letters beyond ASCII', 'große halle/kit täfel (1).feedplot'],
    ['signs that mean something in an address', 'a#b/100% & more.feedplot'],
    ['a way up and down again', 'sub/../kit.feedplot'],
  ])('with %s', (_what, path) => {
    const folder = folderWith({ 'show.feedplot': show(path), [path]: kit, 'sub/x.feedplot': '' });
    expect(feedplot(['check', 'show.feedplot'], { folder }).stdout).not.toContain('import-missing');
  });

  test.each([
    ['up and out', '../secret.feedplot'],
    ['far up', '../../../../../../../../etc/passwd'],
    ['absolute', '/etc/passwd'],
    ['with an address', 'file:///etc/passwd'],
    ['backwards', '..\\secret.feedplot'],
    ['out and in again', 'sub/../../secret.feedplot'],
  ])('that lead outside are not followed: %s', (_what, path) => {
    const folder = folderWith({ 'in/show.feedplot': show(path), 'secret.feedplot': kit });
    const { stdout } = feedplot(['check', 'in/show.feedplot'], { folder });
    expect(stdout).toContain('import-missing');
    expect(stdout).not.toContain('root:');
  });
});

/** What a user without any rights is told; a superuser may write everywhere, so it is somebody else who tries. */
function asNobody(args: readonly string[], folder: string) {
  const isRoot = process.getuid?.() === 0;
  return spawnSync(process.execPath, [join(root, 'dist/feedplot.cjs'), ...args], {
    cwd: folder,
    encoding: 'utf8',
    ...(isRoot && { uid: 65_534, gid: 65_534 }),
  });
}

describe.skipIf(process.platform === 'win32')('a folder that may only be read', () => {
  function readOnly(): string {
    const folder = folderWith({ 'show.feedplot': `${show('kit.feedplot')}\n\n\n\n`, 'kit.feedplot': kit });
    chmodSync(folder, 0o555);
    chmodSync(join(folder, 'show.feedplot'), 0o444);
    return folder;
  }

  test('is checked and shown', () => {
    const folder = readOnly();
    const { status, stdout } = asNobody(['check', 'show.feedplot'], folder);
    expect(stdout).not.toContain('import-missing');
    expect(status).not.toBe(2);
    chmodSync(folder, 0o755);
  });

  test.each([
    [['book', 'show.feedplot', '--to', 'papers'], /papers cannot be used as a folder/],
    [['draw', 'show.feedplot', '--to', 'drawing.svg'], /drawing\.svg could not be written/],
    [['format', 'show.feedplot'], /could not be written/],
    [['new', 'fresh'], /Nothing was written/],
  ])('stays as it is: feedplot %j', (args, reason) => {
    const folder = readOnly();
    const before = readFileSync(join(folder, 'show.feedplot'), 'utf8');
    const { status, stderr } = asNobody(args, folder);
    expect(stderr).toMatch(reason);
    expect(stderr).not.toContain('fault of Feedplot');
    expect(status).toBe(2);
    expect(readdirSync(folder).sort()).toEqual(['kit.feedplot', 'show.feedplot']);
    expect(readFileSync(join(folder, 'show.feedplot'), 'utf8')).toBe(before);
    chmodSync(folder, 0o755);
  });

  test('a file that may not be read at all says so', () => {
    const folder = folderWith({ 'show.feedplot': show('kit.feedplot'), 'kit.feedplot': kit });
    chmodSync(folder, 0o755);
    chmodSync(join(folder, 'kit.feedplot'), 0);
    const { stdout } = asNobody(['check', 'show.feedplot'], folder);
    expect(stdout).toMatch(/import-missing: `kit\.feedplot` could not be read/);
  });
});

describe('names of a plan that are paths', () => {
  test('stay words: everything is written under the folder that was named', () => {
    const names = ['../../x', '/etc/cron.d/x', 'C:\\x', '..'];
    const sources = names.map((name, i) => `source s${i} "${name}" at desk sends 1080p50`).join('\n');
    const folder = folderWith({
      'in/show.feedplot': `plan "../../out" { revision "../x" }\nplace desk "../../y"\n${sources}\n`,
    });
    const run = (...args: string[]) => feedplot(args, { folder: join(folder, 'in') });
    for (const only of ['html,tables,markdown', 'labels', 'pictures'])
      expect(run('book', 'show.feedplot', '--to', 'papers', '--only', only).code).toBe(0);
    run('draw', 'show.feedplot', '--to', 'papers/drawing.svg');
    expect(readdirSync(folder)).toEqual(['in']);
    expect(readdirSync(join(folder, 'in')).sort()).toEqual(['papers', 'show.feedplot']);
  }, 180_000);
});
