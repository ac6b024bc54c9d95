/** Neither the view nor the extension takes what does not look as it should. */
import { describe, expect, test } from 'vitest';
import { isFromView, isToView } from '../../src/extension/webview/messages.ts';
import { drawingPage } from '../../src/extension/webview/page.ts';
import { sceneOfExample } from './scenes.ts';
import { sceneMessage } from './view.ts';

const noMessages: readonly unknown[] = [
  undefined,
  null,
  '',
  'ready',
  1,
  [],
  {},
  { kind: undefined },
  { kind: 'other' },
  { kind: '__proto__' },
  { kind: { toString: () => 'ready' } },
];

describe('from the view', () => {
  test.each([
    { kind: 'ready' },
    { kind: 'place', place: null },
    { kind: 'place', place: 'desk' },
    { kind: 'open', id: 'mixer', what: 'node' },
    { kind: 'export', format: 'svg', base64: 'PHN2Zz4=' },
    { kind: 'export', format: 'png', base64: '' },
  ])('%j is taken', (message) => expect(isFromView(message)).toBe(true));

  test.each([
    ...noMessages,
    { kind: 'place' },
    { kind: 'place', place: 3 },
    { kind: 'open', id: 'mixer', what: 'command' },
    { kind: 'open', id: 3, what: 'node' },
    { kind: 'open', id: 'x'.repeat(10_001), what: 'node' },
    { kind: 'open', what: 'node' },
    { kind: 'export', format: 'exe', base64: '' },
    { kind: 'export', format: 'svg', base64: 'no base64!' },
    { kind: 'export', format: 'svg', base64: ['PHN2Zz4='] },
  ])('%j is not', (message) => expect(isFromView(message)).toBe(false));
});

describe('from the extension', () => {
  test.each([
    sceneMessage(sceneOfExample('starter')),
    sceneMessage(null),
    { kind: 'cursor', at: null },
    { kind: 'cursor', at: { kind: 'thing', names: ['mixer'] } },
    { kind: 'nothing', reason: 'No plan.', keep: false },
  ])('a message is taken', (message) => expect(isToView(message)).toBe(true));

  test.each([
    ...noMessages,
    { kind: 'scene' },
    { ...sceneMessage(null), scene: { title: 'half' } },
    { ...sceneMessage(null), plan: undefined },
    { ...sceneMessage(null), places: 'all' },
    { kind: 'cursor', at: 'mixer' },
    { kind: 'cursor', at: { kind: 'thing' } },
    { kind: 'nothing' },
  ])('%j is not', (message) => expect(isToView(message)).toBe(false));
});

test('the page runs only what bears its mark, and reads nothing but the extension', () => {
  const page = drawingPage({ script: 's.js', layout: 'l.js', nonce: 'MARK', cspSource: 'https://own' });
  const policy = /http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(page)![1]!;
  expect(Object.fromEntries(policy.split('; ').map((part) => part.split(/ (.*)/).slice(0, 2)))).toEqual({
    'default-src': "'none'",
    'script-src': "'nonce-MARK'",
    'style-src': "'nonce-MARK'",
    'img-src': 'data:',
    'connect-src': 'https://own',
    'worker-src': 'blob:',
  });
  for (const [tag] of page.matchAll(/<(script|style)\b[^>]*>/g)) expect(tag).toContain('nonce="MARK"');
  expect(page).not.toMatch(/\son\w+=|\sstyle=|javascript:/);
});
