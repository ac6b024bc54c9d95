import {
  type AstNode,
  type Cancellation,
  DefaultLangiumDocumentFactory,
  DocumentState,
  type LangiumDocument,
  type Mutable,
  type ParseResult,
  type URI,
} from 'langium';
import type { TextEdit } from '../language/incremental/edit.ts';
import { FileTree, treeOf } from '../language/incremental/file-tree.ts';
import { follow } from '../language/incremental/follow.ts';
import { LibraryTree } from '../language/incremental/library-tree.ts';
import type { FeedplotParser } from '../language/incremental/parser.ts';
import { Text } from '../language/incremental/text.ts';
import type { Refusal } from '../language/refusal.ts';
import { shippedText } from '../language/visibility.ts';
import type { Faults } from './faults.ts';
import { OpenText } from './open-text.ts';
import type { FeedplotLspServices, FeedplotSharedServices } from './services.ts';
import { textOnDisk } from './text-on-disk.ts';

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
    _cancel: Cancellation.CancellationToken,
  ): Promise<LangiumDocument<T>> {
    const onDisk = this.#openText(document) ? undefined : await this.#textApart(document.uri);
    // The editor may have opened it meanwhile, or gone on; what it has now counts.
    const open = this.#openText(document);
    if (open) Object.defineProperty(document, 'textDocument', { value: open, configurable: true });
    else {
      const get = this.createTextDocumentGetter(document.uri, textOf(onDisk));
      Object.defineProperty(document, 'textDocument', { get, configurable: true });
    }
    if (open) this.#follow(document as LangiumDocument, open.text, open.takeChanges());
    else if (onDisk && 'text' in onDisk) this.#follow(document as LangiumDocument, Text.of(onDisk.text), []);
    else if (onDisk) this.#setTree(document as LangiumDocument, this.#refused(onDisk));
    document.state = DocumentState.Parsed;
    return document;
  }

  /** The text of a file that the editor does not have open. */
  async #textApart(uri: URI): Promise<{ text: string } | Refusal> {
    const shipped = shippedText(uri.toString());
    return shipped === undefined ? textOnDisk(this.fileSystemProvider, uri) : { text: shipped };
  }

  /** A file of the disk; one that cannot be had becomes a document that says why. */
  override async fromUri<T extends AstNode = AstNode>(uri: URI): Promise<LangiumDocument<T>> {
    const onDisk = await textOnDisk(this.fileSystemProvider, uri);
    const tree = 'text' in onDisk ? this.#parser().readFile(Text.of(onDisk.text)) : this.#refused(onDisk);
    return this.createLangiumDocument(tree as ParseResult as ParseResult<T>, uri, undefined, textOf(onDisk));
  }

  /** A file of the shipped library, which is parsed when somebody looks into it. */
  libraryFile(uri: URI, text: string): LangiumDocument {
    const tree = new LibraryTree(Text.of(text), (unread) => {
      this.#parser().readAgain(unread, unread.text);
      (unread.value as Mutable<AstNode>).$document = document;
    });
    const read = { parseResult: tree as ParseResult, uri, state: DocumentState.Parsed, references: [] };
    const document = read as unknown as LangiumDocument;
    const get = this.createTextDocumentGetter(uri, text);
    Object.defineProperty(document, 'textDocument', { get, configurable: true });
    return document;
  }

  /**
   * Brings a document to what the editor has typed since it was read.
   *
   * @returns whether that could be done: the document has been read, and it is the one that the editor has open.
   */
  followTyping(document: LangiumDocument): boolean {
    const open = this.#openText(document);
    if (!open || document.textDocument !== open || !treeOf(document)) return false;
    this.#follow(document, open.text, open.takeChanges());
    return true;
  }

  #follow(document: LangiumDocument, text: Text, changes: readonly TextEdit[]): void {
    const tree = treeOf(document);
    if (tree) {
      try {
        follow(tree, text, changes, this.#parser(), this.#language().parser.Lexer);
        return;
      } catch (error) {
        // A tree that was left half way is good for nothing: it is made afresh.
        const given = { uri: document.uri.toString(), before: tree.text.toString(), text: text.toString() };
        this.#faults().tell('reading a change', given, error);
      }
    }
    this.#setTree(document, this.#parser().readFile(text));
  }

  #setTree(document: Mutable<LangiumDocument>, tree: FileTree): void {
    document.parseResult = tree as ParseResult;
    (tree.value as Mutable<AstNode>).$document = document;
  }

  #refused(refusal: Refusal): FileTree {
    const tree = new FileTree(Text.of(''));
    tree.refusal = refusal;
    return tree;
  }

  #openText({ uri }: Pick<LangiumDocument, 'uri'>): OpenText | undefined {
    const open = this.textDocuments?.get(uri.toString());
    return open instanceof OpenText ? open : undefined;
  }

  #parser(): FeedplotParser {
    return this.#language().parser.LangiumParser as FeedplotParser;
  }
}

function textOf(onDisk: { text: string } | Refusal | undefined): string {
  return onDisk && 'text' in onDisk ? onDisk.text : '';
}
