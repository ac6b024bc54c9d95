/** The papers over the protocol: asked for, made in short steps, and answered for the text as it is. */
import { expect, test } from 'vitest';
import type { Hover } from 'vscode-languageserver-protocol';
import { type Book, type BookQuestion, serverRequests } from '../../src/server/protocol.ts';
import { benchText } from '../bench/plans.ts';
import { Editor } from './client.ts';
import { files, show } from './small-show.ts';

function bookOf(editor: Editor, file: string): Promise<Book | null> {
  const question: BookQuestion = { uri: editor.uri(file) };
  return editor.connection.sendRequest<Book | null>(serverRequests.book, question);
}

test('the papers of the plan that a file belongs to, with its sections and its drawings', async () => {
  await using editor = await Editor.start({ files });
  await editor.open('show.feedplot', show);
  const book = await bookOf(editor, 'show.feedplot');
  expect(book!.plan).toBe(editor.uri('show.feedplot'));
  expect(book!.parts.sections.join('')).toContain('Cable schedule');
  expect(book!.parts.cover).toContain('<h1');
  expect(book!.parts.drawings.length).toBeGreaterThan(0);
});

test('what is typed is in the next papers', async () => {
  await using editor = await Editor.start({ files });
  await editor.open('show.feedplot', show);
  expect((await bookOf(editor, 'show.feedplot'))!.parts.cover).not.toContain('Renamed on site');
  await editor.replace('show.feedplot', /plan "[^"]*"/.exec(show)![0], 'plan "Renamed on site"');
  expect((await bookOf(editor, 'show.feedplot'))!.parts.cover).toContain('Renamed on site');
});

test('a file without a plan has no papers', async () => {
  await using editor = await Editor.start({ files: { 'alone.feedplot': 'place desk\n' } });
  await editor.open('alone.feedplot', 'place desk\n');
  expect(await bookOf(editor, 'alone.feedplot')).toBeNull();
});

test('while the papers of a large plan are made, a hover is answered first', async () => {
  await using editor = await Editor.start({ files: {} });
  await editor.open('large.feedplot', benchText(2000));
  const order: string[] = [];
  const book = bookOf(editor, 'large.feedplot').then((made) => {
    order.push('book');
    return made;
  });
  const hover = editor.request<Hover | null>('textDocument/hover', 'large.feedplot', {
    position: { line: 1, character: 7 },
  });
  await Promise.all([book, hover.then(() => order.push('hover'))]);
  expect(order).toEqual(['hover', 'book']);
}, 60_000);

test('what is typed while papers are made does not get into them', async () => {
  const name = 'large.feedplot';
  await using editor = await Editor.start({ files: {} });
  await editor.open(name, benchText(2000));
  const undisturbed = await bookOf(editor, name);
  const making = bookOf(editor, name);
  await editor.replace(name, 'feed camera0_1 -> mixer0.in1', 'feed camera0_2 -> mixer0.in1');
  await editor.replace(name, 'feed program0 -> screen0_1', '// feed program0 -> screen0_1');
  expect((await making)!.parts).toEqual(undisturbed!.parts);
  expect((await bookOf(editor, name))!.parts.sections).not.toEqual(undisturbed!.parts.sections);
}, 60_000);
