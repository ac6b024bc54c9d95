import { Lexer, type TokenType } from 'chevrotain';
import { DefaultTokenBuilder, type GrammarAST, type TokenBuilderOptions } from 'langium';
import { isReserved } from './words.ts';

/**
 * Makes NAME a category: an ID is one, and so is every keyword that is not reserved. So `rate`, `delay` or `in` can
 * name things, at the cost of no grammar rule. Keywords that are words have no pattern: the lexer reads them as IDs.
 */
export class FeedplotTokenBuilder extends DefaultTokenBuilder {
  override buildTokens(grammar: GrammarAST.Grammar, options?: TokenBuilderOptions): TokenType[] {
    const tokens = super.buildTokens(grammar, options) as TokenType[];
    const name = tokens.find((token) => token.name === 'NAME')!;
    name.PATTERN = Lexer.NA;
    for (const token of tokens) {
      const isWord = isKeyword(token) && /^[a-zA-Z]/.test(token.name);
      if (isWord) token.PATTERN = Lexer.NA;
      if (token.name === 'ID' || (isWord && !isReserved(token.name))) token.CATEGORIES = [name];
    }
    return tokens;
  }

  /** Nothing is read as a keyword that could go on. */
  protected override findLongerAlt(): TokenType[] {
    return [];
  }
}

function isKeyword(token: TokenType): boolean {
  return typeof token.PATTERN === 'string';
}
