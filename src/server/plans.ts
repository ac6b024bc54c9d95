import { type AstNode, AstUtils, type FileSystemProvider, type LangiumDocument, URI } from 'langium';
import type { Analysis } from '../analysis/model.ts';
import { isBelow, resolveImport } from '../language/imports.ts';
import { type FileTree, treeOf } from '../language/incremental/file-tree.ts';
import { LibraryTree } from '../language/incremental/library-tree.ts';
import { isLibrary } from '../language/visibility.ts';
import { type AssembledPlan, assemblePlan, type FileAccess } from '../plan/assemble.ts';
import { readLibraryFile } from '../plan/library/read.ts';
import type { Statement } from '../plan/plan.ts';
import { type ReadFile, readFile } from '../plan/read-file.ts';
import { emptyFile } from '../plan/read-text.ts';
import { Publisher } from './publish.ts';
import { Rest } from './rest.ts';
import type { FeedplotLspServices, FeedplotSharedServices } from './services.ts';
import { type CurrentPlan, settling, workOut } from './work-out.ts';

export type { CurrentPlan } from './work-out.ts';

/** Working out that takes longer is not done for letters that others have followed already. */
const SLOW_MS = 5;

/**
 * The plans of the workspace. A plan is the unit of analysis, not a file: whatever of it changes, it is worked out
 * anew once, and its findings go to all its files. Answers are made when asked for and hold until a file changes.
 */
export class Plans {
  readonly #shared: FeedplotSharedServices;
  readonly #language: () => FeedplotLspServices;
  readonly #publisher: Publisher;
  readonly #rest = new Rest((error) => this.#shared.plans.Faults.tell('working out in a pause', {}, error));
  #revision = -1;
  #plans = new Map<string, CurrentPlan>();
  readonly #failed = new Map<string, AssembledPlan>();
  #took_ms = 0;
  /** Who reads an analysis over several turns, counted. */
  readonly #readers = new Map<Analysis, number>();
  readonly #read = new WeakMap<FileTree, ReadFile>();
  /** Files of the library that nobody has edited. */
  readonly #shipped = new WeakMap<FileTree, ReadFile>();

  constructor(shared: FeedplotSharedServices, language: () => FeedplotLspServices) {
    this.#shared = shared;
    this.#publisher = new Publisher(shared);
    this.#language = language;
  }

  /** The plan that a document belongs to: its own, or the first that imports it. */
  of(document: LangiumDocument): CurrentPlan | undefined {
    return this.having(document.uri.toString())[0];
  }

  /** All plans that have this file. */
  having(uri: string): CurrentPlan[] {
    return [...this.all().values()].filter((plan) => plan.assembled.plan.files.includes(uri));
  }

  /** Every plan of the workspace by the URI of its own file. */
  all(): ReadonlyMap<string, CurrentPlan> {
    const { current } = this.#language().references.Revision;
    if (current === this.#revision) return this.#plans;
    const began = performance.now();
    this.#revision = current;
    const access = this.#access();
    const plans = new Map<string, CurrentPlan>();
    this.#failed.clear();
    for (const uri of this.#language().references.Visibility.plans()) {
      const before = this.#plans.get(uri);
      const assembled = assemblePlan(uri, access, before?.assembled);
      const plan = assembled && this.#workOut(uri, assembled, before);
      if (plan) plans.set(uri, plan);
    }
    this.#plans = plans;
    this.#took_ms = performance.now() - began;
    return plans;
  }

  /**
   * Does work that reads an analysis over several turns. What is typed meanwhile is worked out apart from it; otherwise
   * an edit is worked out in the same objects.
   */
  async holding<T>(analysis: Analysis, work: () => Promise<T>): Promise<T> {
    const readers = (change: number) => (this.#readers.get(analysis) ?? 0) + change;
    this.#readers.set(analysis, readers(1));
    try {
      return await work();
    } finally {
      if (readers(-1) > 0) this.#readers.set(analysis, readers(-1));
      else this.#readers.delete(analysis);
    }
  }

  /** Plans that could not be worked out, by a fault of the tool. */
  get failed(): ReadonlyMap<string, AssembledPlan> {
    this.all();
    return this.#failed;
  }

  #workOut(uri: string, assembled: AssembledPlan, before: CurrentPlan | undefined): CurrentPlan | undefined {
    try {
      const isHeld = before !== undefined && this.#readers.has(before.analysis);
      return workOut(uri, assembled, before, isHeld, (check, error) =>
        this.#tellFault(`the check ${check}`, uri, error),
      );
    } catch (error) {
      this.#tellFault(before ? 'working out an edit' : 'working out a plan', uri, error);
      // It may go well from the beginning.
      if (before) return this.#workOut(uri, assembled, undefined);
      this.#failed.set(uri, assembled);
      return undefined;
    }
  }

  #tellFault(doing: string, uri: string, error: unknown): void {
    const text = this.#shared.workspace.LangiumDocuments.getDocument(URI.parse(uri))?.textDocument.getText();
    this.#shared.plans.Faults.tell(doing, { uri, text }, error);
  }

