import { readdirSync, readFileSync } from 'node:fs';
import { createParser, LangiumParser } from 'langium';
import { describe, expect, it } from 'vitest';
import type { PlanFile } from '../../../src/language/generated/ast.ts';
import { applyEdit } from '../../../src/language/incremental/edit.ts';
import type { FeedplotParser } from '../../../src/language/incremental/parser.ts';
import { Text } from '../../../src/language/incremental/text.ts';
import { pieceOf } from '../../../src/language/incremental/tree.ts';
import { libraryTexts } from '../../../src/language/library/texts.ts';
import { createFeedplotServices } from '../../../src/language/services.ts';
import { statementWords } from '../../../src/language/words.ts';
import { benchText } from '../../bench/plans.ts';
import { dumpTree, firstDifference } from '../../incremental/dump.ts';
import { Typist, wildEdit } from '../../incremental/edits.ts';
import { Random } from '../../incremental/random.ts';
import { everyStatement } from '../../support/every-statement.ts';

const services = createFeedplotServices().Feedplot;
const parser = services.parser.LangiumParser as FeedplotParser;
const { Lexer: lexer } = services.parser;

/** Langium's parser as it comes, over the whole file at once. */
const stock = createParser(services.Grammar, new LangiumParser(services), lexer.definition) as LangiumParser;
stock.finalize();

const examples = readdirSync('examples', { recursive: true, encoding: 'utf8' })
  // Those with mistakes in them are for the checks: a broken statement is read differently at once and piece by piece.
  .filter((file) => file.endsWith('.feedplot') && !file.startsWith('mistakes/'))
  .map((file) => [file, readFileSync(`examples/${file}`, 'utf8')] as const);
const allKinds = ['every statement', `${everyStatement.join('\n')}\n`] as const;

describe('a file read piece by piece', () => {
  it.each<readonly [string, string]>([
    ...examples,
    ...libraryTexts,
    allKinds,
    [
      'comments everywhere',
      '// a\n/* b */ place /* c */ x /* d */ "y" // e\n/** f */\n\n/* g\n */place z // h\n/* i */',
    ],
    ['Windows line ends', 'place a "x"\r\n/* b\r\n */\r\nnode b : c\r\n  at d\r\n'],
    ['two statements on a line', 'place a place b "x" run a <-> b'],
    ['only comments', '// nothing yet\n'],
    ['nothing', ''],
    ['several windows', benchText(3000)],
  ])('is what Langium reads at once: %s', (_name, text) => {
    const pieces = parser.parse<PlanFile>(text);
    const whole = stock.parse<PlanFile>(text);
    expect(pieces.lexerErrors).toEqual([]);
    expect(pieces.parserErrors).toEqual([]);
    expect(firstDifference(dumpTree(pieces), dumpTree(whole))).toBeUndefined();
  });

  it('relies on words that open a statement and stand nowhere inside one', () => {
    const keywords = new Map<string, string[]>();
    for (const rule of services.Grammar.rules) {
      const found = [
        ...(rule.$cstNode?.text ?? JSON.stringify(rule, leaveOutLinks)).matchAll(/"value":"([a-z]+)"/g),
      ];
      keywords.set(
        rule.name,
        found.map((match) => match[1]!),
      );
    }
    for (const word of statementWords) {
      const uses = [...keywords].flatMap(([rule, words]) => words.filter((w) => w === word).map(() => rule));
      expect(uses, word).toHaveLength(1);
      expect(keywords.get(uses[0]!)![0], word).toBe(word);
    }
  });

  it('has each text in the piece of its statement, comments with the statement below', () => {
    const tree = parser.readFile(Text.of('noed\nplace a // b\n/** c */\nplace d $\n// e'));
    expect(tree.pieces.map((piece) => tree.text.slice(piece.offset, piece.end))).toEqual([
      'noed',
      '\nplace a',
      ' // b\n/** c */\nplace d',
      ' $\n// e',
    ]);
    const [, second] = tree.value.statements;
    expect(pieceOf(second!.$cstNode!)).toBe(tree.pieces[2]);
    expect(tree.errors().map(({ line, column, message }) => [line, column, message])).toEqual([
      [0, 0, 'No statement begins with `noed`. Did you mean `node`?'],
      [3, 8, '`$` means nothing here.'],
    ]);
  });

  it('is read however many comments and names it has', () => {
    const comments = parser.parse<PlanFile>('//\n'.repeat(150_000));
    expect(comments.value.$cstNode!.root.fullText).toHaveLength(450_000);
    const names = parser.parse<PlanFile>(`segment a without ${'b,\n'.repeat(150_000)}c`);
    expect(names.value.statements).toHaveLength(1);
    expect(names.parserErrors).toEqual([]);
  });

  it.each([
    ['too long', 'place a\n'.repeat(500_001), /^This file has 4\.0 million characters/],
    ['no text', 'place a\0', /^This is no text/],
    ['one endless line', `place a "${'x'.repeat(20_000)}"`, /^A line of this file has more than 20000/],
    ['signs only', '*\n'.repeat(60_000), /^Almost nothing in this file/],
    ['open comments', '/* a\n'.repeat(10_000), /^Almost nothing in this file/],
    ['broken statements only', 'place\n'.repeat(3001), /^Almost nothing in this file/],
    ['too many statements', 'place a\n'.repeat(100_001), /^This file has more than 100000 statements/],
  ])('is refused with one error where it cannot be a plan: %s', (_what, text, message) => {
    const tree = parser.readFile(Text.of(text));
    expect(tree.errors().map((error) => error.message)).toEqual([expect.stringMatching(message)]);
    expect(tree.value.statements).toEqual([]);
  });
});

