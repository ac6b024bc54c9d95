import { execFileSync } from 'node:child_process';
import {
  chmodSync,
  chownSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { repositoryWith, TestRepository } from '../review/repositories.ts';
import { changed, kit, plan, withCamera } from '../review/shows.ts';
import { feedplot, folderWith } from './command-line.ts';

const show = { 'show.feedplot': plan, 'kit.feedplot': kit };

describe('two files', () => {
  test('are compared, and each is called as it was named', () => {
    const folder = folderWith({
      'kit.feedplot': kit,
      'monday.feedplot': plan,
      'tuesday.feedplot': withCamera(plan, 'close', 3),
    });
    const { code, stdout, stderr } = feedplot(['review', 'monday.feedplot', 'tuesday.feedplot'], { folder });
    expect(stderr).toBe('');
    expect(code).toBe(0);
    expect(stdout).toContain('monday.feedplot → tuesday.feedplot.');
    expect(stdout).toContain('source close “close camera”: added (tuesday.feedplot:');
  });

  test('the exit code is 1 when the new plan has errors, whoever brought them', () => {
    const broken = changed(plan, 'feed left -> mixer.in1', 'feed left -> mixer.in9');
    const folder = folderWith({
      'kit.feedplot': kit,
      'a.feedplot': broken,
      'b.feedplot': `${broken}\n// noted\n`,
    });
    const { code, stdout } = feedplot(['review', 'a.feedplot', 'b.feedplot'], { folder });
    expect(stdout).toMatch(/^Spring lecture: nothing changes\n/);
    expect(code).toBe(1);
  });

  test('an error that is mended gives 0', () => {
    const broken = changed(plan, 'feed left -> mixer.in1', 'feed left -> mixer.in9');
    const folder = folderWith({ 'kit.feedplot': kit, 'a.feedplot': broken, 'b.feedplot': plan });
    expect(feedplot(['review', 'a.feedplot', 'b.feedplot'], { folder }).code).toBe(0);
  });

  test.each([
    [[], /Name two plans, the one before and the one after/],
    [['show.feedplot'], /Name two plans/],
    [['show.feedplot', 'gone.feedplot'], /No such file: gone\.feedplot/],
    [['--since', 'HEAD', '--merge'], /--since or --merge, not both/],
    [['--since', 'HEAD', 'show.feedplot', 'show.feedplot'], /only one plan is named/],
    [['--output', 'pdf', 'show.feedplot', 'show.feedplot'], /text, markdown, json, html/],
  ])('%j is told as it is', (args, message) => {
    const { code, stdout, stderr } = feedplot(['review', ...args], { folder: folderWith(show) });
    expect(code).toBe(2);
    expect(stdout).toBe('');
    expect(stderr).toMatch(message);
  });
});

describe('with a revision', () => {
  test('the one plan of the folder is compared with the last commit, and the work tree is not touched', () => {
    const repository = repositoryWith(show).write({ 'show.feedplot': withCamera(plan, 'close', 3) });
    const before = repository.git('status', '--porcelain=v2', '--branch');
    const index = statSync(join(repository.folder, '.git/index')).mtimeMs;
    const { code, stdout, stderr } = repository.review('--since', 'HEAD');
    expect(stderr).toBe('Reviewing show.feedplot.\n');
    expect(code).toBe(0);
    expect(stdout).toContain('T1: from Box P · net1 to Box D · net1: 53.7 % ');
    expect(stdout).toContain('→ 80.5 % ');
    expect(statSync(join(repository.folder, '.git/index')).mtimeMs).toBe(index);
    expect(repository.git('status', '--porcelain=v2', '--branch')).toBe(before);
  });

  test('nothing changes when nothing has changed', () => {
    const { code, stdout } = repositoryWith(show).review('--since', 'HEAD');
    expect(stdout).toMatch(/^Spring lecture: nothing changes\nHEAD \([0-9a-f]{8}\) → work tree\.\n$/);
    expect(code).toBe(0);
  });

  test('a node that is renamed in one file while another speaks of it', () => {
    const parts = {
      'show.feedplot': changed(
        plan,
        'import "kit.feedplot"',
        'import "kit.feedplot"\nimport "boxes.feedplot"',
      ).replace(/node box_p .*\n/, ''),
      'kit.feedplot': kit,
      'boxes.feedplot': 'node box_p "Box P" : edge_box at platform powered by blue\n',
    };
    const repository = repositoryWith(parts).write({
      'show.feedplot': changed(parts['show.feedplot'], 'box_p', 'stage_box'),
      'boxes.feedplot': changed(parts['boxes.feedplot'], 'box_p', 'stage_box'),
    });
    const { things, steps, new_findings } = repository.reviewJson('--since', 'HEAD');
    expect(things).toMatchObject([{ change: 'renamed', kind: 'node', name: 'stage_box', was: 'box_p' }]);
    expect(things[0]!.place.file).toBe('boxes.feedplot');
    expect(steps).toEqual([]);
    expect(new_findings).toEqual([]);
  });

  test('a trunk that is moved to another socket', () => {
    const repository = repositoryWith(show).write({
      'show.feedplot': changed(plan, '<-> box_p.net1', '<-> box_p.net2'),
    });
    const { things, steps } = repository.reviewJson('--since', 'HEAD');
    expect(things).toMatchObject([{ change: 'moved', name: 'trunk' }]);
    expect(steps.filter(({ kind }) => kind !== 'look')).toMatchObject([
      {
        kind: 'move',
        text: 'Move T1 (its other end stays in Box D · net1 at Desk) from Box P · net1 to Box P · net2.',
        dark: ['Mixer · in1', 'Mixer · in2', "Speaker's screen"],
        back: ['Mixer · in1', 'Mixer · in2', "Speaker's screen"],
      },
    ]);
  });

  test('a file of kit that is deleted: its kits are gone and the plan cannot be kept', () => {
    const repository = repositoryWith(show).remove('kit.feedplot');
    const { code } = repository.review('--since', 'HEAD');
    const { things, new_findings } = repository.reviewJson('--since', 'HEAD');
    expect(code).toBe(1);
    expect(things.filter(({ kind }) => kind === 'kit')).toMatchObject([
      { change: 'removed', name: 'edge_box', place: { file: 'kit.feedplot', side: 'old' } },
      { change: 'removed', name: 'mixer_8' },
      { change: 'removed', name: 'camera' },
    ]);
    expect(new_findings.map(({ check }) => check)).toContain('import-missing');
  });

  test('a plan that could not be read whole in the old revision', () => {
    const broken = changed(plan, 'feed program -> speaker', 'feed program -> -> speaker ???');
    const repository = repositoryWith({ ...show, 'show.feedplot': broken }).write({ 'show.feedplot': plan });
    const { code, stdout } = repository.review('--since', 'HEAD');
    const { old, mended_findings } = repository.reviewJson('--since', 'HEAD');
    expect(code).toBe(0);
    expect(old.unreadable).toBeGreaterThan(0);
    expect(mended_findings.map(({ check }) => check)).toContain('unreadable');
    expect(stdout).toMatch(/What could not be read in HEAD \(\w+\) is not compared: \d+ places?\./);
  });

  test('spaces and letters of any script in names of files and folders', () => {
    const folder = 'Größe 大 (2)/my show';
    const repository = repositoryWith({
      [`${folder}/Абенд 夜.feedplot`]: changed(plan, 'kit.feedplot', '../kit büro.feedplot'),
      'Größe 大 (2)/kit büro.feedplot': kit,
    }).write({ 'Größe 大 (2)/kit büro.feedplot': changed(kit, 'delay 1 frame', 'delay 2 frames') });
    const { code, stdout } = repository.review('--since', 'HEAD', `${folder}/Абенд 夜.feedplot`);
    expect(code).toBe(0);
    expect(stdout).toContain('kit edge_box “Edge box”: changed: delay 1 frame → 2 frames');
  });

  test('a plan in a subfolder, asked for from above, from within and from beside', () => {
    const repository = repositoryWith({
      'shows/spring/show.feedplot': changed(plan, 'kit.feedplot', '../../kit.feedplot'),
      'kit.feedplot': kit,
      'notes/a.txt': 'x',
    });
    repository.write({ 'kit.feedplot': changed(kit, 'costs 560', 'costs 600') });
    for (const [folder, args] of [
      ['', ['shows/spring']],
      ['shows/spring', []],
      ['notes', ['../shows/spring/show.feedplot']],
    ] as const) {
      const { code, stdout } = repository.feedplot(['review', '--since', 'HEAD', ...args], {
        folder: join(repository.folder, folder),
      });
      expect(stdout).toContain('changed: cost 560 → 600');
      expect(code).toBe(0);
    }
  });

  test('a plan file that was renamed since is found by its title', () => {
    const repository = repositoryWith({ ...show, 'other.feedplot': 'plan "Another show"\n' });
    repository.git('mv', 'show.feedplot', 'lecture.feedplot');
    repository.remove('other.feedplot');
    const { code, stdout, stderr } = repository.review('--since', 'HEAD', 'lecture.feedplot');
    expect(stdout).toContain('nothing changes');
    expect(stderr).toMatch(/^lecture\.feedplot was show\.feedplot in HEAD \(\w{8}\)\.\n$/);
    expect(code).toBe(0);
  });

  test('a plan that was renamed and may be one of several is asked for, and can be named', () => {
    const repository = repositoryWith({ ...show, 'copy.feedplot': plan });
    repository.git('mv', 'show.feedplot', 'lecture.feedplot');
    repository.remove('copy.feedplot');
    const asked = repository.review('--since', 'HEAD', 'lecture.feedplot');
    expect(asked.code).toBe(2);
    expect(asked.stderr).toMatch(
      /may be one of 2: copy\.feedplot, show\.feedplot\. Name it: `--since REVISION:PATH`/,
    );
    expect(repository.review('--since', 'HEAD:copy.feedplot', 'lecture.feedplot').code).toBe(0);
    const wrong = repository.review('--since', 'HEAD:gone.feedplot', 'lecture.feedplot');
    expect(wrong).toMatchObject({ code: 2, stdout: '' });
    expect(wrong.stderr).toMatch(/no file gone\.feedplot in HEAD/);
  });

  test('a plan that is in no commit yet is new as a whole', () => {
    const repository = repositoryWith({ 'kit.feedplot': kit }).write({ 'show.feedplot': plan });
    const { code, stdout, stderr } = repository.review('--since', 'HEAD');
    expect(code).toBe(0);
    expect(stderr).toMatch(/show\.feedplot is not in HEAD \(\w{8}\): everything in it is new\.\n$/);
    expect(stdout).toContain('box box_d “Box D”: added');
    expect(stdout).not.toContain('could not be read');
    expect(stdout).not.toContain('mended');
  });

  test('a revision that does not exist', () => {
    const { code, stdout, stderr } = repositoryWith(show).review('--since', 'nowhere');
    expect(code).toBe(2);
    expect(stdout).toBe('');
    expect(stderr).toContain('feedplot: There is no commit "nowhere". Name a commit, a branch or a tag');
  });

  test.each([
    '',
    'HEAD..HEAD',
    '--all',
    '-h',
    '--output=x',
    'HEAD^{tree}',
    'HEAD\nHEAD',
    '@{',
    '^HEAD',
    ':/',
  ])('%j is no commit either', (revision) => {
    const { code, stdout } = repositoryWith(show).feedplot([
      'review',
      `--since=${revision}`,
      'show.feedplot',
    ]);
    expect(code).toBe(2);
    expect(stdout).toBe('');
  });

  test('a shallow clone says what it lacks', () => {
    const origin = repositoryWith(show);
    origin.write({ 'show.feedplot': withCamera(plan, 'close', 3) }).commit();
    const home = folderWith({});
    const folder = join(folderWith({}), 'clone');
    new TestRepository(origin.folder, home).git(
      'clone',
      '--quiet',
      '--depth',
      '1',
      `file://${origin.folder}`,
      folder,
    );
    const clone = new TestRepository(folder, home);
    const { code, stderr } = clone.review('--since', 'HEAD~1');
    expect(code).toBe(2);
    expect(stderr).toMatch(/There is no commit "HEAD~1"\. This clone is shallow.*fetch-depth: 0/);
    expect(clone.review('--since', 'HEAD').code).toBe(0);
  });

  test('no repository', () => {
    const { code, stderr } = feedplot(['review', '--since', 'HEAD'], { folder: folderWith(show) });
    expect(code).toBe(2);
    expect(stderr).toContain('This folder is in no git repository. Name two files instead');
  });

  test.skipIf(process.getuid?.() !== 0)('a repository of somebody else is told with what mends it', () => {
    const repository = repositoryWith(show);
    chownSync(repository.folder, 65_534, 65_534);
    chownSync(join(repository.folder, '.git'), 65_534, 65_534);
    const { code, stderr } = repository.review('--since', 'HEAD');
    expect(code).toBe(2);
    expect(stderr).toMatch(/belongs to somebody else.*`git config --global --add safe\.directory \/.*`/);
  });

  test('a repository without any commit', () => {
    const folder = folderWith(show);
    const repository = new TestRepository(folder, folderWith({}));
    repository.git('init', '--quiet');
    const { code, stderr } = repository.review('--since', 'HEAD');
    expect(code).toBe(2);
    expect(stderr).toContain('There is no commit "HEAD"');
  });

  test('a bare repository has no files to compare', () => {
    const origin = repositoryWith(show);
    const folder = join(folderWith({}), 'show.git');
    origin.git('clone', '--quiet', '--bare', origin.folder, folder);
    const { code, stderr } = origin.feedplot(['review', '--since', 'HEAD'], { folder });
    expect(code).toBe(2);
    expect(stderr).toContain('This is a bare repository');
  });

  test('a head that is on no branch', () => {
    const repository = repositoryWith(show);
    repository.git('switch', '--quiet', '--detach', 'HEAD');
    repository.write({ 'show.feedplot': withCamera(plan, 'close', 3) });
    expect(repository.review('--since', 'HEAD').code).toBe(0);
  });

  test('a plan in a linked work tree', () => {
    const repository = repositoryWith(show);
    const folder = join(folderWith({}), 'linked');
    repository.git('worktree', 'add', '--quiet', folder);
    writeFileSync(join(folder, 'show.feedplot'), withCamera(plan, 'close', 3));
    const { code, stdout } = repository.feedplot(['review', '--since', 'main'], { folder });
    expect(code).toBe(0);
    expect(stdout).toContain('close camera”: added');
  });

  test('a plan in a submodule, and one that imports from a submodule', () => {
    const kits = repositoryWith({ 'house.feedplot': kit });
    const repository = repositoryWith({
      'show.feedplot': changed(plan, 'kit.feedplot', 'kits/house.feedplot'),
    });
    repository.git('-c', 'protocol.file.allow=always', 'submodule', '--quiet', 'add', kits.folder, 'kits');
    repository.commit('Kits');
    repository.write({ 'kits/house.feedplot': changed(kit, 'costs 560', 'costs 600') });
    const { things, new_findings, mended_findings } = repository.reviewJson(
      '--since',
      'HEAD',
      'show.feedplot',
    );
    expect(things).toMatchObject([{ change: 'changed', kind: 'kit', name: 'edge_box' }]);
    expect([...new_findings, ...mended_findings]).toEqual([]);
    // Within the submodule it is a repository of its own.
    repository.write({ 'kits/small.feedplot': 'plan "Small"\nplace desk\n' });
    const within = repository.feedplot(['review', '--since', 'HEAD', 'small.feedplot'], {
      folder: join(repository.folder, 'kits'),
    });
    expect(within.stderr).toMatch(/small\.feedplot is not in HEAD/);
    expect(within.code).toBe(0);
  });

  test('an import through a link within the repository, and none outside it', () => {
    const repository = repositoryWith({ ...show, 'house/kit.feedplot': kit });
    repository.remove('kit.feedplot');
    execFileSync('ln', ['-s', 'house/kit.feedplot', join(repository.folder, 'kit.feedplot')]);
    execFileSync('ln', ['-s', '/etc/hostname', join(repository.folder, 'outside.feedplot')]);
    repository.commit('Links');
    repository.write({ 'show.feedplot': `${plan}import "outside.feedplot"\n` }).commit('Outside');
    const { new_findings, things } = repository.reviewJson('--since', 'HEAD~1');
    expect(things.filter(({ kind }) => kind === 'kit')).toEqual([]);
    expect(new_findings).toMatchObject([{ check: 'import-missing' }]);
    // The link was there before too: both sides say the same of it.
    expect(repository.reviewJson('--since', 'HEAD').new_findings).toEqual([]);
  });
});

describe('a merge', () => {
  /** Two branches that each add a camera: the trunk has room for one. */
  function twoCameras(): TestRepository {
    const repository = repositoryWith(show);
    repository.git('switch', '--quiet', '--create', 'left');
    repository
      .write({
        'show.feedplot': changed(plan, 'circuit white', `// left\n${camera('close', 3)}circuit white`),
      })
      .commit('Close camera');
    repository.git('switch', '--quiet', 'main');
    repository.write({ 'show.feedplot': `${plan}${camera('wide', 4)}` }).commit('Wide camera');
    return repository;
  }

  const camera = (name: string, input: number) => withCamera('', name, input);

  test('that overloads a trunk although each branch is fine is named as what brings it', () => {
    const repository = twoCameras();
    repository.git('merge', '--quiet', '--no-edit', 'left');
    const { code, stdout } = repository.review('--merge');
    expect(code).toBe(1);
    expect(stdout).toMatch(
      /^Spring lecture: 1 finding brought by the merge itself, 1 screen or input changes, /,
    );
    expect(stdout).toMatch(
      /Brought by the merge itself\nNeither parent 1 \(\w+\) nor parent 2 \(\w+\) has this alone: only together they do\.\n ! show\.feedplot:\d+: error link-overload, T1: trunk/,
    );
    const { merge } = repository.reviewJson('--merge');
    expect(merge!.findings.map(({ check, subject }) => `${check} ${subject}`)).toEqual([
      'link-overload trunk',
    ]);
    // Each branch by itself has no error.
    for (const branch of ['HEAD^1', 'HEAD^2']) {
      repository.git('switch', '--quiet', '--detach', branch);
      expect(repository.feedplot(['check']).code).toBe(0);
      repository.git('switch', '--quiet', 'main');
    }
  });

  test('that has begun and is not committed is asked in the same way', () => {
    const repository = twoCameras();
    repository.git('merge', '--quiet', '--no-commit', '--no-ff', 'left');
    const { merge, new: fresh } = repository.reviewJson('--merge');
    expect(fresh.name).toBe('work tree');
    expect(merge!.findings.map(({ check }) => check)).toEqual(['link-overload']);
  });

  test('is judged as it was committed, whatever stands in the work tree', () => {
    const repository = twoCameras();
    repository.git('merge', '--quiet', '--no-edit', 'left');
    repository.write({ 'show.feedplot': plan });
    expect(repository.reviewJson('--merge').merge!.findings).toHaveLength(1);
  });

  test('is told of without being asked for where the old side is what was merged into', () => {
    const repository = twoCameras();
    // Before it is committed, with the last commit; after that, with its first parent, as in a pull request.
    repository.git('merge', '--quiet', '--no-commit', '--no-ff', 'left');
    expect(repository.reviewJson('--since', 'HEAD').merge!.findings).toHaveLength(1);
    repository.commit('Merge');
    expect(repository.reviewJson('--since', 'HEAD^1').merge!.findings).toHaveLength(1);
    expect(repository.reviewJson('--since', 'HEAD^2').merge).toBeNull();
    expect(repository.reviewJson('--since', 'HEAD').merge).toBeNull();
  });

  test('that brings nothing of its own says so', () => {
    const repository = repositoryWith(show);
    repository.git('switch', '--quiet', '--create', 'left');
    repository.write({ 'kit.feedplot': changed(kit, 'costs 560', 'costs 600') }).commit();
    repository.git('switch', '--quiet', 'main');
    repository.write({ 'show.feedplot': withCamera(plan, 'close', 3) }).commit();
    repository.git('merge', '--quiet', '--no-edit', 'left');
    const { code, stdout } = repository.review('--merge');
    expect(code).toBe(0);
    expect(stdout).toMatch(/^Spring lecture: 0 findings brought by the merge itself\n/);
    expect(repository.reviewJson('--merge').merge!.findings).toEqual([]);
  });

  test('an error of one branch is not the fault of the merge', () => {
    const repository = repositoryWith(show);
    repository.git('switch', '--quiet', '--create', 'left');
    repository.write({ 'show.feedplot': withCamera(withCamera(plan, 'close', 3), 'wide', 4) }).commit();
    repository.git('switch', '--quiet', 'main');
    repository.write({ 'kit.feedplot': changed(kit, 'costs 560', 'costs 600') }).commit();
    repository.git('merge', '--quiet', '--no-edit', 'left');
    const { merge, new_findings } = repository.reviewJson('--merge');
    expect(merge!.findings).toEqual([]);
    expect(new_findings.map(({ check }) => check)).toContain('link-overload');
  });

  test('a head that is no merge is told', () => {
    const { code, stderr } = repositoryWith(show).review('--merge');
    expect(code).toBe(2);
    expect(stderr).toContain('HEAD is no merge, and none has begun');
  });

  test('a shallow clone of a merge says what it lacks', () => {
    const origin = twoCameras();
    origin.git('merge', '--quiet', '--no-edit', 'left');
    const home = folderWith({});
    const folder = join(folderWith({}), 'clone');
    new TestRepository(origin.folder, home).git(
      'clone',
      '--quiet',
      '--depth',
      '1',
      `file://${origin.folder}`,
      folder,
    );
    const { code, stderr } = new TestRepository(folder, home).review('--merge');
    expect(code).toBe(2);
    expect(stderr).toContain('This clone is shallow');
  });
});

describe('a repository that is not to be trusted', () => {
  /** Every way that is known in which the configuration of a repository makes git run a program. */
  function hostile(repository: TestRepository): string {
    const ran = join(folderWith({}), 'ran');
    const script = join(repository.folder, 'evil.sh');
    writeFileSync(script, `#!/bin/sh\necho "$0 $*" >> '${ran}'\ncat\n`);
    chmodSync(script, 0o755);
    const set = (name: string, value: string) => repository.git('config', name, value);
    set('core.fsmonitor', script);
    set('core.pager', script);
    set('pager.cat-file', script);
    set('pager.rev-parse', script);
    set('core.editor', script);
    set('core.askPass', script);
    set('core.sshCommand', script);
    set('core.gitProxy', script);
    set('core.alternateRefsCommand', script);
    set('credential.helper', `!${script}`);
    set('diff.external', script);
    set('diff.evil.textconv', script);
    set('diff.evil.command', script);
    set('filter.evil.clean', script);
    set('filter.evil.smudge', script);
    set('filter.evil.process', script);
    set('filter.evil.required', 'true');
    set('gpg.program', script);
    set('log.showSignature', 'true');
    for (const command of ['cat-file', 'rev-parse', 'ls-tree']) set(`alias.${command}`, `!${script}`);
    writeFileSync(join(repository.folder, '.gitattributes'), '* diff=evil filter=evil\n');
    const hooks = join(repository.folder, '.git/hooks');
    mkdirSync(hooks, { recursive: true });
    for (const hook of [
      'post-index-change',
      'reference-transaction',
      'post-checkout',
      'fsmonitor-watchman',
      'pre-auto-gc',
    ]) {
      writeFileSync(join(hooks, hook), readFileSync(script));
      chmodSync(join(hooks, hook), 0o755);
    }
    return ran;
  }

  test('runs nothing of its own', () => {
    const repository = repositoryWith(show);
    repository.write({ 'show.feedplot': withCamera(plan, 'close', 3) });
    const ran = hostile(repository);
    const { code, stdout } = repository.review('--since', 'HEAD', 'show.feedplot');
    expect(code).toBe(0);
    expect(stdout).toContain('close camera”: added');
    expect(existsSync(ran)).toBe(false);
    // The trap is sharp: git itself falls into it.
    try {
      repository.git('status');
    } catch {
      // Whatever it says: the program was run.
    }
    expect(readFileSync(ran, 'utf8')).toContain('evil.sh');
  });

  test('a partial clone that lacks a file fetches nothing, whatever program its remote is', () => {
    const repository = repositoryWith(show);
    const ran = join(folderWith({}), 'ran');
    const script = join(folderWith({}), 'evil.sh');
    writeFileSync(script, `#!/bin/sh\necho ran >> '${ran}'\n`);
    chmodSync(script, 0o755);
    repository.git('config', 'core.repositoryFormatVersion', '1');
    repository.git('config', 'extensions.partialClone', 'origin');
    repository.git('config', 'remote.origin.promisor', 'true');
    repository.git('config', 'remote.origin.url', `ext::${script}`);
    repository.git('config', 'protocol.ext.allow', 'always');
    repository.git('config', 'protocol.allow', 'always');
    const blob = repository.git('rev-parse', 'HEAD:kit.feedplot');
    const objects = join(repository.folder, '.git/objects', blob.slice(0, 2));
    execFileSync('rm', ['-rf', join(objects, blob.slice(2))]);
    const { code, stderr, stdout } = repository.review('--since', 'HEAD');
    expect(existsSync(ran)).toBe(false);
    expect(code).toBe(2);
    expect(stdout).toBe('');
    expect(stderr).toMatch(/kit\.feedplot is in HEAD \(\w+\), but this partial clone lacks its content/);
    // The trap is sharp: git itself falls into it.
    try {
      repository.git('cat-file', '-p', blob);
    } catch {
      // The program answers nothing that git understands.
    }
    expect(existsSync(ran)).toBe(true);
  });

  test('a work tree that is said to be elsewhere is not followed', () => {
    const repository = repositoryWith(show);
    const elsewhere = folderWith({ 'show.feedplot': plan });
    repository.git('config', 'core.worktree', elsewhere);
    const { code, stderr } = repository.review('--since', 'HEAD', 'show.feedplot');
    expect(code).toBe(2);
    expect(stderr).toMatch(/says that its files are in|must be run in a work tree/);
  });

  test('what speaks to git in the environment of a hook is about something else', () => {
    const repository = repositoryWith(show).write({ 'show.feedplot': withCamera(plan, 'close', 3) });
    const other = repositoryWith({ 'a.txt': 'x' });
    const env = {
      GIT_DIR: join(other.folder, '.git'),
      GIT_WORK_TREE: other.folder,
      GIT_INDEX_FILE: join(other.folder, '.git/index'),
      GIT_EXTERNAL_DIFF: '/nowhere',
    };
    const { code, stdout } = repository.feedplot(['review', '--since', 'HEAD'], { env });
    expect(stdout).toContain('close camera”: added');
    expect(code).toBe(0);
  });

  test('nothing is written into the repository', () => {
    const repository = repositoryWith(show).write({ 'show.feedplot': withCamera(plan, 'close', 3) });
    const all = () => readdirSync(repository.folder, { recursive: true, encoding: 'utf8' }).sort();
    const before = all();
    repository.review('--since', 'HEAD');
    expect(all()).toEqual(before);
  });
});

describe('outputs', () => {
  const repository = () => repositoryWith(show).write({ 'show.feedplot': withCamera(plan, 'close', 3) });

  test('the same change gives the same text, byte for byte', () => {
    const one = repository();
    for (const output of ['text', 'markdown', 'json', 'html'])
      expect(one.review('--since', 'HEAD', '--output', output)).toEqual(
        one.review('--since', 'HEAD', '--output', output),
      );
  });

  test('Markdown names files from the top of the repository, wherever it is asked', () => {
    const one = repositoryWith({ 'shows/show.feedplot': plan, 'shows/kit.feedplot': kit });
    one.write({ 'shows/show.feedplot': withCamera(plan, 'close', 3) });
    const { stdout } = one.feedplot(['review', '--since', 'HEAD', '--output', 'markdown'], {
      folder: join(one.folder, 'shows'),
    });
    expect(stdout).toContain('(`shows/show.feedplot:');
  });

  test('colour only where a person reads, and nothing is told by it alone', () => {
    const { stdout } = repository().review('--since', 'HEAD');
    expect(stdout).not.toContain('\u001b[');
  });
});
