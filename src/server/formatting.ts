import type { LangiumDocument, ParseResult } from 'langium';
import type { Formatter } from 'langium/lsp';
import {
  type DocumentFormattingParams,
  type DocumentOnTypeFormattingOptions,
  type DocumentOnTypeFormattingParams,
  type DocumentRangeFormattingParams,
  TextEdit,
} from 'vscode-languageserver';
import { formattingOf, type Replacement } from '../language/formatter/format.ts';
import type { PlanFile } from '../language/generated/ast.ts';
import { statementBefore } from './positions.ts';
import type { FeedplotLspServices } from './services.ts';

/**
 * The canonical layout of a file, of a selection, or of the statement that was just ended by a new line or a brace.
 * A file that the lexer cannot read whole is left as it is.
 */
export class PlanFormatter implements Formatter {
  readonly #services: FeedplotLspServices;

  constructor(services: FeedplotLspServices) {
    this.#services = services;
  }

  get formatOnTypeOptions(): DocumentOnTypeFormattingOptions {
    return { firstTriggerCharacter: '\n', moreTriggerCharacter: ['}'] };
  }

  formatDocument(document: LangiumDocument, _params: DocumentFormattingParams): TextEdit[] {
    const parsed = document.parseResult as ParseResult<PlanFile>;
    const text = document.textDocument.getText();
    return this.#edits(document, { text, parsed, offset: 0, extent: 'file' }, () => true);
  }

  formatDocumentRange(document: LangiumDocument, { range }: DocumentRangeFormattingParams): TextEdit[] {
    const first = document.textDocument.offsetAt(range.start);
    const last = document.textDocument.offsetAt(range.end);
    // With the statement before, so that no comment is cut in two and the gap to it is seen.
    const from = statementBefore(document, (statementBefore(document, first)?.$cstNode?.offset ?? 0) - 1);
    const to = statementBefore(document, last);
    const piece = this.#piece(document, from?.$cstNode?.offset ?? 0, Math.max(to?.$cstNode?.end ?? 0, last));
    return this.#edits(document, piece, ({ start, end }) => end >= first && start <= last);
  }

  /** Leaves alone the white space that the cursor stands in: the person is about to write there. */
  formatDocumentOnType(document: LangiumDocument, { position }: DocumentOnTypeFormattingParams): TextEdit[] {
    const cursor = document.textDocument.offsetAt(position);
    const statement = statementBefore(document, cursor - 1)?.$cstNode;
    if (!statement) return [];
    const { offset, end: last } = statement;
    return this.#edits(
      document,
      this.#piece(document, offset, last),
      ({ start, end }) => start > offset && end <= last && !(start <= cursor && cursor <= end),
    );
  }

  /** A part of a file that is read alone: statements do not depend on each other. */
  #piece(document: LangiumDocument, from: number, to: number): Piece {
    const text = document.textDocument.getText().slice(from, to);
    const parsed = this.#services.parser.LangiumParser.parse<PlanFile>(text);
    return { text, parsed, offset: from, extent: 'piece' };
  }

  /** @param wanted Which replacements to make, by their offsets in the whole file. */
  #edits(
    { textDocument }: LangiumDocument,
    { text, parsed, offset, extent }: Piece,
    wanted: (replacement: Replacement) => boolean,
  ): TextEdit[] {
    const formatting = formattingOf(text, parsed, this.#services.parser.Lexer, extent);
    if ('refusal' in formatting) {
      // Who asks for the whole file is told why it stays as it is; who types a new line is not.
      if (extent === 'file') console.warn(formatting.refusal);
      return [];
    }
    return formatting.replacements
      .map((one) => ({ ...one, start: one.start + offset, end: one.end + offset }))
      .filter(wanted)
      .map(({ start, end, text: newText }) => {
        const range = { start: textDocument.positionAt(start), end: textDocument.positionAt(end) };
        return TextEdit.replace(range, newText);
      });
  }
}

interface Piece {
  readonly text: string;
  readonly parsed: ParseResult<PlanFile>;
  /** Where it begins in the file. */
  readonly offset: number;
  readonly extent: 'file' | 'piece';
}
