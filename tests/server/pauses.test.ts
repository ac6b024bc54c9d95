/** Checks that no keystroke waits for are asked when the typing pauses, and what they said stands meanwhile. */
import { expect, test } from 'vitest';
import type { Diagnostic } from 'vscode-languageserver-protocol';
import { Editor } from './client.ts';
import { files, show } from './small-show.ts';

const told = (findings: readonly Diagnostic[]) => findings.map(({ code }) => code);
const breaks = (findings: readonly Diagnostic[]) => told(findings).includes('redundant-broken');

test('a redundant feed that one loss breaks is told in a pause, stands while typing goes on, and goes', async () => {
  await using editor = await Editor.start({ files });
  expect(await editor.open('show.feedplot', show)).toEqual([]);

  // One trunk, so losing it leaves the screen dark.
  expect(
    told(await editor.replace('show.feedplot', 'feed program -> screen', 'feed program -> screen redundant')),
  ).toEqual([]);
  const [finding] = await editor.findingsOnce('show.feedplot', breaks);
  expect(finding).toMatchObject({ code: 'redundant-broken', severity: 1 });

  // Typing in another line: the finding stands, on its own line, without a pause.
  expect(told(await editor.replace('show.feedplot', '"Wide camera"', '"Wide camera, left"'))).toEqual([
    'redundant-broken',
  ]);
  expect(
    told(await editor.replace('show.feedplot', 'left" at stage sends', 'left" at hall sends')),
  ).toContain('redundant-broken');
  await editor.replace('show.feedplot', 'left" at hall sends', 'left" at stage sends');
  const moved = await editor.replace('show.feedplot', 'place desk "Desk"', 'place gate\nplace desk "Desk"');
  const line = editor.text('show.feedplot').split('\n').indexOf('feed program -> screen redundant');
  expect(moved.map(({ range }) => range.start.line)).toEqual([line]);

  // Its own line is typed in: it is not said of words that are no longer there.
  expect(
    told(await editor.replace('show.feedplot', 'feed program -> screen redundant', 'feed program -> screen')),
  ).toEqual([]);
  await editor.findingsOnce('show.feedplot', (findings) => !breaks(findings));
});

test('what opens with a plan is told at once, the costly too', async () => {
  const texts = { ...files, 'show.feedplot': show.replace('-> screen\n', '-> screen redundant\n') };
  await using editor = await Editor.start({ files: texts });
  expect(told(await editor.open('show.feedplot', texts['show.feedplot']))).toEqual(['redundant-broken']);
});