describe('an edit', () => {
  function edited(text: string, ...edits: [number, number, string][]) {
    const tree = parser.readFile(Text.of(text));
    for (const [start, end, by] of edits) {
      applyEdit(
        tree,
        { start, end, before: tree.text, text: tree.text.replace(start, end, by) },
        parser,
        lexer,
      );
    }
    expect(firstDifference(dumpTree(tree), dumpTree(parser.readFile(tree.text)))).toBeUndefined();
    return tree;
  }

  it('keeps all pieces but the one it is in', () => {
    const text = 'place a\nplace b\nplace c\nplace d\nplace e\n';
    const before = parser.readFile(Text.of(text));
    const { pieces } = before;
    const nodes = [...before.value.statements];
    const text23 = before.text.replace(23, 23, '\n\n"x"');
    applyEdit(before, { start: 23, end: 23, before: before.text, text: text23 }, parser, lexer);
    expect(before.pieces.map((piece, i) => piece === pieces[i])).toEqual([true, true, false, true, true]);
    expect(before.value.statements.map((node, i) => node === nodes[i])).toEqual([
      true,
      true,
      false,
      true,
      true,
    ]);
    expect(before.value.statements[4]!.$cstNode!.range.start).toEqual({ line: 6, character: 0 });
  });

  it.each<[string, string, [number, number, string][]]>([
    ['opens a comment that one below closes', 'place a\nplace b\nplace c\n/* d */\nplace e', [[8, 8, '/* ']]],
    ['closes a comment that was open', 'place a\n/* place b\nplace c\nplace d', [[22, 22, '*/']]],
    ['closes the first of several open comments', 'a/*kit\n/* \nv', [[7, 7, '/** x */ ']]],
    ['makes the keyword of the next line its own', 'place a\nplace b\nplace c', [[7, 8, '_']]],
    ['moves what stands beside it', 'place a place b place c', [[6, 7, 'long']]],
    ['splits a line break', 'place a\r\nplace b\r\nplace c', [[8, 8, 'x']]],
    ['joins a line break', 'place a\rplace b\nplace c', [[8, 15, '']]],
    ['empties the file', 'place a\n// b\n', [[0, 13, '']]],
    ['begins the file', '', [[0, 0, 'place a']]],
    ['writes before the first statement', '\n\nplace a', [[0, 0, 'x']]],
    ['writes behind comments at the end', 'place a\n// b', [[12, 12, '\nx']]],
    ['breaks a keyword', 'place a\nplace b\nplace c', [[10, 11, '']]],
    [
      'takes a keyword apart and mends it',
      'place a\nplace b\nplace c',
      [
        [10, 10, ' '],
        [10, 11, ''],
      ],
    ],
  ])('%s', (_what, text, edits) => {
    edited(text, ...edits);
  });

  it('makes a text refused, and read again', () => {
    const line = `place a "${'x'.repeat(19_990)}"\n`;
    edited(line, [8, 8, 'y'.repeat(20)], [8, 28, '']);
    edited('place a\nplace b\n', [8, 8, '\0'], [8, 9, '']);
    edited('place\n'.repeat(3000), [0, 0, 'place\n'], [0, 6, ''], [0, 5, 'place a']);
  });

  it('of any kind leaves what a fresh reading gives', () => {
    const random = new Random(20270514);
    const typist = new Typist();
    const texts = [...examples, allKinds].map(([, text]) => text);
    for (let round = 0; round < 20; round++) {
      let text = random.pick(texts).slice(0, 4000);
      if (random.below(3) === 0) text = text.replaceAll('\n', '\r\n');
      const tree = parser.readFile(Text.of(text));
      for (let i = 0; i < 25; i++) {
        const edit = round % 4 === 0 ? typist.next(text, random) : wildEdit(text, random);
        text = text.slice(0, edit.start) + edit.text + text.slice(edit.end);
        const after = tree.text.replace(edit.start, edit.end, edit.text);
        applyEdit(tree, { ...edit, before: tree.text, text: after }, parser, lexer);
        const difference = firstDifference(dumpTree(tree), dumpTree(parser.readFile(Text.of(text))));
        expect(difference, JSON.stringify(edit)).toBeUndefined();
      }
    }
  });
});

/** A rule as JSON, without the links back to what contains it. */
function leaveOutLinks(key: string, value: unknown): unknown {
  return key.startsWith('$') && key !== '$type' ? undefined : key === 'ref' ? undefined : value;
}
