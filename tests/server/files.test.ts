/** Files as they come: renamed, deleted, changed outside the editor, linked, misnamed, and not always text. */
import { chmodSync, mkdirSync, readFileSync, renameSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { type Diagnostic, FileChangeType } from 'vscode-languageserver-protocol';
import { Editor } from './client.ts';

const show = (path = 'kit.feedplot') =>
  `plan "Show"\nimport "${path}"\nplace desk\nnode box : edge at desk\n`;
const kit = 'kit edge "Edge box" { draws 18 W }\n';

const codes = (diagnostics: readonly Diagnostic[]) => diagnostics.map(({ code }) => code);
const pathOf = (editor: Editor, name: string) => fileURLToPath(editor.uri(name));

/** Tells the server of changes on disk as an editor does, then waits for an answer that comes after them. */
async function changed(editor: Editor, changes: Record<string, FileChangeType>): Promise<void> {
  await editor.connection.sendNotification('workspace/didChangeWatchedFiles', {
    changes: Object.entries(changes).map(([name, type]) => ({ uri: editor.uri(name), type })),
  });
  await editor.connection.sendRequest('workspace/symbol', { query: '' });
}

/** The findings once they are what is expected, which a change on disk brings about in its own time. */
async function become(editor: Editor, name: string, wanted: (found: unknown[]) => boolean): Promise<void> {
  for (let tries = 0; tries < 100; tries++) {
    if (wanted(codes(editor.lastFindings(name)))) return;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  expect(codes(editor.lastFindings(name)), `findings of ${name}`).toBe('what was expected');
}

const missing = (found: unknown[]) => found.includes('import-missing');
const present = (found: unknown[]) => !found.includes('import-missing');

const isNothing = (answer: unknown) => answer === null || (Array.isArray(answer) && answer.length === 0);

test('a file that is deleted, written again and renamed outside the editor', async () => {
  await using editor = await Editor.start({ files: { 'show.feedplot': show(), 'kit.feedplot': kit } });
  expect(missing(codes(await editor.open('show.feedplot', show())))).toBe(false);
  rmSync(pathOf(editor, 'kit.feedplot'));
  await changed(editor, { 'kit.feedplot': FileChangeType.Deleted });
  await become(editor, 'show.feedplot', missing);
  writeFileSync(pathOf(editor, 'kit.feedplot'), kit);
  await changed(editor, { 'kit.feedplot': FileChangeType.Created });
  await become(editor, 'show.feedplot', present);
  renameSync(pathOf(editor, 'kit.feedplot'), pathOf(editor, 'boxes.feedplot'));
  await changed(editor, { 'kit.feedplot': FileChangeType.Deleted, 'boxes.feedplot': FileChangeType.Created });
  await become(editor, 'show.feedplot', missing);
  const after = await editor.replace('show.feedplot', '"kit.feedplot"', '"boxes.feedplot"');
  expect(present(codes(after))).toBe(true);
});

test('a file that is changed outside the editor counts as it is now, unless the editor has it open', async () => {
  await using editor = await Editor.start({ files: { 'show.feedplot': show(), 'kit.feedplot': kit } });
  await editor.open('show.feedplot', show());
  writeFileSync(pathOf(editor, 'kit.feedplot'), 'kit other { }\n');
  await changed(editor, { 'kit.feedplot': FileChangeType.Changed });
  await become(editor, 'show.feedplot', (found) => found.includes('unknown-name'));
  await editor.open('kit.feedplot', kit);
  await become(editor, 'show.feedplot', (found) => !found.includes('unknown-name'));
  rmSync(pathOf(editor, 'kit.feedplot'));
  await changed(editor, { 'kit.feedplot': FileChangeType.Deleted });
  await become(editor, 'show.feedplot', present);
});

test('what was typed and not saved is gone when the file is closed', async () => {
  await using editor = await Editor.start({ files: { 'show.feedplot': show(), 'kit.feedplot': kit } });
  await editor.open('show.feedplot', show());
  await editor.open('kit.feedplot', 'kit other { }\n');
  await become(editor, 'show.feedplot', (found) => found.includes('unknown-name'));
  await editor.close('kit.feedplot');
  await become(editor, 'show.feedplot', (found) => !found.includes('unknown-name'));
});

test('folders that are added to the workspace and taken out of it', async () => {
  await using editor = await Editor.start({
    files: {
      'show.feedplot': 'plan "Show"\n',
      '../more/other.feedplot': 'plan "Other"\nplace here\nplace here\n',
    },
  });
  const folder = { uri: editor.uri('../more').replace(/\/$/, ''), name: 'more' };
  const change = (event: object) =>
    editor.connection.sendNotification('workspace/didChangeWorkspaceFolders', { event });
  await change({ added: [folder], removed: [] });
  await become(editor, '../more/other.feedplot', (found) => found.includes('duplicate-name'));
  await change({ added: [], removed: [folder] });
  await become(editor, '../more/other.feedplot', (found) => found.length === 0);
});

test.each([
  ['spaces and letters beyond ASCII', 'große halle/kit täfel (1).feedplot'],
  ['signs that mean something in an address', 'a#b/100% & more.feedplot'],
])('names with %s', async (_what, name) => {
  await using editor = await Editor.start({ files: { 'show.feedplot': show(name), [name]: kit } });
  expect(codes(await editor.open('show.feedplot', show(name)))).not.toContain('import-missing');
});

test('a mark at the beginning and Windows line ends move nothing', async () => {
  const marked = `\uFEFF${kit.replaceAll('\n', '\r\n')}kit edge { }\r\n`;
  await using editor = await Editor.start({ files: { 'show.feedplot': show(), 'kit.feedplot': marked } });
  await editor.open('show.feedplot', show());
  await become(editor, 'kit.feedplot', (found) => found.includes('duplicate-name'));
  const [twice] = editor.lastFindings('kit.feedplot').filter(({ code }) => code === 'duplicate-name');
  expect(twice!.range.start).toEqual({ line: 1, character: 4 });
});

test('files that are no text say so, and the others are read', async () => {
  await using editor = await Editor.start({ files: { 'show.feedplot': show(), 'kit.feedplot': kit } });
  writeFileSync(pathOf(editor, 'latin.feedplot'), Buffer.from('place a\nplace b\xfcro\n', 'latin1'));
  writeFileSync(pathOf(editor, 'wide.feedplot'), Buffer.from('\uFEFFplace a\n', 'utf16le'));
  await changed(editor, {
    'latin.feedplot': FileChangeType.Created,
    'wide.feedplot': FileChangeType.Created,
  });
  await become(editor, 'wide.feedplot', (found) => found.includes('unreadable'));
  const [latin] = editor.lastFindings('latin.feedplot');
  expect(latin!.message).toContain('not UTF-8');
  expect(latin!.range.start).toEqual({ line: 1, character: 7 });
  expect(editor.lastFindings('wide.feedplot')[0]!.message).toContain('UTF-16');
  expect(codes(await editor.open('show.feedplot', show()))).not.toContain('import-missing');
});

test('a folder with the name of a file breaks nothing', async () => {
  await using editor = await Editor.start({ files: { 'show.feedplot': show(), 'kit.feedplot': kit } });
  mkdirSync(pathOf(editor, 'folder.feedplot'));
  await changed(editor, { 'folder.feedplot': FileChangeType.Created });
  expect(codes(await editor.open('show.feedplot', show()))).not.toContain('import-missing');
  const after = await editor.replace('show.feedplot', '"kit.feedplot"', '"folder.feedplot"');
  expect(codes(after)).toContain('import-missing');
});

test.each([
  ['up and out', '../secret.feedplot'],
  ['far up', '../../../../../../../../etc/hostname'],
  ['absolute', '/etc/hostname'],
  ['with an address', 'file:///etc/hostname'],
  ['backwards', '..\\secret.feedplot'],
  ['out and in again', 'sub/../../secret.feedplot'],
])('an import that leads outside of the workspace is not followed: %s', async (_what, path) => {
  const text = `plan "Show"\nimport "${path}"\nplace desk\nnode box : edge at desk\n`;
  await using editor = await Editor.start({ files: { 'show.feedplot': text, '../secret.feedplot': kit } });
  const found = await editor.open('show.feedplot', text);
  expect(codes(found)).toContain('import-missing');
  expect(await editor.ask('textDocument/definition', 'show.feedplot', ': ed|ge')).toSatisfy(isNothing);
});

test('a link inside the workspace is followed, one that leads out of it is not', async () => {
  const files = { 'show.feedplot': show('inside.feedplot'), 'kit.feedplot': kit, '../secret.feedplot': kit };
  await using editor = await Editor.start({ files });
  symlinkSync(pathOf(editor, 'kit.feedplot'), pathOf(editor, 'inside.feedplot'));
  symlinkSync(pathOf(editor, '../secret.feedplot'), pathOf(editor, 'outside.feedplot'));
  expect(codes(await editor.open('show.feedplot', show('inside.feedplot')))).not.toContain('import-missing');
  const after = await editor.replace('show.feedplot', '"inside.feedplot"', '"outside.feedplot"');
  expect(codes(after)).toContain('import-missing');
  expect(await editor.ask('textDocument/definition', 'show.feedplot', ': ed|ge')).toSatisfy(isNothing);
});

test('of letters that come in a burst the last is told, for the text as it is then', async () => {
  await using editor = await Editor.start({ files: { 'show.feedplot': show(), 'kit.feedplot': kit } });
  await editor.open('show.feedplot', show());
  const typed = [...'\nplace stage'].map((letter, i) => {
    const line = i === 0 ? 2 : 3;
    const character = i === 0 ? 10 : i - 1;
    return { letter, position: { line, character } };
  });
  const uri = editor.uri('show.feedplot');
  for (const [i, { letter, position }] of typed.entries()) {
    void editor.connection.sendNotification('textDocument/didChange', {
      textDocument: { uri, version: i + 2 },
      contentChanges: [{ range: { start: position, end: position }, text: letter }],
    });
  }
  const symbols = await editor.connection.sendRequest<{ name: string }[]>('textDocument/documentSymbol', {
    textDocument: { uri },
  });
  expect(JSON.stringify(symbols)).toContain('stage');
  await become(editor, 'show.feedplot', (found) => !found.includes('unreadable'));
});

test('links that lead round in circles are passed by', async () => {
  const files = {
    'show.feedplot': show('round.feedplot'),
    'kit.feedplot': kit,
    'sub/other.feedplot': 'place a\n',
  };
  await using editor = await Editor.start({ files });
  symlinkSync(pathOf(editor, 'circle.feedplot'), pathOf(editor, 'round.feedplot'));
  symlinkSync(pathOf(editor, 'round.feedplot'), pathOf(editor, 'circle.feedplot'));
  symlinkSync(pathOf(editor, '.'), pathOf(editor, 'sub/up'));
  // The folder is read again, with a folder in it that holds itself.
  const folder = { uri: editor.uri('').replace(/\/$/, ''), name: 'show' };
  for (const event of [
    { added: [], removed: [folder] },
    { added: [folder], removed: [] },
  ])
    await editor.connection.sendNotification('workspace/didChangeWorkspaceFolders', { event });
  expect(codes(await editor.open('show.feedplot', show('round.feedplot')))).toContain('import-missing');
  const after = await editor.replace('show.feedplot', '"round.feedplot"', '"kit.feedplot"');
  expect(present(codes(after))).toBe(true);
});

test('a path may go up and down again inside the workspace', async () => {
  const text = show('../kit/./kit.feedplot');
  await using editor = await Editor.start({
    files: { 'shows/show.feedplot': text, 'kit/kit.feedplot': kit },
  });
  expect(codes(await editor.open('shows/show.feedplot', text))).not.toContain('import-missing');
});

test('a folder that is deleted, or has another name, with all that is in it', async () => {
  await using editor = await Editor.start({
    files: { 'show.feedplot': show('house/kit.feedplot'), 'house/kit.feedplot': kit },
  });
  await editor.open('show.feedplot', show('house/kit.feedplot'));
  renameSync(pathOf(editor, 'house'), pathOf(editor, 'hall'));
  await changed(editor, { house: FileChangeType.Deleted, 'hall/kit.feedplot': FileChangeType.Created });
  await become(editor, 'show.feedplot', missing);
  const after = await editor.replace('show.feedplot', '"house/kit.feedplot"', '"hall/kit.feedplot"');
  expect(present(codes(after))).toBe(true);
  rmSync(pathOf(editor, 'hall'), { recursive: true });
  await changed(editor, { hall: FileChangeType.Deleted });
  await become(editor, 'show.feedplot', missing);
});

test('line ends that change, in the editor and on disk', async () => {
  await using editor = await Editor.start({ files: { 'show.feedplot': show(), 'kit.feedplot': kit } });
  const text = `${show()}place desk\n`;
  const found = await editor.open('show.feedplot', text);
  await editor.close('show.feedplot');
  const windows = await editor.open('show.feedplot', text.replaceAll('\n', '\r\n'));
  expect(windows).toEqual(found);
  writeFileSync(pathOf(editor, 'kit.feedplot'), kit.replaceAll('\n', '\r\n'));
  await changed(editor, { 'kit.feedplot': FileChangeType.Changed });
  const after = await editor.replace('show.feedplot', 'place desk\r\nnode', 'place desk\r\n\r\nnode');
  // While somebody types, what is costly to check comes behind the rest.
  expect(codes(after).sort()).toEqual(codes(found).sort());
});

test('what lies in a folder that may only be read is read, and nothing is written there', async () => {
  await using editor = await Editor.start({
    files: { 'show.feedplot': show('house/kit.feedplot'), 'house/kit.feedplot': kit },
  });
  chmodSync(pathOf(editor, 'house/kit.feedplot'), 0o444);
  chmodSync(pathOf(editor, 'house'), 0o555);
  try {
    expect(codes(await editor.open('show.feedplot', show('house/kit.feedplot')))).not.toContain(
      'import-missing',
    );
    await editor.open('house/kit.feedplot', kit);
    await editor.request('textDocument/formatting', 'house/kit.feedplot', {
      options: { tabSize: 2, insertSpaces: true },
    });
    expect(readFileSync(pathOf(editor, 'house/kit.feedplot'), 'utf8')).toBe(kit);
  } finally {
    chmodSync(pathOf(editor, 'house'), 0o755);
  }
});
