import type { ILookaheadStrategy, IRecognitionException, IToken } from 'chevrotain';
import type { CstNodeBuilder, LexerResult } from 'langium';
import type { PlanFile } from '../generated/ast.ts';

/**
 * Private parts of Langium's parser that reading piece by piece is built on. Langium offers no service for them, so
 * they pin its minor version; `tests/language/incremental/internals.test.ts` says which of them moved.
 */
export interface ParserInternals {
  /** Builds the concrete tree while the rules run. */
  nodeBuilder: CstNodeBuilder;
  /** Where `consume` takes the comments from that stand before a token. */
  lexerResult: LexerResult | undefined;
  /** Chevrotain's parser. Setting its input resets it. */
  wrapper: {
    input: IToken[];
    readonly errors: IRecognitionException[];
    /** What tells the alternatives of the grammar apart; looked at when the parser is finished. */
    lookaheadStrategy: ILookaheadStrategy;
  };
  /** The entry rule. */
  mainRule: unknown;
  /** Runs a rule over the input and finishes the tree. */
  doParse(rule: unknown): PlanFile;
}

/** Private parts of the builder of the concrete tree. */
export interface BuilderInternals {
  rootNode: unknown;
  nodeStack: unknown[];
}
