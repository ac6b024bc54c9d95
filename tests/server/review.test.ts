import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import {
  type Against,
  type ReviewAnswer,
  reviewRequests,
  type ShownReview,
} from '../../src/server/protocol/review.ts';
import { folderWith } from '../cli/command-line.ts';
import { TestRepository } from '../review/repositories.ts';
import { changed, kit, plan, withCamera } from '../review/shows.ts';
import { Editor } from './client.ts';

const files = { 'show.feedplot': plan, 'kit.feedplot': kit };

/** Puts the folder of an editor under git, with what is in it as the first commit. */
function repositoryOf(editor: Editor): TestRepository {
  const repository = new TestRepository(fileURLToPath(editor.uri('')), folderWith({}));
  repository.git('init', '--quiet', '--initial-branch', 'main');
  repository.commit('The show');
  return repository;
}

function ask(editor: Editor, against: Against, file = 'show.feedplot'): Promise<ReviewAnswer> {
  return editor.connection.sendRequest(reviewRequests.review, { uri: editor.uri(file), against });
}

async function reviewed(editor: Editor, against: Against, file?: string): Promise<ShownReview> {
  const answer = await ask(editor, against, file);
  if (answer.kind === 'trouble') throw new Error(answer.reason);
  return answer.review;
}

const lastCommit: Against = { kind: 'revision', revision: 'HEAD' };

describe('comparing with a commit', () => {
  test('the text as it is in the editor counts, saved or not; each line knows where it stands', async () => {
    await using editor = await Editor.start({ files });
    repositoryOf(editor);
    await editor.open('show.feedplot', plan);
    expect((await reviewed(editor, lastCommit)).headline).toBe('nothing changes');
    const text = withCamera(plan, 'close', 3);
    await editor.write('show.feedplot', text);
    const review = await reviewed(editor, lastCommit);
    expect(review.headline).toBe('1 screen or input changes, 5 steps on site');
    expect(review.compared).toMatch(/^HEAD \(\w{8}\) → as it is now\.$/);
    const things = review.sections.find(({ name }) => name === 'things')!;
    const camera = things.entries.find(({ lead }) => lead.startsWith('source close'))!;
    const line = text.split('\n').findIndex((one) => one.startsWith('source close'));
    expect(camera.place).toEqual({
      side: 'new',
      uri: editor.uri('show.feedplot'),
      range: { start: { line, character: 7 }, end: { line, character: 12 } },
    });
    expect(review.loads).toEqual([expect.objectContaining({ text: 'backward 53.7 % → 80.5 %' })]);
    expect(review.scenes.marks.after.always).toContainEqual(['close', 'added']);
  });

  test('asked from a file of kit it is the plan that is compared; what is gone is to be read in the old text', async () => {
    await using editor = await Editor.start({ files });
    repositoryOf(editor);
    await editor.open('kit.feedplot', kit);
    await editor.write('kit.feedplot', changed(kit, 'kit camera "Camera" { draws 24 W }\n', ''));
    const review = await reviewed(editor, lastCommit, 'kit.feedplot');
    expect(review.plan).toBe(editor.uri('show.feedplot'));
    const gone = review.sections
      .find(({ name }) => name === 'things')!
      .entries.find(({ lead }) => lead.includes('camera'))!;
    expect(gone.place).toMatchObject({ side: 'old', uri: editor.uri('kit.feedplot') });
    const text = await editor.connection.sendRequest(reviewRequests.textThen, {
      uri: gone.place!.uri,
      revision: 'HEAD',
    });
    expect(text).toBe(kit);
  });

  test('while a merge is in the making: what neither side has alone is told apart', async () => {
    await using editor = await Editor.start({ files });
    const repository = repositoryOf(editor);
    repository.git('switch', '--quiet', '--create', 'left');
    const left = `// left\n${withCamera('', 'close', 3)}${plan}`;
    repository.write({ 'show.feedplot': left }).commit();
    repository.git('switch', '--quiet', 'main');
    repository.write({ 'show.feedplot': withCamera(plan, 'wide', 4) }).commit();
    repository.git('merge', '--quiet', '--no-commit', '--no-ff', 'left');
    await editor.open('show.feedplot', withCamera(left, 'wide', 4));
    const { headline, sections } = await reviewed(editor, lastCommit);
    expect(headline).toMatch(/^1 finding brought by the merge itself, /);
    expect(sections[0]).toMatchObject({
      name: 'merge',
      about: expect.stringMatching(/^Neither HEAD \(\w{8}\) nor \w{8} has this alone/),
      entries: [{ lead: 'error link-overload, T1' }],
    });
  });

  test.each<[string, Against, RegExp]>([
    [
      'a revision that does not exist',
      { kind: 'revision', revision: 'nowhere' },
      /There is no commit "nowhere"/,
    ],
    ['an option in place of a revision', { kind: 'revision', revision: '--all' }, /There is no commit/],
  ])('%s is told in words', async (_, against, reason) => {
    await using editor = await Editor.start({ files });
    repositoryOf(editor);
    const answer = await ask(editor, against);
    expect(answer).toMatchObject({ kind: 'trouble', reason: expect.stringMatching(reason) });
  });

  test('without a repository, and from a file that no plan imports', async () => {
    await using editor = await Editor.start({ files: { ...files, 'alone.feedplot': 'place attic\n' } });
    expect(await ask(editor, lastCommit)).toMatchObject({
      reason: expect.stringContaining('in no git repository'),
    });
    expect(await ask(editor, lastCommit, 'alone.feedplot')).toMatchObject({
      reason: expect.stringContaining('No plan imports this file'),
    });
    const text = { uri: editor.uri('show.feedplot'), revision: 'HEAD' };
    expect(await editor.connection.sendRequest(reviewRequests.textThen, text)).toBeNull();
  });
});

describe('comparing with a file', () => {
  test('of the workspace, as it is in the editor', async () => {
    const other = changed(withCamera(plan, 'close', 3), 'Spring lecture', 'Other lecture');
    await using editor = await Editor.start({ files: { ...files, 'other.feedplot': other } });
    const against = { kind: 'file', uri: editor.uri('other.feedplot') } as const;
    const review = await reviewed(editor, against);
    expect(review.compared).toBe('other.feedplot → as it is now.');
    expect(leads(review)).toContain('source close “close camera”');
    await editor.open('other.feedplot', changed(plan, 'Spring lecture', 'Other lecture'));
    expect(leads(await reviewed(editor, against))).toEqual(['plan Spring lecture']);
  });

  test('outside of the folder that is open, which is not read', async () => {
    await using editor = await Editor.start({ files: { ...files, '../old.feedplot': plan } });
    expect(await ask(editor, { kind: 'file', uri: editor.uri('../old.feedplot') })).toMatchObject({
      kind: 'trouble',
      reason: expect.stringContaining('old.feedplot lies outside of the folder that is open'),
    });
  });

  test('that is no plan, or is not there', async () => {
    await using editor = await Editor.start({ files });
    for (const name of ['kit.feedplot', 'gone.feedplot'])
      expect(await ask(editor, { kind: 'file', uri: editor.uri(name) })).toEqual({
        kind: 'trouble',
        reason: `${name} has no plan to compare with.`,
      });
  });
});

function leads({ sections }: ShownReview): string[] {
  return sections.flatMap(({ entries }) => entries.map(({ lead }) => lead));
}
