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
    return this.#edits(document, () => true);
  }

  formatDocumentRange(document: LangiumDocument, { range }: DocumentRangeFormattingParams): TextEdit[] {
    const first = document.textDocument.offsetAt(range.start);
    const last = document.textDocument.offsetAt(range.end);
    return this.#edits(document, ({ start, end }) => end >= first && start <= last);
  }

  /** Leaves alone the white space that the cursor stands in: the person is about to write there. */
  formatDocumentOnType(document: LangiumDocument, { position }: DocumentOnTypeFormattingParams): TextEdit[] {
    const cursor = document.textDocument.offsetAt(position);
    const statement = statementBefore(document, cursor - 1)?.$cstNode;
    if (!statement) return [];
    const { offset, end: last } = statement;
    return this.#edits(
      document,
      ({ start, end }) => start > offset && end <= last && !(start <= cursor && cursor <= end),
    );
  }

  #edits(document: LangiumDocument, wanted: (replacement: Replacement) => boolean): TextEdit[] {
    const { textDocument } = document;
    const parsed = document.parseResult as ParseResult<PlanFile>;
    const formatting = formattingOf(textDocument.getText(), parsed, this.#services.parser.Lexer);
    if ('refusal' in formatting) {
      console.warn(formatting.refusal);
      return [];
    }
    return formatting.replacements.filter(wanted).map(({ start, end, text }) => {
      const range = { start: textDocument.positionAt(start), end: textDocument.positionAt(end) };
      return TextEdit.replace(range, text);
    });
  }
}
