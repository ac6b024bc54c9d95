/** What is beyond all reason is told as a finding, and the server goes on. */
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { type Diagnostic, FileChangeType } from 'vscode-languageserver-protocol';
import { Editor } from './client.ts';

const codes = (diagnostics: readonly Diagnostic[]) => diagnostics.map(({ code }) => code);
const small = 'plan "Show"\nplace desk "Desk"\n';

/** Its hover still answers: nothing that was told before has brought it down. */
async function expectAlive(editor: Editor): Promise<void> {
  await editor.open('alive.feedplot', small);
  expect(await editor.ask('textDocument/hover', 'alive.feedplot', 'place de|sk')).not.toBeNull();
}

test.each([
  ['has too many characters', 'x '.repeat(2_000_001), /million characters; at most 4 million/],
  ['has too long a line', `plan "Show"\nplace ${'x'.repeat(20_001)}\n`, /more than 20000 characters/],
  ['is no text', 'plan "Show"\n\u0000\u0001', /no text/],
  ['is nothing but braces', '{ '.repeat(9_000), /Almost nothing in this file|No statement begins/],
])('a text that %s', async (_what, text, message) => {
  await using editor = await Editor.start({ files: { 'show.feedplot': small } });
  const found = await editor.open('show.feedplot', text);
  expect(codes(found)).toContain('unreadable');
  expect(found.map((one) => one.message).join('\n')).toMatch(message);
  await expectAlive(editor);
});

test('a file on disk that is too large is not even opened', async () => {
  const show = 'plan "Show"\nimport "large.feedplot"\nplace desk\n';
  await using editor = await Editor.start({ files: { 'show.feedplot': show } });
  writeFileSync(fileURLToPath(editor.uri('large.feedplot')), Buffer.alloc(16_000_001, 'x'));
  await editor.connection.sendNotification('workspace/didChangeWatchedFiles', {
    changes: [{ uri: editor.uri('large.feedplot'), type: FileChangeType.Created }],
  });
  await editor.open('show.feedplot', show);
  const found = await editor.findingsOnce('show.feedplot', (now) =>
    now.some(({ message }) => String(message).includes('too large to be a plan')),
  );
  expect(codes(found)).toContain('import-missing');
});

test('more files than a plan has', async () => {
  const names = Array.from({ length: 505 }, (_, i) => `part_${i}.feedplot`);
  const show = `plan "Show"\n${names.map((name) => `import "${name}"`).join('\n')}\n`;
  const parts = Object.fromEntries(names.map((name, i) => [name, `place p${i}\n`]));
  await using editor = await Editor.start({ files: { 'show.feedplot': show, ...parts } });
  const left = (await editor.open('show.feedplot', show)).filter(({ code }) => code === 'import-missing');
  // The plan's own file is one of the 500.
  expect(left).toHaveLength(6);
  expect(left[0]!.message).toContain('at most 500 files');
});

test('a name of 300 characters', async () => {
  await using editor = await Editor.start({ files: { 'show.feedplot': small } });
  const found = await editor.open(
    'show.feedplot',
    `${small}place ${'n'.repeat(300)}\nplace ${'長'.repeat(100)}\n`,
  );
  expect(codes(found)).toEqual(['name-long']);
  expect(found[0]!.message).toContain('has 300 characters; a name has at most 100');
});

test('more findings than anyone reads: the serious ones, and how many there are beside them', async () => {
  const lines = Array.from({ length: 300 }, (_, i) => `source s${i} at desk sends 1080p50`).join('\n');
  await using editor = await Editor.start({ files: { 'show.feedplot': small } });
  const found = await editor.open('show.feedplot', `${small}${lines}\nplace desk\n`);
  expect(found).toHaveLength(201);
  expect(codes(found)).toContain('duplicate-name');
  expect(found.at(-1)!.message).toMatch(/^\d+ more findings in this file are not shown/);
});
