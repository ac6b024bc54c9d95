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

test('a finding leads to what its check means, where the editor can show it', async () => {
  await using editor = await Editor.start({ files: {}, initializationOptions: { showsExplanations: true } });
  const [finding] = await editor.open('show.feedplot', broken);
  expect(finding?.codeDescription?.href).toBe(`feedplot-explanation:/${finding?.code}.md`);
  const explained = (check: string) => editor.connection.sendRequest('feedplot/explanation', { check });
  expect(await explained(String(finding?.code))).toContain('**What mends it.**');
  expect(await explained('link-too-green')).toBeNull();
  expect(await explained('__proto__')).toBeNull();
});

test('an editor that cannot show an explanation gets no link that leads nowhere', async () => {
  await using editor = await Editor.start({ files: {} });
  const findings = await editor.open('show.feedplot', broken);
  expect(findings.length).toBeGreaterThan(0);
  for (const { codeDescription } of findings) expect(codeDescription).toBeUndefined();
});
