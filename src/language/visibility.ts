import type { LangiumDocument, LangiumDocuments } from 'langium';
import { URI } from 'langium';
import type { PlanFile } from './generated/ast.ts';
import { importClosure, resolveImport } from './imports.ts';
import { type Heads, treeOf } from './incremental/file-tree.ts';
import type { Revision } from './reference.ts';

/**
 * Which files see each other's names: those of one plan, and the shipped library. It depends on which files there are
 * and on their `plan` and `import` lines alone, so it holds through nearly every keystroke.
 */
export class Visibility {
  readonly #documents: () => LangiumDocuments;
  readonly #revision: Revision;
  #lookedAt = -1;
  #heads = new Map<string, Heads | undefined>();
  #visible = new Map<string, readonly LangiumDocument<PlanFile>[]>();
  #plans: readonly string[] = [];

  constructor(documents: () => LangiumDocuments, revision: Revision) {
    this.#documents = documents;
    this.#revision = revision;
  }

  /** The documents whose names a document sees: those of the first plan that it belongs to, or its own imports. */
  of(document: LangiumDocument): readonly LangiumDocument<PlanFile>[] {
    this.#refresh();
    const uri = document.uri.toString();
    let visible = this.#visible.get(uri);
    if (!visible) {
      visible = this.#documentsOf(uri);
      this.#visible.set(uri, visible);
    }
    return visible;
  }

  /** URIs of the files that have a plan, in alphabetical order. */
  plans(): readonly string[] {
    this.#refresh();
    return this.#plans;
  }

  #refresh(): void {
    if (this.#lookedAt === this.#revision.current) return;
    this.#lookedAt = this.#revision.current;
    const heads = new Map<string, Heads | undefined>();
    for (const document of this.#documents().all) heads.set(document.uri.toString(), treeOf(document)?.heads);
    if (sameEntries(heads, this.#heads)) return;
    this.#heads = heads;
    this.#visible = new Map();
    this.#plans = [...heads].flatMap(([uri, head]) => (head?.hasPlan ? [uri] : [])).sort();
    for (const plan of this.#plans) {
      const documents = this.#documentsOf(plan);
      for (const document of documents) {
        const uri = document.uri.toString();
        if (!this.#visible.has(uri) && !isLibrary(uri)) this.#visible.set(uri, documents);
      }
    }
  }

  #documentsOf(start: string): LangiumDocument<PlanFile>[] {
    const files = importClosure(start, (uri) =>
      (this.#heads.get(uri)?.imports ?? [])
        .map((statement) => resolveImport(uri, statement.path ?? ''))
        .filter((target): target is string => target !== undefined && this.#heads.has(target)),
    );
    const library = [...this.#heads.keys()].filter((uri) => isLibrary(uri) && !files.includes(uri));
    return [...files, ...library].flatMap(
      (uri) => (this.#documents().getDocument(URI.parse(uri)) as LangiumDocument<PlanFile> | undefined) ?? [],
    );
  }
}

function sameEntries(a: ReadonlyMap<string, unknown>, b: ReadonlyMap<string, unknown>): boolean {
  if (a.size !== b.size) return false;
  for (const [key, value] of a) if (!b.has(key) || b.get(key) !== value) return false;
  return true;
}

const libraryFiles = new Map<string, string>();

/** Says that a file is one of the shipped library, with the text that ships: every plan sees it. */
export function declareLibraryFile(uri: string, text: string): void {
  libraryFiles.set(uri, text);
}

/** The text of a file of the library as it ships, whatever lies on disk. */
export function shippedText(uri: string): string | undefined {
  return libraryFiles.get(uri);
}

export function isLibrary(uri: string): boolean {
  return libraryFiles.has(uri);
}
