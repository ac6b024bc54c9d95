/** The canonical layout: what it does, what it never does. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatText } from '../../src/language/formatter/format.ts';
import { statementWords } from '../../src/language/words.ts';
import { plansBelow } from '../support/shipped-plans.ts';

function formatted(text: string): string {
  const result = formatText(text);
  if ('refusal' in result) throw new Error(result.refusal);
  return result.text;
}

describe('the canonical layout', () => {
  it('has one statement a line and one space between words', () => {
    expect(formatted('place a   "A" place\tb\nnode n:k at a')).toBe(
      'place a "A"\nplace b\nnode n : k at a\n',
    );
  });

  it('puts a statement that was broken over lines back on one', () => {
    const text = 'source cam : camera at a\n    sends 1080p59.94\n  into box . in1\nover rg6   12m\n';
    expect(formatted(text)).toBe('source cam : camera at a sends 1080p59.94 into box.in1 over rg6 12 m\n');
  });

  it('writes blocks with one setting a line, indented by two', () => {
    const text =
      'kit k "K" {inputs in[ 1..4 ]as sdi_3g follow x carries compressed 8:1 poe class 4\n forwards}';
    expect(formatted(text)).toBe(
      'kit k "K" {\n  inputs in[1..4] as sdi_3g follow x\n  carries compressed 8:1\n  poe class 4\n  forwards\n}\n',
    );
  });

  it('sets commas, ranges, arrows and quantities in one way', () => {
    expect(formatted('feed a->b ,c.in1  via x.net1,y.net1 within 3frames')).toBe(
      'feed a -> b, c.in1 via x.net1, y.net1 within 3 frames\n',
    );
    expect(formatted('plan "P" {headroom 10% tagged}')).toBe('plan "P" {\n  headroom 10 %\n  tagged\n}\n');
  });

  it('keeps groups: one blank line stays, more become one', () => {
    expect(formatted('\n\nplace a\n\n\n\nplace b\nplace c\n\n\n')).toBe('place a\n\nplace b\nplace c\n');
    expect(formatted('plan "P" {\n\n  slack 3 m\n\n\n  tagged\n\n}')).toBe(
      'plan "P" {\n  slack 3 m\n\n  tagged\n}\n',
    );
  });

  it('keeps comments where they stand: above, behind, and between', () => {
    const text = '  // above\nplace a   // behind\n/**\n     * Says.\n   */\nplace b /* in */ "B"\n// last';
    expect(formatted(text)).toBe(
      '// above\nplace a // behind\n/**\n * Says.\n */\nplace b /* in */ "B"\n// last\n',
    );
  });

  it('never pulls a word into a comment or into text that nobody closed', () => {
    expect(formatted('source cam at a // why\n sends 1080p50')).toBe(
      'source cam at a // why\n  sends 1080p50\n',
    );
    expect(formatted('place a "open\nplace b')).toBe('place a "open\nplace b\n');
    expect(formatted('node n {\n label in1 "open\n gives\n}')).toBe(
      'node n {\n  label in1 "open\n  gives\n}\n',
    );
  });

  it('leaves the lines of a statement that is not whole as they are broken', () => {
    expect(formatted('kit k {\n    inputs in[1..\n')).toBe('kit k {\n  inputs in[1..\n');
    expect(formatted('feed a ->\nplace b')).toBe('feed a ->\nplace b\n');
    expect(formatted('place  4k_corner "Screen"')).toBe('place 4k_corner "Screen"\n');
  });

  it("keeps a file's own line ends and its byte order mark", () => {
    expect(formatted('\uFEFFplace  a\r\n/* x\r\n   y */\r\nplace b')).toBe(
      '\uFEFFplace a\r\n/* x\r\n   y */\r\nplace b\r\n',
    );
  });

  it('has nothing to write for a file without a word', () => {
    expect(formatted('')).toBe('');
    expect(formatted(' \n\n')).toBe('');
  });
});

describe('a file that cannot be read', () => {
  it('is refused with the line, not half changed', () => {
    expect(formatText('place  a\n\n/* never closed')).toEqual({
      refusal: expect.stringMatching(
        /^Line 3 cannot be read, so nothing was changed: This comment is not closed/,
      ),
    });
    expect(formatText('place  a § b')).toEqual({ refusal: expect.stringMatching(/^Line 1 cannot be read/) });
  });
});

const shipped = [...plansBelow('examples'), ...plansBelow('src/language/library')];

describe('the plans that ship', () => {
  it.each(shipped)('%s is in canonical layout', (file) => {
    const text = readFileSync(file, 'utf8');
    expect(formatted(text)).toBe(text);
  });
});

/** Words, comments and their order, without the white space around them. */
function bare(text: string): string {
  return text.replace(/\s+/g, '');
}

const piece = fc.constantFrom(
  ...statementWords,
  'box',
  'in',
  'rate',
  '.',
  ',',
  ':',
  '->',
  '<->',
  '{',
  '}',
  '[',
  ']',
  '..',
  '1',
  '12',
  '3.5',
  'm',
  '%',
  '"text"',
  '"open',
  '1080p59.94',
  '8:1',
  '// note\n',
  '/* in */',
  '/** Says.\n * more\n */',
  '\n',
  '\n\n\n',
  '  ',
  '\t',
  'as',
  'at',
  'over',
  '2027-05-14',
);

describe('whatever the text', () => {
  it('words and comments stay in order, and a second time changes nothing', () => {
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 60 }), (pieces) => {
        const text = pieces.join(' ');
        const once = formatText(text);
        if ('refusal' in once) return;
        expect(bare(once.text)).toBe(bare(text));
        expect(formatText(once.text)).toEqual(once);
      }),
      { numRuns: 400 },
    );
  });

  it('plans that ship come out as they were when the white space between their words is shaken', () => {
    const texts = shipped.map((file) => readFileSync(file, 'utf8'));
    const shaken = fc.record({
      text: fc.constantFrom(...texts),
      spaces: fc.array(fc.constantFrom(' ', '  ', '\t'), { minLength: 1, maxLength: 7 }),
    });
    fc.assert(
      fc.property(shaken, ({ text, spaces }) => {
        let i = 0;
        // Only between words that stand on one line and are no comment: the rest of white space has a meaning.
        const lines = text
          .split('\n')
          .map((line) =>
            /["“/*]/.test(line) ? line : line.replace(/ /g, () => spaces[i++ % spaces.length]!),
          );
        expect(formatted(lines.join('\n'))).toBe(text);
      }),
      { numRuns: 60 },
    );
  });
});
