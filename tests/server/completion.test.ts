/** What is offered where, in which order, and with what beside it. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import {
  type CompletionItem,
  CompletionItemKind,
  type CompletionList,
  CompletionTriggerKind,
  InsertTextFormat,
  type TextEdit,
} from 'vscode-languageserver-protocol';
import { Editor } from './client.ts';
import { files, show } from './small-show.ts';

const snippets = { textDocument: { completion: { completionItem: { snippetSupport: true } } } };

let editor: Editor;

beforeAll(async () => {
  const elsewhere = { 'hall/places.feedplot': 'place hall\n', 'other.feedplot': 'plan "Other"\n' };
  editor = await Editor.start({ files: { ...files, ...elsewhere }, capabilities: snippets });
  await editor.open('show.feedplot', show);
});

afterAll(() => editor[Symbol.asyncDispose]());

/** The small show with a line at its end that is being written; `|` is the cursor. */
async function offered(line: string, trigger?: string): Promise<CompletionItem[]> {
  const cursor = line.indexOf('|');
  await editor.write('show.feedplot', show + line.slice(0, cursor) + line.slice(cursor + 1));
  const context = trigger
    ? { triggerKind: CompletionTriggerKind.TriggerCharacter, triggerCharacter: trigger }
    : { triggerKind: CompletionTriggerKind.Invoked };
  const list = await editor.ask<CompletionList>('textDocument/completion', 'show.feedplot', line, {
    context,
  });
  const items = list.items.sort((a, b) => (a.sortText! < b.sortText! ? -1 : 1));
  return Promise.all(
    items.map((item) =>
      item.data ? editor.connection.sendRequest<CompletionItem>('completionItem/resolve', item) : item,
    ),
  );
}

const labels = (items: readonly CompletionItem[]) => items.map(({ label }) => label);
const textOf = (item: CompletionItem | undefined) => (item?.textEdit as TextEdit | undefined)?.newText;

test('on a fresh line: statements as patterns to fill in, each with its explanation', async () => {
  const items = await offered('|');
  expect(labels(items)).toEqual(
    expect.arrayContaining(['place', 'node', 'link', 'feed', 'accept', 'proved']),
  );
  expect(labels(items)).not.toContain('over');
  const link = items.find(({ label }) => label === 'link');
  expect(link?.insertTextFormat).toBe(InsertTextFormat.Snippet);
  expect(textOf(link)).toMatch(
    /^link \$\{1:name\} \$\{2:node\.port\} <-> \$\{3:other\.port\} over \$\{4:cat6a\}$/,
  );
  for (const item of items) expect(item.documentation, item.label).toBeTruthy();
});

test('after the dot of a node: its ports, free and fitting ones first, the others with what is plugged in', async () => {
  const items = await offered('link box_d.|');
  expect(labels(items).slice(0, 2)).toEqual(['out3', 'out4']);
  const taken = items.find(({ label }) => label === 'out1');
  expect(taken?.detail).toBe('taken: mixer.in1 · output as sdi_3g');
  expect(labels(items).indexOf('in3')).toBeGreaterThan(labels(items).indexOf('out1'));
  for (const item of items) expect(item.documentation, item.label).toBeTruthy();
  expect(labels(await offered('link box_d.out3 -> mixer.|')).slice(0, 2)).toEqual(['in3', 'in4']);
  expect(labels(await offered('link spare box_s.net2 <-> box_d.ne|')).slice(0, 1)).toEqual(['net2']);
});

test('for the end of a cable: nodes with what is free on them', async () => {
  const items = await offered('source x at stage into |');
  expect(items.map(({ label, detail }) => [label, detail])).toEqual([
    ['box_s', 'Box S · 3 free inputs'],
    ['box_d', 'Box D · 3 free inputs'],
    ['mixer', 'Mixer · 2 free inputs'],
  ]);
  expect(items[0]!.commitCharacters).toEqual(['.']);
  expect(items[0]!.documentation).toMatchObject({ value: expect.stringContaining('**box_s**') });
});

test('after `over`: only cables that carry this interface, those that reach first, with what is left', async () => {
  const items = await offered('link spare box_s.net2 <-> box_d.net2 over |');
  // IEEE 802.3 clause 55: 10GBASE-T goes 100 m on Cat 6A; the way is 40 m and twice 3 m of slack. TSB-155-A: plain
  // Cat 6 is good to 37 m and doubtful to 55 m.
  expect(items.find(({ label }) => label === 'cat6a')?.detail).toBe('reaches 100 m, 54 m to spare');
  expect(items.find(({ label }) => label === 'cat6')?.detail).toBe('reaches 55 m, 9 m to spare, doubtful');
  expect(labels(items).indexOf('cat6')).toBeGreaterThan(labels(items).indexOf('cat6a'));
  expect(labels(items)).not.toContain('rg6');
  expect(labels(await offered('link box_d.out3 -> mixer.in3 over |'))).toContain('rg6');
});