  /** Whether working the plans out again takes so long that it had better not be done in vain. */
  get isSlow(): boolean {
    return this.#took_ms > SLOW_MS;
  }

  /** What the file of a document says. */
  read(document: LangiumDocument): ReadFile {
    const uri = document.uri.toString();
    const tree = treeOf(document);
    if (!tree) return { ...emptyFile(uri, ''), unreadables: [] };
    const shipped = tree instanceof LibraryTree && tree.isAsShipped;
    const files = shipped ? this.#shipped : this.#read;
    let file = files.get(tree);
    if (!file) {
      file = shipped ? readLibraryFile(uri, nameOf(document), () => tree) : readFile(uri, tree);
      files.set(tree, file);
    }
    return file;
  }

  /** The statement that a node of the syntax tree belongs to. */
  statementOf(node: AstNode): Statement | undefined {
    const document = AstUtils.getDocument(node);
    let statement: AstNode = node;
    while (statement.$container?.$container) statement = statement.$container;
    return this.read(document).statementOf(statement);
  }

  async publish(): Promise<void> {
    const documents = this.#shared.workspace.LangiumDocuments.all
      .filter((d) => !isLibrary(d.uri.toString()))
      .toArray();
    this.#publisher.publish(documents, this);
    if ([...this.all().values()].every(({ settled }) => settled)) return;
    const revision = this.#revision;
    this.#rest.begin(this.#settle(), () => {
      if (revision === this.#revision) this.#publisher.publish(documents, this);
    });
  }

  /** Does at once what would be done when the typing pauses. */
  finish(): void {
    this.#rest.finish();
  }

  /** Works out in small steps what no keystroke waits for, and asks the checks that read it. */
  *#settle(): Generator<undefined, void> {
    const { current } = this.#language().references.Revision;
    for (const plan of [...this.all().values()].filter(({ settled }) => !settled)) {
      const checked = settling(plan, (check, error) =>
        this.#tellFault(`the check ${check}`, plan.uri, error),
      );
      for (;;) {
        // What is worked out after a further letter is worked out in the same analysis.
        if (current !== this.#language().references.Revision.current) return;
        const step = checked.next();
        if (step.done) {
          this.#plans.set(plan.uri, { ...plan, findings: step.value, settled: true });
          break;
        }
        yield;
      }
    }
  }

  /** Brings in files that an import names and that no folder of the workspace holds. @returns the new ones. */
  async loadImports(): Promise<URI[]> {
    const loaded: URI[] = [];
    const { LangiumDocuments, FileSystemProvider } = this.#shared.workspace;
    for (const document of LangiumDocuments.all.toArray()) {
      const from = document.uri.toString();
      for (const { fact } of this.read(document).imports) {
        const target = resolveImport(from, fact.path);
        if (target === undefined || !this.isInside(target)) continue;
        const uri = URI.parse(target);
        if (LangiumDocuments.hasDocument(uri) || !(await isFile(FileSystemProvider, uri))) continue;
        await LangiumDocuments.getOrCreateDocument(uri);
        loaded.push(uri);
      }
    }
    return loaded;
  }

  /** Whether a file may be read: it lies in the workspace, or, without one, beside or below an open document. */
  isInside(uri: string): boolean {
    return this.folders().some((folder) => isBelow(uri, folder));
  }

  /** URIs of the folders that may be read from. */
  folders(): readonly string[] {
    const { folderUris } = this.#shared.workspace
      .WorkspaceManager as import('./workspace-manager.ts').PlanWorkspaceManager;
    if (folderUris.length > 0) return folderUris;
    return this.#shared.workspace.TextDocuments.all().map(({ uri }) => uri.slice(0, uri.lastIndexOf('/')));
  }

  #access(): FileAccess {
    const { LangiumDocuments } = this.#shared.workspace;
    const library = LangiumDocuments.all
      .filter((document) => isLibrary(document.uri.toString()))
      .map((document) => this.read(document))
      .toArray();
    return {
      library,
      file: (uri) => {
        const document = LangiumDocuments.getDocument(URI.parse(uri));
        if (document) return treeOf(document)?.refusal?.reason ?? this.read(document);
        return this.isInside(uri) ? 'not found' : 'outside';
      },
    };
  }
}

function nameOf({ uri }: LangiumDocument): string {
  return uri.path.slice(uri.path.lastIndexOf('/') + 1);
}

/** Not a folder: `import "kit/"` on the way to a file in it. */
async function isFile(files: FileSystemProvider, uri: URI): Promise<boolean> {
  return (await files.exists(uri)) && (await files.stat(uri)).isFile;
}
