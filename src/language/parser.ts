import type { IToken } from 'chevrotain';
import { createParser, type LangiumCoreServices, LangiumParser } from 'langium';
import { isStatementWord } from './words.ts';

/** The part of Chevrotain's parser that recovery is steered by; Langium keeps it in a private field. */
interface RecoveringParser {
  LA(ahead: number): IToken;
  canTokenTypeBeDeletedInRecovery(): boolean;
}

/**
 * A parser that never skips the first word of a statement to mend the line before it: `link` without its ends, on the
 * line above `place desk`, must not take `desk` for its own.
 */
export class FeedplotParser extends LangiumParser {
  constructor(services: LangiumCoreServices) {
    super(services);
    const recovering = (this as unknown as { wrapper: RecoveringParser }).wrapper;
    recovering.canTokenTypeBeDeletedInRecovery = () => !isStatementWord(recovering.LA(1).image);
  }
}

export function createFeedplotParser(services: LangiumCoreServices): FeedplotParser {
  const parser = createParser(
    services.Grammar,
    new FeedplotParser(services),
    services.parser.Lexer.definition,
  );
  parser.finalize();
  return parser;
}
