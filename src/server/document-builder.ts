import {
  type AstNode,
  type BuildOptions,
  Cancellation,
  DefaultDocumentBuilder,
  DocumentState,
  delayNextTick,
  type LangiumDocument,
  type URI,
} from 'langium';
import { type Heads, treeOf } from '../language/incremental/file-tree.ts';
import type { Revision } from '../language/reference.ts';
import { isLibrary } from '../language/visibility.ts';
import type { PlanDocumentFactory } from './document-factory.ts';
import type { FeedplotSharedServices } from './services.ts';

/**
 * Reads changed files, and the files that they import, and tells everybody that names may mean something else now.
 *
 * What is typed goes a short way: the tree of the document follows the text in one go, so that nobody ever meets it
 * half way, and the phases of a build, which have nothing to do here, are announced as if they had run.
 */
export class PlanDocumentBuilder extends DefaultDocumentBuilder {
  readonly #services: FeedplotSharedServices;
  readonly #revision: () => Revision;
  #headsKnown: ReadonlySet<Heads> = new Set();
  readonly #announced = new Set<DocumentState>();

  constructor(services: FeedplotSharedServices, revision: () => Revision) {
    super(services);
    this.#services = services;
    this.#revision = revision;
    const changed = () => {
      this.#revision().current++;
    };
    this.onUpdate(changed);
    this.onBuildPhase(DocumentState.Parsed, changed);
    for (const state of phases) this.onBuildPhase(state, () => void this.#announced.add(state));
  }

  override async update(
    changed: URI[],
    deleted: URI[],
    cancel = Cancellation.CancellationToken.None,
  ): Promise<void> {
    const quick = deleted.length === 0 && this.#nothingIsUnfinished();
    if (quick && changed.every((uri) => this.followTyping(uri))) await this.#announce(changed);
    else await this.#rebuild(changed, deleted, cancel);
    await this.#loadImports(cancel);
    if (await this.#isOvertaken(cancel)) return;
    await this.#services.plans.Plans.publish();
  }

  /** Of letters that come faster than a large plan is worked out only the last need be: it publishes for all. */
  async #isOvertaken(cancel: Cancellation.CancellationToken): Promise<boolean> {
    if (!this.#services.plans.Plans.isSlow) return false;
    // What the editor has sent already is read in the first turn, and asks for its own update before the second.
    await delayNextTick();
    await delayNextTick();
    return cancel.isCancellationRequested;
  }

  override async build<T extends AstNode>(
    documents: LangiumDocument<T>[],
    options: BuildOptions = {},
    cancel = Cancellation.CancellationToken.None,
  ): Promise<void> {
    await super.build(documents, options, cancel);
    await this.#services.plans.Plans.publish();
  }

  protected override shouldRelink(): boolean {
    return false;
  }

  /**
   * What the editor holds counts, whatever becomes of the file on disk. A file that it has closed is what lies on disk,
   * if it is one of the workspace, and the library is always there.
   */
  async #asTheyAre(changed: URI[], deleted: URI[]): Promise<{ changed: URI[]; deleted: URI[] }> {
    const isOpen = (uri: URI) => this.textDocuments?.get(uri) !== undefined;
    const gone = deleted.filter((uri) => !isOpen(uri) && !isLibrary(uri.toString()));
    // Of a folder that goes, what the editor still has open stays.
    const kept = gone
      .flatMap((uri) => this.langiumDocuments.getDocuments(uri))
      .filter(({ uri }) => isOpen(uri));
    const files = {
      changed: [...changed.filter(isOpen), ...kept.map(({ uri }) => uri)],
      deleted: gone,
    };
    for (const uri of changed) {
      if (isOpen(uri)) continue;
      const stays =
        isLibrary(uri.toString()) ||
        (this.#services.plans.Plans.isInside(uri.toString()) && (await this.fileSystemProvider.exists(uri)));
      (stays ? files.changed : files.deleted).push(uri);
    }
    return files;
  }

  /** Brings in what imports name, and what is imported there, once for each new `import` line. */
  async #loadImports(cancel: Cancellation.CancellationToken): Promise<void> {
    while (!this.#headsAreKnown()) {
      const imported = await this.#services.plans.Plans.loadImports();
      this.#headsKnown = this.#heads();
      if (imported.length > 0) await super.update(imported, [], cancel);
    }
  }

  #headsAreKnown(): boolean {
    const heads = this.#heads();
    return heads.size === this.#headsKnown.size && [...heads].every((head) => this.#headsKnown.has(head));
  }

  #heads(): Set<Heads> {
    return new Set(this.langiumDocuments.all.flatMap((document) => treeOf(document)?.heads ?? []));
  }

  /** A build that was cancelled half way is taken up by the next one, which then must be a whole one. */
  #nothingIsUnfinished(): boolean {
    return this.langiumDocuments.all.every((document) => document.state === DocumentState.Validated);
  }

  /**
   * Brings the tree of a document to what was typed, at once: whoever asks next gets an answer for the text that he sees,
   * however long the plan then takes to be worked out.
   *
   * @returns false for a document that is not open in the editor, or that nobody has read yet.
   */
  followTyping(uri: URI): boolean {
    const document = this.langiumDocuments.getDocument(uri);
    const before = document && treeOf(document)?.text;
    const follows =
      document !== undefined && (this.langiumDocumentFactory as PlanDocumentFactory).followTyping(document);
    if (follows && treeOf(document)?.text !== before) this.#revision().current++;
    return follows;
  }

  async #rebuild(changed: URI[], deleted: URI[], cancel: Cancellation.CancellationToken): Promise<void> {
    const files = await this.#asTheyAre(changed, deleted);
    this.#announced.clear();
    await super.update(files.changed, files.deleted, cancel);
    // A phase that no document had to go through is not announced, and who waits for it would wait for ever.
    const some = this.langiumDocuments.all.limit(1).toArray();
    for (const state of phases)
      if (!this.#announced.has(state)) await this.notifyBuildPhase(some, state, none);
  }

  async #announce(typed: URI[]): Promise<void> {
    await this.emitUpdate(typed, []);
    const documents = typed.flatMap((uri) => this.langiumDocuments.getDocument(uri) ?? []);
    for (const state of phases) {
      for (const document of documents) await this.notifyDocumentPhase(document, state, none);
      await this.notifyBuildPhase(documents, state, none);
      this.currentState = state;
    }
  }
}

const none = Cancellation.CancellationToken.None;

/** What a build does one after the other. */
const phases = [
  DocumentState.Parsed,
  DocumentState.IndexedContent,
  DocumentState.ComputedScopes,
  DocumentState.Linked,
  DocumentState.IndexedReferences,
  DocumentState.Validated,
] as const;
