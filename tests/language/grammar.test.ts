import { AstUtils, GrammarAST } from 'langium';
import { describe, expect, it } from 'vitest';
import type { PlanFile } from '../../src/language/generated/ast.ts';
import { FeedplotGrammar } from '../../src/language/generated/grammar.ts';
import { createFeedplotServices } from '../../src/language/services.ts';
import { blockWords } from '../../src/language/words.ts';
import { everyStatement } from '../support/every-statement.ts';

const { LangiumParser: parser } = createFeedplotServices().Feedplot.parser;

function parse(text: string) {
  const { value, parserErrors, lexerErrors } = parser.parse<PlanFile>(text);
  return {
    statements: value.statements,
    messages: [...parserErrors, ...lexerErrors].map((error) => error.message),
  };
}

describe('the grammar', () => {
  it.each(everyStatement)('reads %s', (text) => {
    const { statements, messages } = parse(text);
    expect(messages).toEqual([]);
    expect(statements).toHaveLength(1);
    expect(statements[0]!.$cstNode!.text).toBe(text);
  });

  it('reads each kind of statement', () => {
    const kinds = new Set(everyStatement.map((text) => parse(text).statements[0]!.$type));
    expect([...kinds].sort()).toEqual(
      [
        'PlanHead',
        'Import',
        'Place',
        'Run',
        'Circuit',
        'Kit',
        'Cable',
        'Interface',
        'Node',
        'Source',
        'Destination',
        'Link',
        'Feed',
        'Segment',
        'Black',
        'Uplink',
        'Stock',
        'Case',
        'Accept',
        'Measured',
        'Proved',
      ].sort(),
    );
  });

  it.each([
    'rate',
    'delay',
    'class',
    'port',
    'label',
    'in',
    'audio',
    'network',
    'loss',
    'any',
    'm',
    'ms',
    'frames',
    'W',
    'C',
  ])('lets %s name a thing', (name) => {
    const { statements, messages } = parse(
      `node ${name} : ${name} at ${name}\nlink ${name} ${name}.${name} <-> b.in over ${name} 3 m`,
    );
    expect(messages).toEqual([]);
    expect(statements.map((s) => s.$type)).toEqual(['Node', 'Link']);
  });

  it.each(['box_1', 'left-wing', 'Bühne', 'Σκηνή', '舞台', 'кабель_2', '_x', 'été-2'])(
    'takes %s for a name',
    (name) => {
      expect(parse(`place ${name}`)).toMatchObject({ messages: [], statements: [{ name }] });
    },
  );

  it('ends a name before an arrow without spaces', () => {
    expect(parse('feed bench->judges').messages).toEqual([]);
    expect(parse('link a.b<->c.d over cat6a 3m').messages).toEqual([]);
  });

  it('does not let an unfinished setting eat the next', () => {
    const { statements } = parse('kit box { delay 1\n draws 18 W }');
    expect(statements[0]).toMatchObject({ delays: [{ value: '1' }], draws: [{ value: '18', unit: 'W' }] });
    expect(statements[0]).not.toHaveProperty('delays.0.unit');
  });

  it('keeps what is written twice', () => {
    expect(parse('node a : k : k2 at p at q').statements[0]).toMatchObject({
      kits: [{ $refText: 'k' }, { $refText: 'k2' }],
    });
  });
});

/** The words with which an element of the grammar can begin. */
function openings(element: GrammarAST.AbstractElement): string[] {
  if (GrammarAST.isKeyword(element)) return [element.value];
  if (GrammarAST.isAlternatives(element)) return element.elements.flatMap(openings);
  if (GrammarAST.isGroup(element)) return openings(element.elements[0]!);
  if (GrammarAST.isAssignment(element)) return openings(element.terminal);
  const rule = (element as GrammarAST.RuleCall).rule.ref as GrammarAST.ParserRule;
  return openings(rule.definition);
}

/** By rule: what can stand between its `{` and `}`. */
function blocksOf(grammar: GrammarAST.Grammar): Record<string, string[]> {
  const blocks: Record<string, string[]> = {};
  for (const rule of grammar.rules.filter(GrammarAST.isParserRule))
    for (const group of AstUtils.streamAst(rule.definition).filter(GrammarAST.isGroup)) {
      const open = group.elements.findIndex((part) => GrammarAST.isKeyword(part) && part.value === '{');
      if (open >= 0) blocks[rule.name] = openings(group.elements[open + 1]!);
    }
  return blocks;
}

describe('messages of the parser', () => {
  it.each([
    [
      'node 4k_box "x" : k at p',
      'A name is expected after `node`, and a name begins with a letter: `4` does not.',
    ],
    ['noed x : y', 'No statement begins with `noed`. Did you mean `node`?'],
    ['feed a ->', 'A name is expected after `->`.'],
    [
      'source at desk',
      'A name is expected after `source`: `at` is a word of the language and cannot name anything.',
    ],
    ['link a.b <-> c', '`.` is expected after `c`.'],
    ['place “desk”', 'A name is expected after `place`, not `“desk”`.'],
    ['place x $', '`$` means nothing here.'],
    ['/* open', 'This comment is not closed: write */ where it ends.'],
    [
      'plan "x" { headrom 10 % date 2027-05-14 }',
      'Nothing in the block of a `plan` begins with `headrom`. Did you mean `headroom`?',
    ],
    [
      'node n : k { socket in1 "x" firmware "1" }',
      'Nothing in the block of a `node` begins with `socket`. What can be set there: `label`, `gives`, `firmware`, `address`.',
    ],
    ['kit k { delay 1 frame node n : k', '`}` is expected after `frame`.'],
    ['node n : k att p', 'No statement begins with `att`. Did you mean `at`?'],
    ['proved a -> b on May', 'A date such as 2027-05-14 is expected after `on`, not `May`.'],
  ])('%s', (text, message) => {
    expect(parse(text).messages).toContain(message);
  });

  it('know every word that a block can have', () => {
    const known = Object.entries(blockWords).map(([rule, { words }]) => [rule, [...words].sort()]);
    const blocks = Object.entries(blocksOf(FeedplotGrammar())).map(([rule, words]) => [rule, words.sort()]);
    expect(known).toEqual(blocks);
  });

  it('name no class, token or offset', () => {
    for (const statement of everyStatement) {
      for (let length = 1; length < statement.length; length += 3) {
        for (const message of parse(statement.slice(0, length)).messages) {
          expect(message).not.toMatch(/Token|RULE|undefined|NAME|\bID\b|offset|Expecting|EOF/);
        }
      }
    }
  });
});
