/** The formatter over the protocol: a file, a selection, and as one types. What it writes is tested in tests/language. */
import { expect, test } from 'vitest';
import type { TextEdit } from 'vscode-languageserver-protocol';
import { applyEdits, Editor } from './client.ts';

const options = { tabSize: 2, insertSpaces: true };
const untidy = 'place   a "A"\nplace b\n\nrun a<->b 3m\nkit k {inputs x\n outputs y}\n';

async function editing(text: string): Promise<Editor> {
  const editor = await Editor.start({ files: {} });
  await editor.open('show.feedplot', text);
  return editor;
}

test('a whole file', async () => {
  await using editor = await editing(untidy);
  const edits = await editor.request<TextEdit[]>('textDocument/formatting', 'show.feedplot', { options });
  const tidy = 'place a "A"\nplace b\n\nrun a <-> b 3 m\nkit k {\n  inputs x\n  outputs y\n}\n';
  expect(applyEdits(untidy, edits)).toBe(tidy);
  await editor.edit('show.feedplot', edits);
  expect(await editor.request('textDocument/formatting', 'show.feedplot', { options })).toEqual([]);
});

test('a selection, and nothing beside it', async () => {
  await using editor = await editing(untidy);
  const range = { start: { line: 3, character: 0 }, end: { line: 3, character: 12 } };
  const edits = await editor.request<TextEdit[]>('textDocument/rangeFormatting', 'show.feedplot', {
    range,
    options,
  });
  expect(applyEdits(untidy, edits)).toBe(untidy.replace('a<->b 3m', 'a <-> b 3 m'));
});

test('the line that was just ended, but not the space where the next one is written', async () => {
  const text = 'place   a\nrun a<->b 3m\n\n\n\nplace   b\n';
  await using editor = await editing(text);
  const position = { line: 2, character: 0 };
  const edits = await editor.request<TextEdit[]>('textDocument/onTypeFormatting', 'show.feedplot', {
    position,
    ch: '\n',
    options,
  });
  expect(applyEdits(text, edits)).toBe(text.replace('a<->b 3m', 'a <-> b 3 m'));
});

test('a line that is being broken stays broken until it is whole', async () => {
  const text = 'source cam at a\n\n';
  await using editor = await editing(text);
  const position = { line: 1, character: 0 };
  const edits = await editor.request<TextEdit[]>('textDocument/onTypeFormatting', 'show.feedplot', {
    position,
    ch: '\n',
    options,
  });
  expect(edits).toEqual([]);
});

test('the block that a brace closes', async () => {
  const text = 'kit k {inputs  x\n}\nplace   a\n';
  await using editor = await editing(text);
  const position = { line: 1, character: 1 };
  const edits = await editor.request<TextEdit[]>('textDocument/onTypeFormatting', 'show.feedplot', {
    position,
    ch: '}',
    options,
  });
  expect(applyEdits(text, edits)).toBe('kit k {\n  inputs x\n}\nplace   a\n');
});

test('a file that cannot be read whole is left alone', async () => {
  await using editor = await editing('place   a\n/* never closed\n');
  expect(await editor.request('textDocument/formatting', 'show.feedplot', { options })).toEqual([]);
  expect(editor.log.join('\n')).toMatch(/Line 2 cannot be read, so nothing was changed/);
});
