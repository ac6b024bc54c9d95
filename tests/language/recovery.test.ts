import { describe, expect, it } from 'vitest';
import type { PlanFile } from '../../src/language/generated/ast.ts';
import { createFeedplotServices } from '../../src/language/services.ts';
import { everyStatement } from '../support/every-statement.ts';

const { LangiumParser: parser, Lexer: lexer } = createFeedplotServices().Feedplot.parser;

/**
 * A good statement after one that is cut off after any of its tokens: what the person has not finished typing must
 * not hide the line below.
 */
describe('a broken line', () => {
  const followers = everyStatement.map((text) => ({ text, type: typeOf(text) }));

  it.each(everyStatement)('never hides the statement after it: %s', (statement) => {
    const lost: string[] = [];
    const { tokens } = lexer.tokenize(statement);
    for (let count = 1; count < tokens.length; count++) {
      const cut = statement.slice(0, tokens[count - 1]!.endOffset! + 1);
      for (const { text, type } of followers) {
        const { statements } = parser.parse<PlanFile>(`place before\n${cut}\n${text}\nplace behind`).value;
        const [last, behind] = [statements.at(-2), statements.at(-1)];
        const kept =
          last?.$type === type && last.$cstNode?.text === text && behind?.$cstNode?.text === 'place behind';
        if (!kept) lost.push(`${JSON.stringify(cut)} hides ${JSON.stringify(text)}`);
      }
    }
    expect(lost).toEqual([]);
  });
});

function typeOf(text: string): string {
  return parser.parse<PlanFile>(text).value.statements[0]!.$type;
}
