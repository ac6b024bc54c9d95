import type { LangiumDocument, LangiumDocuments } from 'langium';
import { URI } from 'langium';
import type { PlanFile } from './generated/ast.ts';
import { importClosure, resolveImport } from './imports.ts';
import type { Revision } from './reference.ts';

/** Which files see each other's names: those of one plan, and the shipped library. */
export class Visibility {
  readonly #documents: () => LangiumDocuments;
  readonly #revision: Revision;
  #computedAt = -1;
  #visible = new Map<string, readonly LangiumDocument<PlanFile>[]>();
  #plans: string[] = [];

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
    if (this.#computedAt === this.#revision.current) return;
    this.#computedAt = this.#revision.current;
    this.#visible = new Map();
    this.#plans = [];
    for (const document of this.#documents().all) {
      if (rootOf(document).statements.some((s) => s.$type === 'PlanHead'))
        this.#plans.push(document.uri.toString());
    }
    this.#plans.sort();
    for (const plan of this.#plans) {
      const documents = this.#documentsOf(plan);
      for (const document of documents) {
        const uri = document.uri.toString();
        if (!this.#visible.has(uri) && !isLibrary(uri)) this.#visible.set(uri, documents);
      }
    }
  }

  #documentsOf(start: string): LangiumDocument<PlanFile>[] {
    const all = this.#documents();
    const get = (uri: string) => all.getDocument(URI.parse(uri)) as LangiumDocument<PlanFile> | undefined;
    const files = importClosure(start, (uri) => {
      const document = get(uri);
      if (!document) return [];
      return rootOf(document)
        .statements.filter((s) => s.$type === 'Import')
        .map((s) => resolveImport(uri, s.path ?? ''))
        .filter((target): target is string => target !== undefined && get(target) !== undefined);
    });
    const library = all.all
      .map((d) => d.uri.toString())
      .filter((uri) => isLibrary(uri) && !files.includes(uri))
      .toArray();
    return [...files, ...library].map(get).filter((d): d is LangiumDocument<PlanFile> => d !== undefined);
  }
}

const libraryFiles = new Set<string>();

/** Says that a file is one of the shipped library: every plan sees it. */
export function declareLibraryFile(uri: string): void {
  libraryFiles.add(uri);
}

export function isLibrary(uri: string): boolean {
  return libraryFiles.has(uri);
}

function rootOf(document: LangiumDocument): PlanFile {
  return document.parseResult.value as PlanFile;
}
