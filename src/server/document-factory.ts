import {
  type AstNode,
  type Cancellation,
  DefaultLangiumDocumentFactory,
  DocumentState,
  type LangiumDocument,
  type Mutable,
  type ParseResult,
} from 'langium';
import { treeOf } from '../language/incremental/file-tree.ts';
import { follow } from '../language/incremental/follow.ts';
import type { FeedplotParser } from '../language/incremental/parser.ts';
import { Text } from '../language/incremental/text.ts';
import type { Faults } from './faults.ts';
import { OpenText } from './open-text.ts';
import type { FeedplotLspServices, FeedplotSharedServices } from './services.ts';

/**
 * Reads the text of documents. A document that was read before keeps its tree, which is brought to the new text: what
 * has not changed in it stays what it was, whoever changed the file and however.
 */
export class PlanDocumentFactory extends DefaultLangiumDocumentFactory {
  readonly #language: () => FeedplotLspServices;
  readonly #faults: () => Faults;

  constructor(services: FeedplotSharedServices, language: () => FeedplotLspServices) {
    super(services);
    this.#language = language;
    this.#faults = () => services.plans.Faults;
  }

  override async update<T extends AstNode = AstNode>(
    document: Mutable<LangiumDocument<T>>,
    cancel: Cancellation.CancellationToken,
  ): Promise<LangiumDocument<T>> {
    const open = this.textDocuments?.get(document.uri.toString());
    const content = await this.getUpdatedText(document, open, cancel);
    // The editor may have gone on meanwhile; what it has now counts.
    const text = open instanceof OpenText ? open.text : Text.of(content);
    if (open) Object.defineProperty(document, 'textDocument', { value: open, configurable: true });
    else {
      const get = this.createTextDocumentGetter(document.uri, content);
      Object.defineProperty(document, 'textDocument', { get, configurable: true });
    }
    this.#read(document as LangiumDocument, text, open);
    document.state = DocumentState.Parsed;
    return document;
  }

  /**
   * Brings a document to what the editor has typed since it was read.
   *
   * @returns whether that could be done: the document has been read, and it is the one that the editor has open.
   */
  followTyping(document: LangiumDocument): boolean {
    const open = this.textDocuments?.get(document.uri.toString());
    if (!(open instanceof OpenText) || document.textDocument !== open || !treeOf(document)) return false;
    this.#read(document, open.text, open);
    return true;
  }

  #read(document: LangiumDocument, text: Text, open: unknown): void {
    const { LangiumParser, Lexer } = this.#language().parser;
    const parser = LangiumParser as FeedplotParser;
    const tree = treeOf(document);
    const changes = open instanceof OpenText ? open.takeChanges() : [];
    if (tree) {
      try {
        follow(tree, text, changes, parser, Lexer);
        return;
      } catch (error) {
        // A tree that was left half way is good for nothing: it is made afresh.
        const given = { uri: document.uri.toString(), before: tree.text.toString(), text: text.toString() };
        this.#faults().tell('reading a change', given, error);
      }
    }
    const read = parser.readFile(text);
    document.parseResult = read as ParseResult;
    (read.value as Mutable<AstNode>).$document = document;
  }
}
