/** What an editor shows of a whole file: outline, folds, links, growing selections; and names across the workspace. */
import { expect, test } from 'vitest';
import type {
  DocumentLink,
  DocumentSymbol,
  FoldingRange,
  LinkedEditingRanges,
  SelectionRange,
  WorkspaceSymbol,
} from 'vscode-languageserver-protocol';
import { Editor } from './client.ts';

const show = `// A lecture.
// Two lines.
plan "Lecture" {
  revision "B"
  rate 59.94
}

import "kit.feedplot"
import "missing.feedplot"

// ---- Boxes

/**
 * The one on the rail.
 */
node box_d "Box D" : box at desk {
  label in1 "Wide, left"
}
place desk "Desk"

// ---- Pictures

source cam "Camera" at desk sends 1080p59.94 into box_d.in1 over rg6 5 m
link box_d.out1 -> box_d.in2 over rg6
feed cam -> box_d.in2
`;
const kit = 'kit box "Box, small" {\n  inputs in[1..4] as sdi_3g\n  outputs out1, out2\n}\n';

async function openShow(): Promise<Editor> {
  const editor = await Editor.start({ files: { 'show.feedplot': show, 'kit.feedplot': kit } });
  await editor.open('show.feedplot', show);
  await editor.open('kit.feedplot', kit);
  return editor;
}

test('the outline lists statements with what tells them apart, and ports inside their kit', async () => {
  await using editor = await openShow();
  const outline = await editor.request<DocumentSymbol[]>('textDocument/documentSymbol', 'show.feedplot');
  expect(outline.map(({ name, detail }) => [name, detail])).toEqual([
    ['Lecture', 'revision B'],
    ['kit.feedplot', ''],
    ['missing.feedplot', ''],
    ['box_d', 'Box D · box at desk'],
    ['desk', 'Desk'],
    ['cam', 'Camera · at desk'],
    ['box_d.out1 -> box_d.in2', 'over rg6'],
    ['cam -> box_d.in2', ''],
  ]);
  expect(outline[3]!.children?.map(({ name, detail }) => [name, detail])).toEqual([['in1', 'Wide, left']]);
  expect(editor.slice('show.feedplot', outline[3]!.selectionRange)).toBe('box_d');
  expect(outline[3]!.range.end.line).toBe(17);
  const [box] = await editor.request<DocumentSymbol[]>('textDocument/documentSymbol', 'kit.feedplot');
  expect(box?.children?.map(({ name, detail }) => [name, detail])).toEqual([
    ['in[1..4]', 'inputs as sdi_3g'],
    ['out1', 'outputs'],
    ['out2', 'outputs'],
  ]);
});

test('an outline of half-typed text has what could be read', async () => {
  await using editor = await Editor.start({ files: {} });
  await editor.open('new.feedplot', 'plan\nnode\nsource cam at\nkit k { inputs in[1..\nplace desk');
  const outline = await editor.request<DocumentSymbol[]>('textDocument/documentSymbol', 'new.feedplot');
  expect(outline.map(({ name }) => name)).toEqual(expect.arrayContaining(['cam', 'desk']));
});

test('names of the whole workspace are found by name and by label', async () => {
  await using editor = await openShow();
  const find = async (query: string) => {
    const found = await editor.connection.sendRequest<WorkspaceSymbol[]>('workspace/symbol', { query });
    return found.map(({ name, location }) => `${name} in ${editor.nameOf(location.uri)}`);
  };
  expect(await find('box')).toEqual(
    expect.arrayContaining(['box in kit.feedplot', 'box_d in show.feedplot']),
  );
  expect(await find('small')).toEqual(['box in kit.feedplot']);
  expect(await find('cat6a')).toEqual([]);
});

test('blocks, comments, imports and sections can be folded', async () => {
  await using editor = await openShow();
  const folds = await editor.request<FoldingRange[]>('textDocument/foldingRange', 'show.feedplot');
  expect(folds.map(({ startLine, endLine, kind }) => [startLine, endLine, kind])).toEqual(
    expect.arrayContaining([
      [0, 1, 'comment'],
      [2, 4, undefined],
      [7, 8, 'imports'],
      [10, 19, 'region'],
      [12, 14, 'comment'],
      [15, 16, undefined],
      [20, 24, 'region'],
    ]),
  );
  expect(folds).toHaveLength(7);
});

test('an import that leads to a file is a link, one that leads nowhere is none', async () => {
  await using editor = await openShow();
  const links = await editor.request<DocumentLink[]>('textDocument/documentLink', 'show.feedplot');
  expect(
    links.map(({ range, target }) => [editor.slice('show.feedplot', range), editor.nameOf(target!)]),
  ).toEqual([['kit.feedplot', 'kit.feedplot']]);
});

test('a selection grows from the word over the clause and the statement to the group and the file', async () => {
  await using editor = await openShow();
  const position = editor.at('show.feedplot', 'label i|n1');
  const [selection] = await editor.request<SelectionRange[]>('textDocument/selectionRange', 'show.feedplot', {
    positions: [position],
  });
  const texts: string[] = [];
  for (let one: SelectionRange | undefined = selection; one; one = one.parent)
    texts.push(editor.slice('show.feedplot', one.range));
  const node = show.slice(show.indexOf('node box_d'), show.indexOf('place desk') - 1);
  const group = show.slice(show.indexOf('/**'), show.indexOf('\n\n// ---- Pictures'));
  expect(texts).toEqual([
    'in1',
    'label in1 "Wide, left"',
    node,
    expect.stringMatching(/^\/\*\*[\s\S]*\}$/),
    group,
    show,
  ]);
});

test('a name and its uses are typed over together where all of them are in one file', async () => {
  await using editor = await openShow();
  const linked = (name: string, where: string) =>
    editor.ask<LinkedEditingRanges | null>('textDocument/linkedEditingRange', name, where);
  const ranges = (await linked('show.feedplot', 'source ca|m'))?.ranges;
  expect(ranges?.map(({ start }) => start.line)).toEqual([22, 24]);
  expect(await linked('show.feedplot', 'feed ca|m')).toBeNull();
  expect(await linked('kit.feedplot', 'kit bo|x')).toBeNull();
});
