import { Lexer, type TokenType } from 'chevrotain';
import { DefaultLexer, type LangiumCoreServices, type LexerResult, type TokenizeOptions } from 'langium';

/**
 * Reads a word as an ID and then looks up whether it is a keyword: trying the pattern of one keyword after the other
 * took longer than all the rest, and so did making those patterns.
 */
export class FeedplotLexer extends DefaultLexer {
  readonly #id: TokenType;
  readonly #keywords: ReadonlyMap<string, TokenType>;

  constructor(services: LangiumCoreServices) {
    super(services);
    const types = Object.values(this.definition as Record<string, TokenType>);
    this.#id = types.find(({ name }) => name === 'ID')!;
    const words = types.filter(({ name, PATTERN }) => PATTERN === Lexer.NA && name !== 'NAME');
    this.#keywords = new Map(words.map((type) => [type.name, type]));
  }

  override tokenize(text: string, options?: TokenizeOptions): LexerResult {
    const result = super.tokenize(text, options);
    for (const token of result.tokens) {
      if (token.tokenType !== this.#id) continue;
      const keyword = this.#keywords.get(token.image);
      if (!keyword) continue;
      token.tokenType = keyword;
      token.tokenTypeIdx = keyword.tokenTypeIdx!;
    }
    return result;
  }
}
