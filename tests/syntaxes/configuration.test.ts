/** What an editor does by itself while one types: words, brackets, comments, new lines. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';

interface EnterRule {
  readonly beforeText: string;
  readonly afterText?: string;
  readonly previousLineText?: string;
  readonly action: { readonly indent: string; readonly appendText?: string; readonly removeText?: number };
}

const configuration = JSON.parse(readFileSync('syntaxes/language-configuration.json', 'utf8')) as {
  wordPattern: { pattern: string; flags: string };
  onEnterRules: EnterRule[];
  indentationRules: { increaseIndentPattern: string; decreaseIndentPattern: string };
};

it('a double click takes a name with its hyphens, a format, a number', () => {
  const { pattern, flags } = configuration.wordPattern;
  const words = 'feed clean-feed -> böx_1.in2 1080p59.94 58.5 m'.match(new RegExp(pattern, `g${flags}`));
  expect(words).toEqual(['feed', 'clean-feed', 'böx_1', 'in2', '1080p59.94', '58.5', 'm']);
});

/** What is written at the start of the next line when Enter is pressed between two texts. */
function onEnter(before: string, after = ''): string | undefined {
  const rule = configuration.onEnterRules.find(
    ({ beforeText, afterText, previousLineText }) =>
      new RegExp(beforeText).test(before) &&
      (afterText === undefined || new RegExp(afterText).test(after)) &&
      previousLineText === undefined,
  );
  return rule?.action.appendText;
}

it('a description goes on with a star, a comment that is broken goes on as one', () => {
  expect(onEnter('/** Control desk')).toBe(' * ');
  expect(onEnter('/**', ' */')).toBe(' * ');
  expect(onEnter('// where the', 'cable lies')).toBe('// ');
  expect(onEnter('// at the end')).toBeUndefined();
  expect(onEnter('place desk "Desk"')).toBeUndefined();
});

it('a block is indented, also when a brace stands in its label', () => {
  const { increaseIndentPattern, decreaseIndentPattern } = configuration.indentationRules;
  const increases = new RegExp(increaseIndentPattern);
  expect(increases.test('kit box "Box {2}" {')).toBe(true);
  expect(increases.test('node box_d : box at desk { // why')).toBe(true);
  expect(increases.test('place desk "a {"')).toBe(false);
  expect(new RegExp(decreaseIndentPattern).test('}')).toBe(true);
});
