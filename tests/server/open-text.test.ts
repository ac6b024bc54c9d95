import { TextDocument } from 'langium';
import { describe, expect, it } from 'vitest';
import type { Range } from 'vscode-languageserver-types';
import { OpenText } from '../../src/server/open-text.ts';
import { Random } from '../incremental/random.ts';

type Change = { range: Range; text: string };

function edit({ range, text }: Change) {
  return { range, newText: text };
}

describe('the text of an open file', () => {
  it('answers after any changes as a fresh document does', () => {
    const random = new Random(7);
    const text = 'place a "x"\nnode b\r\n\rrun a <-> b\n\n'.repeat(40);
    const own = new OpenText('file:///a.feedplot', 'feedplot', 1, text);
    let plain = text;
    for (let version = 2; version < 400; version++) {
      const changes = Array.from({ length: 1 + random.below(3) }, () => {
        const text = random.pick(['', 'x', '\n', '\r', '\r\n', 'a\nb', 'a\rb\r\nc\n']);
        if (random.below(40) === 0) return { text: 'place a\r\nplace b\n'.repeat(random.below(40)) };
        const position = () => ({ line: random.below(own.lineCount + 2) - 1, character: random.below(14) });
        const [a, b] = [position(), position()];
        const sorted = a.line < b.line || (a.line === b.line && a.character <= b.character);
        const near = { line: a.line, character: a.character + random.below(4) };
        if (random.below(4) > 0) return { range: { start: a, end: near }, text };
        return { range: { start: sorted ? a : b, end: sorted ? b : a }, text };
      });
      for (const change of changes) {
        // Not updated but made afresh: the stock document counts \r and \n twice where an edit brings them together.
        const before = TextDocument.create('file:///a.feedplot', 'feedplot', version, plain);
        plain = 'range' in change ? TextDocument.applyEdits(before, [edit(change as Change)]) : change.text;
        own.update([change], version);
      }
      const stock = TextDocument.create('file:///a.feedplot', 'feedplot', version, plain);
      expect(own.getText()).toBe(stock.getText());
      expect(own.version).toBe(stock.version);
      expect(own.lineCount).toBe(stock.lineCount);
      for (let i = 0; i < 20; i++) {
        const offset = random.below(stock.getText().length + 4) - 2;
        expect(own.positionAt(offset)).toEqual(stock.positionAt(offset));
        const position = { line: random.below(own.lineCount + 2) - 1, character: random.below(20) };
        expect(own.offsetAt(position)).toBe(stock.offsetAt(position));
        expect(own.getLineRange(position.line)).toEqual(stock.getLineRange(position.line));
        expect(own.getEOLCharacters(position.line)).toBe(stock.getEOLCharacters(position.line));
        const range = { start: position, end: own.positionAt(offset) };
        expect(own.getText(range)).toBe(own.getText({ start: range.end, end: range.start }));
      }
    }
  });

  it('tells what was changed since it was asked last', () => {
    const text = new OpenText('file:///a.feedplot', 'feedplot', 1, 'place a\nplace b\n');
    const at = { line: 1, character: 6 };
    text.update([{ range: { start: at, end: { line: 1, character: 7 } }, text: 'cd' }], 2);
    text.update([{ text: 'place a\nplace cxd\n' }], 3);
    const changes = text.takeChanges();
    expect(changes.map(({ start, end, text }) => [start, end, text.toString()])).toEqual([
      [14, 15, 'place a\nplace cd\n'],
      [15, 15, 'place a\nplace cxd\n'],
    ]);
    expect(changes[1]!.before).toBe(changes[0]!.text);
    expect(text.takeChanges()).toEqual([]);
  });
});
