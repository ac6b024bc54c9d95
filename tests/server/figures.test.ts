/** Figures in the margin and behind the line, colours of names, and how the plan stands. */
import { expect, test } from 'vitest';
import type {
  CodeLens,
  InlayHint,
  MarkupContent,
  SemanticTokens,
  SemanticTokensDelta,
} from 'vscode-languageserver-protocol';
import { Editor, type EditorOptions } from './client.ts';
import { files, show } from './small-show.ts';

async function openShow(options: Partial<EditorOptions> = {}, text = show): Promise<Editor> {
  const editor = await Editor.start({ files, ...options });
  await editor.open('show.feedplot', text);
  return editor;
}

async function hints(editor: Editor): Promise<[line: string, label: string][]> {
  const end = { line: 1000, character: 0 };
  const range = { start: { line: 0, character: 0 }, end };
  const found = await editor.request<InlayHint[]>('textDocument/inlayHint', 'show.feedplot', { range });
  const lines = editor.text('show.feedplot').split('\n');
  return found.map(({ position, label }) => [
    lines[position.line]!.slice(0, position.character),
    label as string,
  ]);
}

test('hints: load of the trunk both ways, length from the runs, delay and way of each feed', async () => {
  await using editor = await openShow();
  const found = await hints(editor);
  expect(found).toEqual([
    ['link trunk "T1" box_s.net1 <-> box_d.net1 over cat6a', '46 m'],
    ['link trunk "T1" box_s.net1 <-> box_d.net1 over cat6a', '53.7 % →  26.8 % ←'],
    ['feed wide -> mixer.in1', '33.4 ms, 2 frames by trunk'],
    ['feed close -> mixer.in2', '33.4 ms, 2 frames by trunk'],
    ['feed program -> screen', '83.4 ms, 5 frames by trunk'],
    ['feed clean -> screen instead of program in finale', '83.4 ms, 5 frames by trunk'],
  ]);
});

test('a hint that is pointed at tells the whole story', async () => {
  await using editor = await openShow();
  const range = { start: { line: 0, character: 0 }, end: { line: 1000, character: 0 } };
  const [, load, feed] = await editor.request<InlayHint[]>('textDocument/inlayHint', 'show.feedplot', {
    range,
  });
  const told = async (hint: InlayHint | undefined) => {
    const { tooltip } = await editor.connection.sendRequest<InlayHint>('inlayHint/resolve', hint);
    return (tooltip as MarkupContent).value;
  };
  expect(await told(load)).toMatch(/\*\*trunk\*\*[\s\S]*wide, close/);
  expect(await told(feed)).toMatch(/`wide` → `mixer\.in1`: \*\*33\.4 ms/);
});

test('hints follow what is typed, and can be asked for a part of the file', async () => {
  await using editor = await openShow();
  await editor.replace('show.feedplot', 'stage <-> desk 40 m', 'stage <-> desk 50 m');
  expect((await hints(editor))[0]![1]).toBe('56 m');
  const position = { line: 0, character: 0 };
  const range = { start: position, end: { line: 3, character: 0 } };
  expect(await editor.request('textDocument/inlayHint', 'show.feedplot', { range })).toEqual([]);
});

test('each kind of hint and the lenses can be switched off', async () => {
  const settings = { hints: { load: false, length: false, delay: true }, lenses: false };
  await using editor = await openShow({ settings });
  expect((await hints(editor)).map(([line]) => line)).toEqual([
    'feed wide -> mixer.in1',
    'feed close -> mixer.in2',
    'feed program -> screen',
    'feed clean -> screen instead of program in finale',
  ]);
  expect(await editor.request('textDocument/codeLens', 'show.feedplot')).toEqual([]);
  await editor.connection.sendNotification('workspace/didChangeConfiguration', {
    settings: { feedplot: { hints: { delay: false } } },
  });
  expect((await hints(editor)).map(([, label]) => label)).toEqual(['46 m', '53.7 % →  26.8 % ←']);
});

test('an editor is told to ask again when another file of the plan has changed, or a setting', async () => {
  const refreshSupport = { refreshSupport: true };
  const capabilities = { workspace: { inlayHint: refreshSupport, codeLens: refreshSupport } };
  await using editor = await openShow({ capabilities });
  await editor.open('kit.feedplot', files['kit.feedplot']);
  await editor.replace('kit.feedplot', 'delay 1 frame', 'delay 2 frames');
  await editor.wasAsked('workspace/inlayHint/refresh');
  await editor.wasAsked('workspace/codeLens/refresh');
  expect((await hints(editor))[2]![1]).toBe('66.7 ms, 4 frames by trunk');
});