test('after `sends`: formats with their rate on the network, the house rate first', async () => {
  const items = await offered('source x at stage sends |');
  expect([items[0]!.label, items[0]!.detail]).toEqual(['1080p59.94', '2.684 Gb/s on the network']);
  expect(labels(items)).toContain('1080i50');
  for (const { label, documentation } of items.filter(({ label }) => /^\d/.test(label)))
    expect(documentation, label).toBeTruthy();
});

test('after the arrow of a feed: what nothing feeds yet first, with the delay that it would get', async () => {
  const monitor = 'destination monitor at desk takes 1080p59.94 from box_d.out3 over rg6 5 m\n';
  const items = await offered(`${monitor}feed wide -> |`);
  // Box to box: one frame in, one frame out; a frame at 59.94 is 16.68 ms.
  expect([items[0]!.label, items[0]!.detail]).toEqual(['monitor', 'not fed yet · 33.4 ms, 2 frames']);
  expect(items.find(({ label }) => label === 'screen')?.detail).toBe('fed by program');
  const lost =
    'node lone : box at desk\ndestination far at desk takes 1080p59.94 from lone.out1 over rg6 5 m\n';
  expect((await offered(`${lost}feed wide -> |`))[0]!.detail).toBe('not fed yet · no way there yet');
});

test('in a feed: sources that go nowhere yet first', async () => {
  const items = await offered('source lone at stage sends 1080p25\nfeed |');
  expect([items[0]!.label, items[0]!.detail]).toMatchObject([
    'lone',
    expect.stringMatching(/^not fed anywhere yet/),
  ]);
});

test('for a new name: what is spoken of and not declared yet', async () => {
  const items = await offered('feed wide -> host\ndestination |');
  expect(items.map(({ label, detail }) => [label, detail])).toEqual([
    ['host', 'spoken of once, not declared yet'],
  ]);
});

test('for an import: files of the workspace that are not imported yet', async () => {
  const items = await offered('import "|"');
  expect(labels(items)).toEqual(['hall/places.feedplot']);
  expect(textOf(items[0])).toBe('hall/places.feedplot');
});

test('units of the quantity that is meant, words of a setting, days', async () => {
  expect(labels(await offered('feed wide -> screen within 3 |')).slice(0, 4)).toEqual([
    'ms',
    's',
    'h',
    'frames',
  ]);
  expect(labels(await offered('run stage <-> desk 12 |'))).toEqual(expect.arrayContaining(['m', 'ft']));
  expect(labels(await offered('plan "Two" { units |'))).toEqual(['metric', 'feet']);
  expect(labels(await offered('proved program -> screen on |'))[0]).toMatch(/^\d{4}-\d\d-\d\d$/);
});

test('after `accept`: what is found now, as whole lines, then every check', async () => {
  const items = await offered('source lone at stage sends 1080p25\naccept |');
  expect(labels(items)).toContain('source-unused on lone');
  expect(textOf(items.find(({ label }) => label === 'source-unused on lone'))).toMatch(
    /^source-unused on lone "/,
  );
  expect(labels(items)).toContain('link-overload');
});

test('clauses that are not written yet, with their explanation; arrows between places and ports', async () => {
  const items = await offered('link box_d.out3 -> mixer.in3 over rg6 2 m |');
  expect(labels(items)).toEqual(expect.arrayContaining(['installed', 'as', 'standby']));
  expect(labels(items)).not.toContain('over');
  expect(labels(await offered('run stage |'))).toEqual(['<->']);
  expect(labels(await offered('link box_d.out3 |'))).toEqual(['->', '<->']);
});

test('in the block of a kit: its settings', async () => {
  const items = await offered('kit other {\n  |\n}');
  expect(labels(items)).toEqual(expect.arrayContaining(['inputs', 'outputs', 'network', 'delay', 'carries']));
  expect(labels(items)).not.toContain('place');
});

test('names that the grammar also uses as words can be completed behind', async () => {
  const named = 'node rate : box at desk\n';
  expect(labels(await offered(`${named}link rate.|`))).toEqual(
    expect.arrayContaining(['in1', 'out1', 'net1']),
  );
});

test('nothing pops up by itself where the line can end, in comments and in texts', async () => {
  expect(await offered('feed wide -> screen |', ' ')).toEqual([]);
  expect(labels(await offered('feed wide -> |', ' '))).toContain('screen');
  expect(await offered('// link box_d.|')).toEqual([]);
  expect(await offered('place hall "box_d.|"')).toEqual([]);
});

test('an editor without tab stops gets plain words', async () => {
  await using plain = await Editor.start({ files });
  await plain.open('show.feedplot', `${show}pla`);
  const { items } = await plain.ask<CompletionList>('textDocument/completion', 'show.feedplot', '\npla|');
  const place = items.find(({ label }) => label === 'place');
  expect(textOf(place)).toBe('place');
  expect(place?.kind).toBe(CompletionItemKind.Keyword);
});
