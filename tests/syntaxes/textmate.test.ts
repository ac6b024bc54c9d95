/** The colours that an editor gives before the server answers. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { createFeedplotServices } from '../../src/language/services.ts';
import { isReserved, statementWords } from '../../src/language/words.ts';
import { UNITS } from '../../src/physics/quantity.ts';
import { plansBelow } from '../support/shipped-plans.ts';
import { type Grammar, tokenize } from './tokenize.ts';

const grammar = JSON.parse(readFileSync('syntaxes/feedplot.tmLanguage.json', 'utf8')) as Grammar;

/** The words of one line, with the last part of their scope that says something. */
function colours(line: string, before = ''): string[] {
  const pieces = tokenize(grammar, `${before}${line}`).at(-1)!;
  return pieces.filter(({ text }) => text.trim()).map(({ text, scope }) => `${text.trim()} ${short(scope)}`);
}

function short(scope: string): string {
  return scope.replace(/\.feedplot$/, '');
}

/** The scope of a word of a line. */
function scopeOf(line: string, word: string): string {
  const piece = tokenize(grammar, line)
    .flat()
    .find(({ text }) => text.trim() === word);
  return short(piece?.scope ?? 'none');
}

const keywords = Object.keys(createFeedplotServices().Feedplot.parser.Lexer.definition).filter((word) =>
  /^[A-Za-z]/.test(word),
);

describe('words of the language', () => {
  it.each(statementWords)('%s opens a statement', (word) => {
    expect(scopeOf(`${word} x`, word)).toBe('keyword.control.statement');
  });

  it('that are reserved are words wherever they stand, and never a part of a name', () => {
    const reserved = keywords.filter(
      (word) => isReserved(word) && !(statementWords as readonly string[]).includes(word),
    );
    expect(reserved.length).toBeGreaterThan(15);
    for (const word of reserved) expect(scopeOf(`node x ${word} y`, word), word).toBe('keyword.other.clause');
    for (const word of reserved) expect(scopeOf(`node ${word}_x`, word), word).toBe('none');
    for (const word of reserved) expect(scopeOf(`node x-${word}`, word), word).toBe('none');
  });

  it('all have a colour somewhere', () => {
    const text = JSON.stringify(grammar);
    const missing = keywords.filter(
      (word) => /^[A-Z]*[a-z]+$/.test(word) && !new RegExp(`\\b${word}\\b`).test(text),
    );
    expect(missing).toEqual([]);
  });
});

describe('a line', () => {
  it('of a link', () => {
    expect(colours('link trunk "T1" box_d.net1 <-> box_p.net1 over cat6a 58.5 m // spare')).toEqual([
      'link keyword.control.statement',
      'trunk entity.name.section',
      '"T1" string.quoted.double',
      'box_d variable.other.object',
      '. punctuation.accessor',
      'net1 variable.other.property',
      '<-> keyword.operator.arrow',
      'box_p variable.other.object',
      '. punctuation.accessor',
      'net1 variable.other.property',
      'over keyword.other.clause',
      'cat6a ',
      '58.5 constant.numeric',
      'm keyword.other.unit',
      '// punctuation.definition.comment',
      'spare comment.line.double-slash',
    ]);
  });

  it('of a link without a name: its first word is a node', () => {
    expect(colours('link box_d.out1 -> mixer.in2').slice(0, 4)).toEqual([
      'link keyword.control.statement',
      'box_d variable.other.object',
      '. punctuation.accessor',
      'out1 variable.other.property',
    ]);
  });

  it('of a source, with its format and clauses', () => {
    const line =
      'source cam-2 : camera sends 1920x1200p60 4:4:4 10 bit audio 2 as sdi_3g into box.in delay 2 frames';
    expect(scopeOf(line, 'cam-2')).toBe('entity.name.section');
    expect(scopeOf(line, '1920x1200p60')).toBe('constant.numeric.format');
    expect(scopeOf(line, '4:4:4')).toBe('constant.numeric.format');
    expect(scopeOf(line, 'bit')).toBe('constant.language');
    expect(scopeOf(line, 'in')).toBe('variable.other.property');
    expect(scopeOf(line, 'delay')).toBe('keyword.other.clause');
    expect(scopeOf(line, 'frames')).toBe('keyword.other.unit');
  });

  it('of a setting, in its block and not outside', () => {
    expect(colours('  rate 59.94', 'plan "P" {\n')).toEqual([
      'rate keyword.other.setting',
      '59.94 constant.numeric',
    ]);
    expect(scopeOf('node rate : box', 'rate')).toBe('entity.name.section');
    expect(colours('place a', 'plan "P" {\n}\n')[0]).toBe('place keyword.control.statement');
  });

  it('of ports in a row, a ratio, a date, an address', () => {
    expect(colours('  inputs in[1..4] as sdi_3g', 'kit k {\n').slice(0, 4)).toEqual([
      'inputs keyword.other.setting',
      'in variable.other.property',
      '[ punctuation.section.range',
      '1 constant.numeric',
    ]);
    expect(scopeOf('x 8:1', '8:1')).toBe('constant.numeric.format');
    expect(scopeOf('proved a -> b on 2027-05-14', '2027-05-14')).toBe('constant.numeric.date');
    expect(scopeOf('x 10.20.0.0/24', '10.20.0.0/24')).toBe('constant.numeric.date');
  });

  it('of text that nobody closed ends with its line', () => {
    const [open, next] = tokenize(grammar, 'place a "open\nplace b');
    expect(open!.at(-1)!.scope).toBe('invalid.illegal.unclosed-string.feedplot');
    expect(next![0]!.scope).toBe('keyword.control.statement.feedplot');
  });

  it('of a comment over lines, a description apart from others', () => {
    const [, inside, after] = tokenize(grammar, '/** One\n * two */\nplace a');
    expect(inside![0]!.scope).toBe('comment.block.documentation.feedplot');
    expect(after![0]!.scope).toBe('keyword.control.statement.feedplot');
    expect(tokenize(grammar, '/* plain */')[0]![1]!.scope).toBe('comment.block.feedplot');
  });
});

it('every unit is known behind a number', () => {
  for (const { symbol } of UNITS)
    expect(scopeOf(`x 12 ${symbol}`, symbol), symbol).toBe('keyword.other.unit');
});

it.each(plansBelow('examples').filter((file) => !file.includes('mistakes')))(
  '%s: nothing is marked as illegal, and no block stays open',
  (file) => {
    const lines = tokenize(grammar, `${readFileSync(file, 'utf8')}\nplace last`);
    expect(lines.flat().filter(({ scope }) => scope.startsWith('invalid'))).toEqual([]);
    expect(lines.at(-1)![0]).toEqual({ text: 'place', scope: 'keyword.control.statement.feedplot' });
  },
);
