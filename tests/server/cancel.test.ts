/** Nobody waits for an answer that was cancelled: it is an error, and the work for it ends. */
import { expect, test } from 'vitest';
import { CancellationTokenSource, LSPErrorCodes, ResponseError } from 'vscode-languageserver-protocol';
import { inSteps } from '../../src/server/in-steps.ts';
import { benchText } from '../bench/plans.ts';
import { Editor } from './client.ts';

const text = benchText(1500);

test('requests of every kind on a large plan', async () => {
  await using editor = await Editor.start({ files: { 'show.feedplot': text } });
  await editor.open('show.feedplot', text);
  const uri = editor.uri('show.feedplot');
  const textDocument = { uri };
  const position = { line: 40, character: 6 };
  const range = { start: { line: 0, character: 0 }, end: { line: 1400, character: 0 } };
  const requests: Record<string, object> = {
    'textDocument/hover': { textDocument, position },
    'textDocument/completion': { textDocument, position },
    'textDocument/inlayHint': { textDocument, range },
    'feedplot/drawing': { uri, place: null, have: null },
    'feedplot/book': { uri },
  };
  const outcomes = new Map<string, unknown>();
  for (const [method, params] of Object.entries(requests)) {
    const source = new CancellationTokenSource();
    const answer = editor.connection.sendRequest(method, params, source.token);
    source.cancel();
    outcomes.set(
      method,
      await answer.then(
        () => 'answered',
        (error: unknown) => (error as ResponseError<void>).code,
      ),
    );
  }
  const { RequestCancelled } = LSPErrorCodes;
  // What takes a millisecond may be answered before the editor has said that nobody waits for it.
  for (const [method, outcome] of outcomes) expect(['answered', RequestCancelled], method).toContain(outcome);
  expect(outcomes.get('feedplot/drawing')).toBe(RequestCancelled);
  expect(outcomes.get('feedplot/book')).toBe(RequestCancelled);
  expect(await editor.request('textDocument/foldingRange', 'show.feedplot')).not.toEqual([]);
});

test('long work that is cancelled on its way is given up at the next step', async () => {
  const source = new CancellationTokenSource();
  let steps = 0;
  function* work(): Generator<undefined, string> {
    for (;;) {
      steps++;
      if (steps === 3) source.cancel();
      const until = performance.now() + 9;
      while (performance.now() < until);
      yield;
    }
  }
  const error = await inSteps(work(), source.token).catch((one: unknown) => one);
  expect(error).toBeInstanceOf(ResponseError);
  expect((error as ResponseError<void>).code).toBe(LSPErrorCodes.RequestCancelled);
  expect(steps).toBe(3);
});

test('between two steps of long work other things are done', async () => {
  const done: string[] = [];
  function* work(): Generator<undefined, string> {
    for (let i = 0; i < 3; i++) {
      done.push('step');
      const until = performance.now() + 9;
      while (performance.now() < until);
      yield;
    }
    return 'all';
  }
  const answer = inSteps(work(), new CancellationTokenSource().token);
  setTimeout(() => done.push('other'), 0);
  expect(await answer).toBe('all');
  expect(done.indexOf('other')).toBeLessThan(done.lastIndexOf('step'));
});
