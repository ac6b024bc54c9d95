/** Names over the protocol: where they are declared, where they are used, and what happens when they change. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type {
  DocumentHighlight,
  Location,
  LocationLink,
  Range,
  WorkspaceEdit,
} from 'vscode-languageserver-protocol';
import { applyEdits, Editor } from './client.ts';

const kit = `kit box "Box" {
  inputs in[1..4] as sdi_3g
  outputs out[1..2] as sdi_3g
  outputs loop[1..2] as sdi_3g follow in[1..2]
  network net as ethernet_10g_t
  carries uncompressed
}
`;

const show = `plan "Test" {
  rate 59.94
  slack 3 m
}
import "kit/boxes.feedplot"
place desk "Desk"
place stage "Stage"
run desk <-> stage 40 m
node box_d "Box D" : box at desk {
  label in2 "Spare"
}
node box_s : box at stage
link trunk "T1" box_s.net <-> box_d.net over cat6a
source cam at stage sends 1080p59.94 into box_s.in1 over rg6 5 m
destination wall at desk takes 1080p59.94 from box_d.out1 over rg6 5 m
feed cam -> wall via box_s.in1
accept link-unused on trunk "to come"
`;

const files = { 'kit/boxes.feedplot': kit, 'show.feedplot': show };

async function openShow(more: Record<string, string> = {}): Promise<Editor> {
  const editor = await Editor.start({ files: { ...files, ...more } });
  await editor.open('show.feedplot', show);
  return editor;
}

describe('go to definition', () => {
  test('leads from a use to the declaration, across files and into the shipped library', async () => {
    await using editor = await openShow();
    const definition = async (where: string) => {
      const links = await editor.ask<LocationLink[] | null>(
        'textDocument/definition',
        'show.feedplot',
        where,
      );
      return links?.map(
        ({ targetUri, targetSelectionRange: { start } }) =>
          `${editor.nameOf(targetUri)}:${start.line}:${start.character}`,
      );
    };
    expect(await definition('feed ca|m ->')).toEqual(['show.feedplot:13:7']);
    expect(await definition(': box| at desk')).toEqual(['kit/boxes.feedplot:0:4']);
    expect(await definition('box_s.i|n1 over')).toEqual(['kit/boxes.feedplot:1:9']);
    expect(await definition('label in|2 "Spare"')).toEqual(['kit/boxes.feedplot:1:9']);
    expect(await definition('"kit/|boxes.feedplot"')).toEqual(['kit/boxes.feedplot:0:0']);
    const [inLibrary] = (await definition('over cat6|a')) ?? [];
    expect(inLibrary).toMatch(/library\/cables\.feedplot:\d+:6$/);
    expect(await definition('fe|ed cam')).toBeUndefined();
  });
});

test('a file of the shipped library can be opened and changed: names lead to where they are then', async () => {
  await using editor = await openShow();
  const { connection } = editor;
  const cable = async () => {
    const links = await editor.ask<LocationLink[]>('textDocument/definition', 'show.feedplot', 'over cat6|a');
    return links[0]!;
  };
  const before = await cable();
  const uri = before.targetUri;
  const text = readFileSync(new URL(uri), 'utf8');
  await connection.sendNotification('textDocument/didOpen', {
    textDocument: { uri, languageId: 'feedplot', version: 1, text },
  });
  expect(await cable()).toEqual(before);
  const start = { line: 0, character: 0 };
  await connection.sendNotification('textDocument/didChange', {
    textDocument: { uri, version: 2 },
    contentChanges: [{ range: { start, end: start }, text: '// one line\n// and another\n' }],
  });
  const after = await cable();
  expect(after.targetSelectionRange.start.line).toBe(before.targetSelectionRange.start.line + 2);
  const findings = await editor.replace('show.feedplot', '"Stage"', '"Platform"');
  expect(findings.filter(({ code }) => code === 'unknown-name')).toEqual([]);

  // Once its tab is closed, it is again as it ships.
  await connection.sendNotification('textDocument/didClose', { textDocument: { uri } });
  expect(await editor.replace('show.feedplot', '"Platform"', '"Stage"')).toEqual(findings);
  expect(await cable()).toEqual(before);
});

describe('references', () => {
  test('are found in every file, and those of a row of ports all together', async () => {
    await using editor = await openShow({
      'other.feedplot': 'plan "Other"\nimport "kit/boxes.feedplot"\nnode x : box\nsource y from x.out2\n',
    });
    const uses = async (where: string, includeDeclaration = true) => {
      const found = await editor.ask<Location[]>('textDocument/references', 'show.feedplot', where, {
        context: { includeDeclaration },
      });
      return found.map(({ uri, range }) => `${editor.nameOf(uri)}:${range.start.line}`).sort();
    };
    expect(await uses(': bo|x at desk')).toEqual([
      'kit/boxes.feedplot:0',
      'other.feedplot:2',
      'show.feedplot:11',
      'show.feedplot:8',
    ]);
    expect(await uses('box_d.out|1')).toEqual([
      'kit/boxes.feedplot:2',
      'other.feedplot:3',
      'show.feedplot:14',
    ]);
    expect(await uses('box_s.in|1')).toEqual([
      'kit/boxes.feedplot:1',
      'kit/boxes.feedplot:3',
      'show.feedplot:13',
      'show.feedplot:15',
      'show.feedplot:9',
    ]);
    expect(await uses('link tr|unk', false)).toEqual(['show.feedplot:16']);
  });

  test('are marked in the file, the declaration apart', async () => {
    await using editor = await openShow();
    const marked = await editor.ask<DocumentHighlight[]>(
      'textDocument/documentHighlight',
      'show.feedplot',
      'feed ca|m',
    );
    expect(marked.map(({ range, kind }) => [range.start.line, kind])).toEqual([
      [13, 3],
      [15, 2],
    ]);
  });
});

describe('rename', () => {
  const rename = (editor: Editor, where: string, newName: string) =>
    editor.ask<WorkspaceEdit | null>('textDocument/rename', 'show.feedplot', where, { newName });

  async function renamed(where: string, newName: string): Promise<Record<string, string>> {
    await using editor = await openShow();
    const change = await rename(editor, where, newName);
    const texts: Record<string, string> = {};
    for (const [uri, edits] of Object.entries(change?.changes ?? {})) {
      const name = editor.nameOf(uri) as keyof typeof files;
      texts[name] = applyEdits(files[name], edits);
    }
    return texts;
  }

  test('changes the declaration and all uses, and nothing else', async () => {
    expect(await renamed('feed ca|m', 'close-up')).toEqual({
      'show.feedplot': show.replace('source cam', 'source close-up').replace('feed cam', 'feed close-up'),
    });
    expect(await renamed('place des|k', 'balcony')).toEqual({
      'show.feedplot': show.replaceAll(/\bdesk\b/g, 'balcony'),
    });
    expect(await renamed(': bo|x at desk', 'edge')).toEqual({
      'kit/boxes.feedplot': kit.replace('kit box', 'kit edge'),
      'show.feedplot': show.replaceAll(': box', ': edge'),
    });
  });

  test('takes a port with its whole row', async () => {
    const expected = {
      'kit/boxes.feedplot': kit
        .replace('inputs in[', 'inputs camera[')
        .replace('follow in[', 'follow camera['),
      'show.feedplot': show.replaceAll('.in1', '.camera1').replace('label in2', 'label camera2'),
    };
    expect(await renamed('box_s.in|1 over', 'camera1')).toEqual(expected);
    expect(await renamed('label in|2', 'camera2')).toEqual(expected);
  });

  test('refuses what cannot be, with a message that says why', async () => {
    await using editor = await openShow();
    const refusals: [where: string, newName: string, message: RegExp][] = [
      ['feed ca|m', 'over', /`over` is a word of the language/],
      ['feed ca|m', '4k', /`4k` is no name/],
      ['feed ca|m', 'two words', /`two words` is no name/],
      ['feed ca|m', '', /is no name/],
      ['feed ca|m', 'wall', /already a destination named `wall`/],
      ['feed ca|m', 'trunk', /already a link named `trunk`/],
      ['place des|k', 'stage', /already a place named `stage`/],
      ['box_s.in|1 over', 'camera', /`in1` is one of the row `in\[1\.\.4\]`.*end in 1, such as `camera1`/],
      ['box_s.in|1 over', 'loop1', /`box` already has a port `loop1`/],
      ['over cat6|a', 'cat', /belongs to the shipped library/],
    ];
    for (const [where, newName, message] of refusals)
      await expect(rename(editor, where, newName)).rejects.toThrow(message);
  });

  test('does not let another thing answer to a name that stands alone behind `accept … on`', async () => {
    await using editor = await openShow();
    await expect(rename(editor, 'link tr|unk', 'desk')).rejects.toThrow(/already a place named `desk`/);
    expect(await rename(editor, 'feed ca|m', 'desk')).not.toBeNull();
  });

  test('says first what would be renamed, and nothing where there is no name', async () => {
    await using editor = await openShow();
    const prepared = (where: string) =>
      editor.ask<Range | null>('textDocument/prepareRename', 'show.feedplot', where);
    const range = await prepared('box_s.in|1 over');
    expect(range && editor.slice('show.feedplot', range)).toBe('in1');
    expect(await prepared('fe|ed cam')).toBeNull();
    expect(await prepared('"kit/bo|xes')).toBeNull();
    await expect(prepared('over cat6|a')).rejects.toThrow(/shipped library/);
  });
});
