import { expect, test } from 'vitest';
import { GitTrouble } from '../../../src/server/git/git.ts';
import { Repository } from '../../../src/server/git/repository.ts';
import { repositoryWith } from '../../review/repositories.ts';

test('every name of a commit will do: a branch, a tag, its hash, its grandparent', async () => {
  const made = repositoryWith({ 'a.feedplot': '1' });
  const first = made.git('rev-parse', 'HEAD');
  made.git('tag', 'v1');
  made.git('tag', '--annotate', '--message', 'Show', 'v1-show');
  made.write({ 'a.feedplot': '2' }).commit();
  made.git('switch', '--quiet', '--create', 'später/größe');
  made.write({ 'a.feedplot': '3' }).commit();
  const repository = await Repository.open(made.folder);
  for (const revision of [
    'v1',
    'v1-show',
    first,
    first.slice(0, 10),
    'HEAD~2',
    'main~1',
    'v1^{}',
    'später/größe~2',
  ])
    expect((await repository.commit(revision)).id).toBe(first);
  expect((await repository.commit('v1')).title).toBe(`v1 (${first.slice(0, 8)})`);
  expect((await repository.commit(first)).title).toBe(first.slice(0, 8));
});

test.each([
  '',
  'HEAD..HEAD',
  'HEAD...HEAD',
  '--all',
  '-h',
  '--output=x',
  'HEAD^{tree}',
  'HEAD\nHEAD',
  'HEAD\0',
  '@{',
  '^HEAD',
  ':/',
  'HEAD:a.feedplot',
])('%j names no commit', async (revision) => {
  const repository = await Repository.open(repositoryWith({ 'a.feedplot': '1' }).folder);
  await expect(repository.commit(revision)).rejects.toThrow(GitTrouble);
  await expect(repository.commit(revision)).rejects.toThrow('There is no commit');
});

test('files are read byte for byte, many at a time, and each that is missing says why', async () => {
  const made = repositoryWith({
    'a.feedplot': 'first\n',
    'b c/größe.feedplot': '\nsecond without end',
    'empty.feedplot': '',
  });
  made.git('config', 'core.quotePath', 'true');
  const repository = await Repository.open(made.folder);
  const head = await repository.commit('HEAD');
  const read = await repository.read(head, [
    'a.feedplot',
    'gone.feedplot',
    'b c/größe.feedplot',
    'b c',
    'empty.feedplot',
    'a.feedplot/under',
    'new\nline',
    '',
  ]);
  const texts = [...read].map(([path, then]) => [
    path,
    typeof then === 'string' ? then : new TextDecoder().decode(then),
  ]);
  expect(texts).toEqual([
    ['a.feedplot', 'first\n'],
    ['gone.feedplot', 'not found'],
    ['b c/größe.feedplot', '\nsecond without end'],
    ['b c', 'not found'],
    ['empty.feedplot', ''],
    ['a.feedplot/under', 'not found'],
    ['new\nline', 'not found'],
    ['', 'not found'],
  ]);
});

test('a file that is too large is not read', async () => {
  const made = repositoryWith({ 'large.feedplot': ' '.repeat(16_000_001), 'small.feedplot': 'x' });
  const repository = await Repository.open(made.folder);
  const read = await repository.read(await repository.commit('HEAD'), ['large.feedplot', 'small.feedplot']);
  expect(read.get('large.feedplot')).toBe('too large');
  expect(read.get('small.feedplot')).toEqual(Buffer.from('x'));
});

test('the names of the plans of a commit', async () => {
  const made = repositoryWith({ 'a.feedplot': '1', 'deep/er/ü b.feedplot': '2', 'c.txt': '3' });
  const repository = await Repository.open(made.folder);
  expect(await repository.planFiles(await repository.commit('HEAD'))).toEqual([
    'a.feedplot',
    'deep/er/ü b.feedplot',
  ]);
});