/** The lenses of a file, each with what it says once it is seen. */
async function lensesOf(editor: Editor, name: string): Promise<CodeLens[]> {
  const lenses = await editor.request<CodeLens[]>('textDocument/codeLens', name);
  return Promise.all(lenses.map((lens) => editor.connection.sendRequest<CodeLens>('codeLens/resolve', lens)));
}

test('lenses: what a node carries, how full a link is, how often a kit is used', async () => {
  await using editor = await openShow({ initializationOptions: { showsPlaces: true } });
  const lenses = await lensesOf(editor, 'show.feedplot');
  const lines = editor.text('show.feedplot').split('\n');
  const titles = lenses.map(({ range, command }) => [lines[range.start.line]!.split(' ')[1], command!.title]);
  expect(titles).toEqual([
    ['box_s', 'carries 4 pictures · 6 of 10 ports free'],
    ['box_d', 'carries 4 pictures · 5 of 10 ports free'],
    ['mixer', 'carries 4 pictures · 2 of 6 ports free'],
    ['trunk', '4 feeds, 53.7 %'],
    ['finale', '1 picture of its own, 1 ended'],
  ]);
  const [nodeLens] = lenses;
  expect(nodeLens!.command).toMatchObject({ command: 'feedplot.showPlaces' });
  expect(nodeLens!.command!.arguments![0].places).toHaveLength(4);
  await editor.open('kit.feedplot', files['kit.feedplot']);
  const kits = await lensesOf(editor, 'kit.feedplot');
  expect(kits.map(({ command }) => command!.title)).toEqual(['used 2 times', 'used 1 time']);
});

test('a lens of an editor that cannot show places is words alone', async () => {
  await using editor = await openShow();
  const [lens] = await lensesOf(editor, 'show.feedplot');
  expect(lens!.command!.command).toBe('');
});

const legend = (editor: Editor) => editor.initialized.capabilities.semanticTokensProvider!.legend.tokenTypes;

function words(editor: Editor, data: readonly number[]): string[] {
  const lines = editor.text('show.feedplot').split('\n');
  const found: string[] = [];
  let line = 0;
  let character = 0;
  for (let i = 0; i < data.length; i += 5) {
    const [down, right, length, type] = data.slice(i, i + 4) as [number, number, number, number];
    line += down;
    character = down > 0 ? right : character + right;
    found.push(`${lines[line]!.slice(character, character + length)} ${legend(editor)[type]}`);
  }
  return found;
}

test('names have the colour of what they stand for, also those that are words elsewhere', async () => {
  await using editor = await openShow({}, `${show}node rate : box at desk\n`);
  const { data } = await editor.request<SemanticTokens>('textDocument/semanticTokens/full', 'show.feedplot');
  const found = words(editor, data);
  expect(found.slice(0, 5)).toEqual([
    'desk namespace',
    'stage namespace',
    'stage namespace',
    'desk namespace',
    'box_s variable',
  ]);
  expect(found).toEqual(
    expect.arrayContaining(['net1 property', 'cat6a struct', 'program function', 'finale enumMember']),
  );
  expect(found.slice(-3)).toEqual(['rate variable', 'box class', 'desk namespace']);
});

test('colours after an edit are told as a difference, which gives what a fresh answer gives', async () => {
  await using editor = await openShow();
  const first = await editor.request<SemanticTokens>('textDocument/semanticTokens/full', 'show.feedplot');
  await editor.replace('show.feedplot', 'place desk', '// a line\nplace hall "Hall"\nplace desk');
  const delta = await editor.request<SemanticTokensDelta>(
    'textDocument/semanticTokens/full/delta',
    'show.feedplot',
    {
      previousResultId: first.resultId,
    },
  );
  const data = [...first.data];
  for (const { start, deleteCount, data: added = [] } of [...delta.edits].reverse())
    data.splice(start, deleteCount, ...added);
  const fresh = await editor.request<SemanticTokens>('textDocument/semanticTokens/full', 'show.feedplot');
  expect(data).toEqual(fresh.data);
  expect(words(editor, data)).toContain('hall namespace');
});

test('how the plan stands: its findings and the link with the most on it, asked from any of its files', async () => {
  await using editor = await openShow({}, `${show}link mixer.out1 -> box_d.in3 over rg6 1 m\n`);
  const health = await editor.connection.sendRequest('feedplot/health', { uri: editor.uri('kit.feedplot') });
  expect(health).toMatchObject({
    plan: editor.uri('show.feedplot'),
    title: 'Small show',
    errors: 1,
    worst: { name: 'trunk', share: '53.7 %', segment: null },
  });
  await editor.open('lone.feedplot', 'place desk\n');
  expect(
    await editor.connection.sendRequest('feedplot/health', { uri: editor.uri('lone.feedplot') }),
  ).toBeNull();
});
