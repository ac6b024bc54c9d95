import { Lexer, type TokenType } from 'chevrotain';
import { DefaultTokenBuilder, type GrammarAST, type TokenBuilderOptions } from 'langium';
import { isReserved } from './words.ts';

/**
 * Makes NAME a category: an ID is one, and so is every keyword that is not reserved. So `rate`, `delay` or `in` can
 * name things, at the cost of no grammar rule.
 */
export class FeedplotTokenBuilder extends DefaultTokenBuilder {
  override buildTokens(grammar: GrammarAST.Grammar, options?: TokenBuilderOptions): TokenType[] {
    const tokens = super.buildTokens(grammar, options) as TokenType[];
    const name = tokens.find((token) => token.name === 'NAME')!;
    name.PATTERN = Lexer.NA;
    for (const token of tokens) {
      const nameable =
        token.name === 'ID' || (/^[a-zA-Z]/.test(token.name) && isKeyword(token) && !isReserved(token.name));
      if (nameable) token.CATEGORIES = [name];
    }
    return tokens;
  }

  /** A word can go on as an ID, and nothing else can go on at all: trying every terminal on every keyword takes long. */
  protected override findLongerAlt(keyword: GrammarAST.Keyword, terminals: TokenType[]): TokenType[] {
    return /^\w/.test(keyword.value) ? terminals.filter(({ name }) => name === 'ID') : [];
  }
}

function isKeyword(token: TokenType): boolean {
  return typeof token.PATTERN === 'string';
}
