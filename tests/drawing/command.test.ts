/** `feedplot draw` as a process: what it writes and what it refuses. */
import { mkdirSync, readdirSync, readFileSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { feedplot, folderWith, machinesNode } from '../cli/command-line.ts';

const starter = 'examples/starter/starter.feedplot';
const arena = 'examples/arena/arena.feedplot';

describe('draws', () => {
  test('the plan as SVG onto standard output', () => {
    const { code, stdout, stderr } = feedplot(['draw', starter]);
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    expect(stdout).toMatch(/^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg"[\s\S]*<\/svg>\n$/);
    expect(stdout).toContain('19.5 % free');
  });

  test('the same every time, and on the Node that the machine has', () => {
    const node = machinesNode();
    const first = feedplot(['draw', starter]).stdout;
    expect(feedplot(['draw', starter], node === undefined ? {} : { node }).stdout).toBe(first);
  });

  test('into a file, whole, and leaves nothing else behind', () => {
    const folder = folderWith({ 'out/old.svg': 'old' });
    const { code, stdout } = feedplot(['draw', starter, '--to', join(folder, 'out/old.svg')]);
    expect(code).toBe(0);
    expect(stdout).toBe(`Wrote ${join(folder, 'out/old.svg')}.\n`);
    expect(readdirSync(join(folder, 'out'))).toEqual(['old.svg']);
    expect(readFileSync(join(folder, 'out/old.svg'), 'utf8')).toMatch(/^<svg[\s\S]*<\/svg>\n$/);
  });

  test('a part of the show', () => {
    const always = feedplot(['draw', arena]).stdout;
    const spare = feedplot(['draw', arena, '--segment', 'spare_test']).stdout;
    const isOut = (svg: string) => svg.includes('>out of service<');
    expect([always, spare].map(isOut)).toEqual([false, true]);
  });

  test('a place, a picture, a feed', () => {
    expect(feedplot(['draw', arena, '--place', 'wall']).stdout).toContain('· Behind the LED wall ·');
    expect(feedplot(['draw', arena, '--feed', 'live']).stdout).toContain('· only Close-up of the winner ·');
    for (const feed of ['sides -> side_left', 'sides->side_left', ' sides → side_left'])
      expect(feedplot(['draw', arena, '--feed', feed]).stdout).toContain('· only sides -&gt; side_left ·');
  });

  test('in other colours', () => {
    expect(feedplot(['draw', starter, '--theme', 'dark']).stdout).toContain('fill="#1C1D1F"');
    expect(feedplot(['draw', starter, '--theme', 'contrast']).stdout).toContain('fill="#000000"');
  });

  test('the one plan in a folder, and says which', () => {
    const folder = folderWith({ 'show.feedplot': 'plan "Show" { rate 50 }' });
    const { code, stderr, stdout } = feedplot(['draw'], { folder });
    expect(code).toBe(0);
    expect(stderr).toContain('Drawing show.feedplot.');
    expect(stderr).toContain('Nothing of this plan can be drawn yet');
    expect(stdout).toContain('Nothing stands anywhere yet.');
  });

  test('what can be read of a plan with errors, and says so', () => {
    const folder = folderWith({
      'show.feedplot':
        'plan "Show" { rate 50 }\nkit k { draws 1 W }\nplace a\nnode n : k at a\nnode m : k at gone',
    });
    const { code, stderr, stdout } = feedplot(['draw'], { folder });
    expect(code).toBe(0);
    expect(stderr).toContain('show.feedplot has 1 error: the drawing shows what could be read');
    expect(stdout).toContain('data-id="n"');
  });
});

describe('refuses, with the exit code 2 and a word of help,', () => {
  test.each([
    ['a segment', ['--segment', 'spare_tst'], 'no segment called spare_tst. Did you mean spare_test?'],
    ['a place', ['--place', 'stge'], 'no place called stge. Did you mean stage?'],
    ['a source', ['--feed', 'shw'], 'no source or feed called shw. Did you mean show?'],
    ['a feed', ['--feed', 'show -> wall_scren'], 'Did you mean show -> wall_screen?'],
    ['a theme', ['--theme', 'pink'], 'Allowed choices are light, dark, contrast'],
    ['an option', ['--colour'], "unknown option '--colour'"],
  ])('%s that there is not', (_, options, words) => {
    const { code, stdout, stderr } = feedplot(['draw', arena, ...options]);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toContain(words);
  });

  test('a segment where there are none', () => {
    const { code, stderr } = feedplot(['draw', starter, '--segment', 'x']);
    expect(code).toBe(2);
    expect(stderr).toContain('This plan has no segment called x. It has none at all.');
  });

  test('a plan that is not there', () => {
    const { code, stderr } = feedplot(['draw', 'examples/none.feedplot']);
    expect(code).toBe(2);
    expect(stderr).toContain('No such file: examples/none.feedplot.');
  });

  test('to write over a folder or through a link', () => {
    const folder = folderWith({ 'elsewhere.txt': 'mine' });
    mkdirSync(join(folder, 'taken.svg'));
    symlinkSync(join(folder, 'elsewhere.txt'), join(folder, 'link.svg'));
    for (const name of ['taken.svg', 'link.svg']) {
      const { code, stderr } = feedplot(['draw', starter, '--to', join(folder, name)]);
      expect(code, name).toBe(2);
      expect(stderr).toContain('is no plain file; it was left alone');
    }
    expect(readFileSync(join(folder, 'elsewhere.txt'), 'utf8')).toBe('mine');
  });
});

test('the layout library is in no bundle that another command loads', () => {
  const dist = new URL('../../dist/', import.meta.url);
  const bundle = (name: string) => readFileSync(new URL(name, dist), 'utf8');
  const commands = readdirSync(new URL('commands', dist)).map((file) => `commands/${file}`);
  expect(commands).toContain('commands/draw.mjs');
  expect(bundle('layout.cjs')).toContain('org.eclipse.elk');
  for (const name of ['feedplot.cjs', ...commands, 'server.cjs', 'drawing.js'])
    expect(bundle(name), name).not.toContain('org.eclipse.elk');
});
