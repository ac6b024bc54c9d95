import type { ILexingError, IRecognitionException } from 'chevrotain';
import {
  type AstNode,
  createParser,
  type LangiumCoreServices,
  LangiumParser,
  type ParseResult,
  type ParserOptions,
} from 'langium';
import { LookaheadWhenAsked } from '../lookahead.ts';
import { type Refusal, refuse } from '../refusal.ts';
import { FileTree } from './file-tree.ts';
import type { ParserInternals } from './internals.ts';
import { PieceNodeBuilder } from './node-builder.ts';
import { Piece, type PieceError, type Place, placeIn } from './piece.ts';
import { readAll } from './read-all.ts';
import { settle } from './settle.ts';
import { Text } from './text.ts';
import { isOpenComment, type Run, type Stretch } from './tokens.ts';

/**
 * Reads a file piece by piece: each statement by a run of the parser of its own. So a broken statement cannot hide the
 * next, and an edit can read anew just what it touches and still give what a fresh reading gives.
 */
export class FeedplotParser extends LangiumParser {
  readonly #builder = new PieceNodeBuilder();

  constructor(services: LangiumCoreServices) {
    super(services);
    const internals = this.#internals();
    internals.nodeBuilder = this.#builder;
    const { wrapper } = internals;
    wrapper.lookaheadStrategy = new LookaheadWhenAsked(wrapper.lookaheadStrategy);
  }

  override parse<T extends AstNode = AstNode>(input: string, options: ParserOptions = {}): ParseResult<T> {
    if (options.rule) return super.parse(input, options);
    return this.readFile(Text.of(input)) as ParseResult as ParseResult<T>;
  }

  readFile(text: Text): FileTree {
    const tree = new FileTree(text);
    this.readAgain(tree, text);
    return tree;
  }

  /** Reads all of a file afresh into its tree. */
  readAgain(tree: FileTree, text: Text): void {
    const read = refuse(text) ?? readAll(this, this.lexer, text);
    if (typeof read === 'string') this.refuse(tree, text, { message: read, line: 0, column: 0 });
    else this.#replaceAll(tree, text, read);
  }

  /** Leaves a file unread: its tree is empty and says why. */
  refuse(tree: FileTree, text: Text, refusal: Refusal): void {
    this.#replaceAll(tree, text, []);
    tree.refusal = refusal;
  }

  #replaceAll(tree: FileTree, text: Text, pieces: readonly Piece[]): void {
    tree.refusal = undefined;
    tree.apply({ text, first: 0, count: tree.pieces.length, pieces, movedBy: { offset: 0, line: 0 } });
  }

  readPiece(run: Run, stretch: Stretch): Piece {
    const piece = new Piece(
      placeIn(stretch.from, run.begin),
      run.length,
      run.tokens[0] ? run.tokens[0].startOffset - run.begin.offset : -1,
      run.tokens[0] ? run.tokens[0].startLine! - 1 - run.begin.line : -1,
    );
    const { wrapper, mainRule } = this.#internals();
    this.#builder.beginPiece(piece, run.begin);
    const errors: PieceError[] = run.errors.map((error) => lexerError(error, run.begin));
    if (run.tokens.length > 0) {
      wrapper.input = run.tokens;
      this.#internals().lexerResult = { tokens: run.tokens, hidden: run.comments, errors: [] };
      piece.statement = this.#internals().doParse(mainRule).statements[0];
      if (piece.statement) settle(piece.statement);
      for (const error of wrapper.errors) errors.push(parserError(error, run.begin));
    }
    // What is left of the comments stands behind the last node.
    this.#builder.addHiddenNodes(run.comments);
    piece.items = this.#builder.endPiece();
    if (errors.length > 0) piece.errors = errors;
    piece.opensComment = run.errors.some((error) => isOpenComment(error, stretch.lexed));
    return piece;
  }

  #internals(): ParserInternals {
    return this as unknown as ParserInternals;
  }
}

function lexerError(error: ILexingError, begin: Place): PieceError {
  const line = (error.line ?? 1) - 1 - begin.line;
  return {
    from: 'lexer',
    message: error.message,
    at: error.offset - begin.offset,
    length: error.length,
    line,
    column: (error.column ?? 1) - 1 - (line === 0 ? begin.column : 0),
  };
}

/** What is missing at the end of a statement is told on its last token. */
function parserError(error: IRecognitionException, begin: Place): PieceError {
  const { token } = error;
  const previous = (error as { previousToken?: typeof token }).previousToken;
  // The end of the input has no place.
  const at = token.startOffset >= 0 ? token : (previous ?? token);
  const line = at.startLine! - 1 - begin.line;
  return {
    from: 'parser',
    message: error.message,
    at: at.startOffset - begin.offset,
    length: at.image.length,
    line,
    column: at.startColumn! - 1 - (line === 0 ? begin.column : 0),
  };
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
