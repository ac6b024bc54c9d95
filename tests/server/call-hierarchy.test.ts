/** The way of the pictures, box by box, in both directions. */
import { expect, test } from 'vitest';
import type {
  CallHierarchyIncomingCall,
  CallHierarchyItem,
  CallHierarchyOutgoingCall,
} from 'vscode-languageserver-protocol';
import { Editor } from './client.ts';
import { files, show } from './small-show.ts';

/** The tree below an item, one line each: its name, and what is said beside it. */
async function tree(where: string, direction: 'outgoing' | 'incoming'): Promise<string[]> {
  await using editor = await Editor.start({ files });
  await editor.open('show.feedplot', show);
  const [item] = await editor.ask<CallHierarchyItem[]>(
    'textDocument/prepareCallHierarchy',
    'show.feedplot',
    where,
  );
  const lines: string[] = [];
  const below = async (one: CallHierarchyItem, indent: string): Promise<void> => {
    type Call = CallHierarchyOutgoingCall | CallHierarchyIncomingCall;
    const calls = await editor.connection.sendRequest<Call[]>(`callHierarchy/${direction}Calls`, {
      item: one,
    });
    for (const call of calls) {
      const next = 'to' in call ? call.to : call.from;
      lines.push(`${indent}${next.name}: ${next.detail}`);
      await below(next, `${indent}  `);
    }
  };
  await below(item!, '');
  return lines;
}

test('from a source forward to all that it reaches, through the mixer as well', async () => {
  expect(await tree('source clo|se', 'outgoing')).toEqual([
    'box_s: close',
    '  box_d: close · over trunk',
    '    mixer: close',
    '      program: close',
    '        box_d: program',
    '          box_s: program · over trunk',
    '            screen: program',
    '      clean: close',
    '        box_d: clean · in finale',
    '          box_s: clean · over trunk · in finale',
    '            screen: clean · in finale',
  ]);
});

test('from a destination back to all that feeds it, by segment', async () => {
  expect(await tree('destination scr|een', 'incoming')).toEqual([
    'box_s: program, clean',
    '  box_d: program, clean · over trunk',
    '    program: program',
    '      mixer: wide, close',
    '        box_d: wide, close',
    '          box_s: wide, close · over trunk',
    '            wide: wide',
    '            close: close',
    '    clean: clean · in finale',
    '      mixer: close',
    '        box_d: close',
    '          box_s: close · over trunk',
    '            close: close',
  ]);
});

test('a step leads to the cable that it takes', async () => {
  await using editor = await Editor.start({ files });
  await editor.open('show.feedplot', show);
  const [item] = await editor.ask<CallHierarchyItem[]>(
    'textDocument/prepareCallHierarchy',
    'show.feedplot',
    'node box|_s',
  );
  const calls = await editor.connection.sendRequest<CallHierarchyOutgoingCall[]>(
    'callHierarchy/outgoingCalls',
    { item },
  );
  const toDesk = calls.find(({ to }) => to.name === 'box_d')!;
  expect(toDesk.fromRanges.map((range) => editor.slice('show.feedplot', range))).toEqual([
    'link trunk "T1" box_s.net1 <-> box_d.net1 over cat6a',
  ]);
});

test('there is no hierarchy where no picture goes', async () => {
  await using editor = await Editor.start({ files });
  await editor.open('show.feedplot', show);
  expect(await editor.ask('textDocument/prepareCallHierarchy', 'show.feedplot', 'place des|k')).toBeNull();
});
