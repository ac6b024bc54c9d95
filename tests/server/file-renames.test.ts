/** Imports follow files that get another name or another folder. */
import { expect, test } from 'vitest';
import type { WorkspaceEdit } from 'vscode-languageserver-protocol';
import { applyEdits, Editor } from './client.ts';

const files: Record<string, string> = {
  'show.feedplot': 'plan "Show"\nimport "kit/boxes.feedplot"\nimport "hall.feedplot"\n',
  'hall.feedplot': 'place desk\n',
  'kit/boxes.feedplot': 'import "cables.feedplot"\nkit box { inputs in }\n',
  'kit/cables.feedplot': 'cable thin { like rg6 }\n',
};

/** The files that change when one is renamed, with their new texts. */
async function renamed(oldName: string, newName: string): Promise<Record<string, string>> {
  await using editor = await Editor.start({ files });
  expect(editor.initialized.capabilities.workspace?.fileOperations?.willRename).toBeDefined();
  const change = await editor.connection.sendRequest<WorkspaceEdit>('workspace/willRenameFiles', {
    files: [{ oldUri: editor.uri(oldName), newUri: editor.uri(newName) }],
  });
  return Object.fromEntries(
    Object.entries(change.changes ?? {}).map(([uri, edits]) => {
      const name = editor.nameOf(uri);
      return [name, applyEdits(files[name]!, edits)];
    }),
  );
}

test('a file: what imports it, and nothing else', async () => {
  expect(await renamed('hall.feedplot', 'the hall.feedplot')).toEqual({
    'show.feedplot': files['show.feedplot']!.replace('hall.feedplot', 'the hall.feedplot'),
  });
});

test('a file that moves: its own imports too', async () => {
  expect(await renamed('kit/boxes.feedplot', 'boxes.feedplot')).toEqual({
    'show.feedplot': files['show.feedplot']!.replace('kit/boxes', 'boxes'),
    'kit/boxes.feedplot': files['kit/boxes.feedplot']!.replace('"cables', '"kit/cables'),
  });
});

test('a folder: everything that leads into it', async () => {
  expect(await renamed('kit', 'house/kit')).toEqual({
    'show.feedplot': files['show.feedplot']!.replace('kit/boxes', 'house/kit/boxes'),
  });
});
