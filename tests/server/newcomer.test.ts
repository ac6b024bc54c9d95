/**
 * Who writes a plan for the first time is offered every word of it where it stands: all but what only that person can
 * know, which are new names, numbers and texts.
 */
import { readFileSync } from 'node:fs';
import { CstUtils } from 'langium';
import { describe, expect, test } from 'vitest';
import { type CompletionList, CompletionTriggerKind, type Position } from 'vscode-languageserver-protocol';
import { createFeedplotServices } from '../../src/language/services.ts';
import { plansBelow } from '../support/shipped-plans.ts';
import { isOffered } from '../support/words-to-write.ts';
import { Editor } from './client.ts';

const { LangiumParser } = createFeedplotServices().Feedplot.parser;

interface Word {
  readonly text: string;
  readonly offset: number;
}

/** The words of a file that are to be offered. */
function wordsOf(text: string): Word[] {
  const root = LangiumParser.parse(text).value.$cstNode!;
  return CstUtils.flattenCst(root)
    .filter(isOffered)
    .map(({ text: word, offset }) => ({ text: word, offset }))
    .toArray();
}

function positionAt(text: string, offset: number): Position {
  const lines = text.slice(0, offset).split('\n');
  return { line: lines.length - 1, character: lines.at(-1)!.length };
}

/** Words that are not offered when the rest of their line is not written yet. */
async function notOffered(folder: string, file: string): Promise<string[]> {
  const files = Object.fromEntries(
    plansBelow(folder).map((path) => [path.slice(folder.length + 1), readFileSync(path, 'utf8')]),
  );
  await using editor = await Editor.start({ files });
  const text = files[file]!;
  await editor.open(file, text);
  const missing: string[] = [];
  for (const { text: word, offset } of wordsOf(text)) {
    const end = text.indexOf('\n', offset);
    const range = { start: positionAt(text, offset), end: positionAt(text, end) };
    await editor.edit(file, [{ range, newText: '' }]);
    const { items } = await editor.connection.sendRequest<CompletionList>('textDocument/completion', {
      textDocument: { uri: editor.uri(file) },
      position: range.start,
      context: { triggerKind: CompletionTriggerKind.Invoked },
    });
    if (!items.some(({ label }) => label === word)) {
      const line = text.slice(text.lastIndexOf('\n', offset) + 1, offset);
      missing.push(`${line}| ${word}`);
    }
    const emptied = { start: range.start, end: range.start };
    await editor.edit(file, [{ range: emptied, newText: text.slice(offset, end) }]);
  }
  return missing;
}

describe('every word is offered where it stands', () => {
  test('in the starter plan', async () => {
    expect(await notOffered('examples/starter', 'starter.feedplot')).toEqual([]);
  }, 120_000);

  test('in its kit', async () => {
    expect(await notOffered('examples/starter', 'kit.feedplot')).toEqual([]);
  }, 120_000);

  test('in the final with everything that the language has', async () => {
    expect(await notOffered('examples/finals', 'finals.feedplot')).toEqual([]);
  }, 240_000);
});
