/** How the server begins and what it asks of the editor. */
import { expect, test } from 'vitest';
import { Editor } from './client.ts';

const broken = 'plan "Test"\nplace\nplace desk "Desk"\n';

test('findings carry the version of the text that they were found in', async () => {
  await using editor = await Editor.start({ files: {} });
  const findings = await editor.open('show.feedplot', broken);
  expect(findings).not.toEqual([]);
  const after = await editor.replace('show.feedplot', 'place\n', 'place stage\n');
  expect(after.filter(({ code }) => code === 'incomplete' || code === 'unreadable')).toEqual([]);
});

test('only changes of plan files are watched', async () => {
  await using editor = await Editor.start({ files: {} });
  expect(editor.registered.get('workspace/didChangeWatchedFiles')).toEqual({
    watchers: [{ globPattern: '**/*.feedplot' }],
  });
});
