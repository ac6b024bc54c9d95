import { mkdirSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { feedplot, folderWith } from './command-line.ts';

const plan = 'plan "Show"\nplace desk\n';

describe('which plan is meant', () => {
  test('without a name it is the one plan in the folder, and that is said', () => {
    const folder = folderWith({ 'show.feedplot': plan, 'kit.feedplot': 'kit camera {\n}\n' });
    const { code, stdout, stderr } = feedplot(['check'], { folder });
    expect(stderr).toBe('Checking show.feedplot.\n');
    expect(stdout).toContain('show.feedplot');
    expect(code).toBe(0);
  });

  test('a folder stands for the one plan in it', () => {
    const folder = folderWith({ 'monday/show.feedplot': plan });
    expect(feedplot(['check', 'monday'], { folder })).toMatchObject({
      code: 0,
      stderr: `Checking ${join('monday', 'show.feedplot')}.\n`,
    });
  });

  test('several plans are an error that names them', () => {
    const folder = folderWith({ 'a.feedplot': plan, 'b.feedplot': plan });
    expect(feedplot(['check'], { folder })).toEqual({
      code: 2,
      stdout: '',
      stderr: 'feedplot: 2 plans in this folder: a.feedplot, b.feedplot. Name the one that is meant.\n',
    });
  });

  test('no plan is an error that says what to do', () => {
    const folder = folderWith({ 'kit.feedplot': 'kit camera {\n}\n', 'notes.txt': plan });
    const { code, stderr } = feedplot(['check'], { folder });
    expect(code).toBe(2);
    expect(stderr).toMatch(/^feedplot: No plan in this folder\. .*feedplot new/);
  });

  test('a file that is not there is an error; its ending may have been forgotten', () => {
    const folder = folderWith({ 'show.feedplot': plan });
    expect(feedplot(['check', 'shw.feedplot'], { folder })).toMatchObject({
      code: 2,
      stdout: '',
      stderr: 'feedplot: No such file: shw.feedplot.\n',
    });
    expect(feedplot(['check', 'show'], { folder }).stderr).toContain('Did you mean show.feedplot?');
  });

  test('spaces and letters of any script in a path', () => {
    const folder = folderWith({ 'my shows/größe (2).feedplot': plan });
    const { code, stdout } = feedplot(['check', 'my shows/größe (2).feedplot'], { folder });
    expect(code).toBe(0);
    expect(stdout).toContain('größe (2).feedplot');
  });
});

describe('several files in one call', () => {
  test('each is checked, findings stand by file', () => {
    const folder = folderWith({ 'a.feedplot': 'plan "A" {\n  rate 5 W\n}\n', 'b.feedplot': plan });
    const { code, stdout } = feedplot(['check', 'a.feedplot', 'b.feedplot'], { folder });
    expect(code).toBe(1);
    expect(stdout).toContain('a.feedplot:2:8: error wrong-dimension:');
    expect(stdout).toContain(' in 2 files.');
  });

  test('what two plans share is told once', () => {
    const folder = folderWith({
      'a.feedplot': 'plan "A"\nimport "kit.feedplot"\n',
      'b.feedplot': 'plan "B"\nimport "kit.feedplot"\n',
      'kit.feedplot': 'kit camera {\n  draws 24 m\n}\n',
    });
    const { stdout } = feedplot(['check', 'a.feedplot', 'b.feedplot'], { folder });
    expect(stdout.match(/wrong-dimension/g)).toHaveLength(1);
  });

  test('a part is checked with the plan that imports it; by itself its plan is missing', () => {
    const folder = folderWith({
      'show.feedplot': 'plan "Show"\nimport "kit.feedplot"\n',
      'kit.feedplot': 'kit camera {\n  draws 24 m\n}\n',
    });
    const both = feedplot(['check', 'kit.feedplot', 'show.feedplot'], { folder });
    expect(both.stdout.match(/wrong-dimension/g)).toHaveLength(1);
    expect(both.stdout).not.toContain('plan-missing');
    const alone = feedplot(['check', 'kit.feedplot'], { folder });
    expect(alone.code).toBe(1);
    expect(alone.stdout).toContain('kit.feedplot:1:1: error plan-missing');
    expect(alone.stdout).toContain('kit.feedplot:2:9: error wrong-dimension');
  });
});

describe('what a plan may import', () => {
  const outside = { 'secret.feedplot': 'place vault "Very secret"\n' };

  test('without a repository: nothing above its own folder', () => {
    const folder = folderWith({
      ...outside,
      'shows/show.feedplot': 'plan "Show"\nimport "../secret.feedplot"\n',
    });
    const { code, stdout } = feedplot(['check', 'shows/show.feedplot'], { folder });
    expect(code).toBe(1);
    expect(stdout).toMatch(/show\.feedplot:2:8: error import-missing: /);
    expect(feedplot(['show', 'shows/show.feedplot', '--json'], { folder }).stdout).not.toContain('vault');
  });

  test('in a repository: anything below the folder that has .git', () => {
    const folder = folderWith({
      'house/kit/camera.feedplot': 'kit camera {\n}\n',
      'house/shows/show.feedplot': 'plan "Show"\nimport "../kit/camera.feedplot"\n',
    });
    mkdirSync(join(folder, 'house/.git'));
    expect(feedplot(['check', 'house/shows/show.feedplot'], { folder }).stdout).not.toContain(
      'import-missing',
    );
  });

  test('a link that leads outside is not followed', () => {
    const folder = folderWith({ ...outside, 'shows/show.feedplot': 'plan "Show"\nimport "kit.feedplot"\n' });
    symlinkSync(join(folder, 'secret.feedplot'), join(folder, 'shows/kit.feedplot'));
    const { stdout } = feedplot(['check', 'shows/show.feedplot'], { folder });
    expect(stdout).toMatch(/show\.feedplot:2:8: error import-missing: /);
    expect(stdout).not.toContain('vault');
  });

  test('a folder above that is a link out is not followed', () => {
    const folder = folderWith({
      'elsewhere/kit.feedplot': 'place vault\n',
      'shows/show.feedplot': 'plan "Show"\nimport "kit/kit.feedplot"\n',
    });
    symlinkSync(join(folder, 'elsewhere'), join(folder, 'shows/kit'));
    expect(feedplot(['check', 'shows/show.feedplot'], { folder }).stdout).toContain('import-missing');
  });

  test('a plan that is named through a link is read where it lies', () => {
    const folder = folderWith({
      'plans/show.feedplot': 'plan "Show"\nimport "kit.feedplot"\n',
      'plans/kit.feedplot': 'kit camera {\n}\n',
    });
    symlinkSync(join(folder, 'plans/show.feedplot'), join(folder, 'current.feedplot'));
    const { stdout } = feedplot(['check', 'current.feedplot'], { folder });
    expect(stdout).not.toContain('import-missing');
  });

  test('a folder is no file to import', () => {
    const folder = folderWith({ 'show.feedplot': 'plan "Show"\nimport "kit.feedplot"\n' });
    mkdirSync(join(folder, 'kit.feedplot'));
    expect(feedplot(['check', 'show.feedplot'], { folder }).stdout).toContain(
      'show.feedplot:2:8: error import-missing',
    );
  });
});
