import type { IToken } from 'chevrotain';
import { AstUtils, GrammarAST, type LangiumDocument, type LexerResult } from 'langium';
import { findNextFeatures, type NextFeature } from 'langium/lsp';
import type { Position, Range } from 'vscode-languageserver';
import { isStatementWord, statementWords } from '../../language/words.ts';
import { statementBefore } from '../positions.ts';
import type { FeedplotLspServices } from '../services.ts';

/** What can be written next, as the grammar says it. */
export type Next =
  | { readonly kind: 'word'; readonly word: string }
  /** A name of something that is declared: where it stands in the grammar, and what it must be. */
  | { readonly kind: 'name'; readonly slot: string; readonly of: string }
  /** Anything else: a number, a format, a new name, a text. */
  | { readonly kind: 'value'; readonly slot: string; readonly token: string };

/** A place where something is being written. */
export interface Where {
  readonly document: LangiumDocument;
  readonly offset: number;
  /** The part of a word that stands before the cursor already, and the whole of it. */
  readonly typed: string;
  readonly range: Range;
  /** The words of the statement before it. */
  readonly before: readonly IToken[];
  readonly next: readonly Next[];
  /** Nothing but white space stands before it on its line, and no block is open. */
  readonly opensLine: boolean;
  /** Braces that are open. */
  readonly depth: number;
}

/** A format or a number, or a name. */
const word = /(?:\d[\p{L}\p{N}.]*|[\p{L}_][\p{L}\p{N}_]*(?:-[\p{L}\p{N}_]+)*-?)$/u;
const restOfWord = /^[\p{L}\p{N}_]*(?:-[\p{L}\p{N}_]+)*/u;
const STATEMENT_TEXT_AT_MOST = 20_000;

/** Looks only at the statement that is being written: the rest of the file cannot change what may follow. */
export function whereIs(
  services: FeedplotLspServices,
  document: LangiumDocument,
  position: Position,
): Where | undefined {
  const { textDocument } = document;
  const text = textDocument.getText();
  const offset = textDocument.offsetAt(position);
  const begin = Math.max(
    statementBefore(document, offset)?.$cstNode?.offset ?? 0,
    offset - STATEMENT_TEXT_AT_MOST,
  );
  const soFar = text.slice(begin, offset);
  const read = services.parser.Lexer.tokenize(soFar);
  const open = openText(read, soFar);
  if (open === 'comment') return undefined;
  const typed = open ? open.image.slice(1) : (word.exec(soFar)?.[0] ?? '');
  const start = offset - typed.length;
  const tokens = read.tokens.filter((token) => begin + token.startOffset < start - (open ? 1 : 0));
  const before = ofOneStatement(tokens);
  const next = nextOf(services, before);
  if (open && !next.some((one) => one.kind === 'value' && one.token === 'STRING')) return undefined;
  const rest = open
    ? (/^[^"\r\n]*/.exec(text.slice(offset))?.[0] ?? '')
    : (restOfWord.exec(text.slice(offset))?.[0] ?? '');
  const depth = depthOf(before);
  return {
    document,
    offset,
    typed,
    range: { start: textDocument.positionAt(start), end: textDocument.positionAt(offset + rest.length) },
    before,
    next: open ? next.filter((one) => one.kind === 'value' && one.token === 'STRING') : next,
    opensLine: depth === 0 && /(^|\n)[ \t]*$/.test(text.slice(0, start)),
    depth,
  };
}

/** Whether the cursor stands in a comment, or in a text in quotes that is not closed before it. */
function openText({ tokens, hidden, errors }: LexerResult, soFar: string): 'comment' | IToken | undefined {
  const comment = hidden.at(-1);
  if (comment?.image.startsWith('//') && comment.startOffset + comment.image.length === soFar.length)
    return 'comment';
  if (errors.some((error) => soFar.startsWith('/*', error.offset))) return 'comment';
  const last = tokens.at(-1);
  if (last?.tokenType.name !== 'STRING' || last.startOffset + last.image.length !== soFar.length)
    return undefined;
  return last.image.length > 1 && last.image.endsWith('"') ? undefined : last;
}

function ofOneStatement(tokens: readonly IToken[]): readonly IToken[] {
  const start = tokens.findLastIndex(({ tokenType }) => isStatementWord(tokenType.name));
  return start < 0 ? [] : tokens.slice(start);
}

function depthOf(tokens: readonly IToken[]): number {
  return tokens.reduce((depth, { image }) => depth + (image === '{' ? 1 : image === '}' ? -1 : 0), 0);
}

function nextOf(services: FeedplotLspServices, before: readonly IToken[]): Next[] {
  if (before.length === 0) return statementWords.map((word) => ({ kind: 'word', word }));
  const text = before.map(({ image }) => image).join(' ');
  const { elementStack, tokens, tokenIndex } = services.parser.CompletionParser.parse(text);
  const stack = elementStack.map((feature): NextFeature => ({ feature }));
  const features = tokenIndex === 0 ? [] : findNextFeatures([stack], tokens.slice(tokenIndex));
  const found = new Map<string, Next>();
  for (const { feature, property } of features) {
    const next = nextFor(feature, property);
    if (next) found.set(JSON.stringify(next), next);
  }
  return [...found.values()];
}

function nextFor(feature: GrammarAST.AbstractElement, property: string | undefined): Next | undefined {
  if (GrammarAST.isKeyword(feature)) return { kind: 'word', word: feature.value };
  const rule = AstUtils.getContainerOfType(feature, GrammarAST.isParserRule)?.name ?? '';
  const assigned = AstUtils.getContainerOfType(feature, GrammarAST.isAssignment)?.feature ?? property ?? '';
  const slot = `${rule}.${assigned}`;
  if (GrammarAST.isCrossReference(feature)) return { kind: 'name', slot, of: feature.type.$refText };
  if (GrammarAST.isRuleCall(feature)) return { kind: 'value', slot, token: feature.rule.$refText };
  return undefined;
}
