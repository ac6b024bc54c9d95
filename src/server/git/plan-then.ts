import { join } from 'node:path';
import { resolveImport } from '../../language/imports.ts';
import type { FileAccess } from '../../plan/assemble.ts';
import type { MissingFile } from '../../plan/plan.ts';
import { readBytes } from '../../plan/read-bytes.ts';
import type { ReadFile } from '../../plan/read-file.ts';
import { emptyFile } from '../../plan/read-text.ts';
import { GitTrouble } from './git.ts';
import { type Commit, type FileThen, Repository } from './repository.ts';

/** More files than a plan is made of. */
const MOST_FILES = 600;

/** How a plan stood at a commit. */
export interface PlanThen {
  /** URI of its own file then, in the work tree as it is now. */
  readonly uri: string;
  readonly access: FileAccess;
  /** There was no such plan: everything in it is new. */
  readonly isAbsent: boolean;
}

/** What is known of a plan that is looked for. */
export interface PlanWanted {
  /** Its URI as it is now. */
  readonly uri: string;
  /** Its path then, where somebody names it. */
  readonly pathThen?: string | undefined;
  /** Its title, by which it is found under another name. */
  readonly title: string;
  /** Whether a path of the repository is a file on the new side too: then it cannot have become this one. */
  isThereNow(path: string): boolean;
}

/**
 * Reads a plan with all that it imported as it stood at a commit, from the objects of the repository alone.
 *
 * @param library Files of the shipped library.
 * @param uriOf The address of a file of the work tree.
 * @throws GitTrouble when several plans of the time may be the one that is meant
 */
export async function readPlanThen(
  repository: Repository,
  commit: Commit,
  wanted: PlanWanted,
  library: readonly ReadFile[],
  uriOf: (path: string) => string,
): Promise<PlanThen> {
  const files = new FilesThen(repository, commit, library);
  const path = wanted.pathThen ?? repository.pathOf(wanted.uri);
  if (path === undefined) throw new GitTrouble('The plan lies outside the repository.');
  const uri = uriOf(join(repository.root, path));
  const own = await files.fetch(uri);
  if (typeof own !== 'string') {
    await files.fetchImports(uri);
    return { uri, access: files, isAbsent: false };
  }
  if (wanted.pathThen !== undefined) throw new GitTrouble(`There is no file ${path} in ${commit.title}.`);
  const before = await formerUri(repository, commit, wanted, files, uriOf);
  if (before === undefined) {
    files.set(uri, emptyFile(uri, ''));
    return { uri, access: files, isAbsent: true };
  }
  await files.fetchImports(before);
  return { uri: before, access: files, isAbsent: false };
}

/** Where the plan stood before it was renamed: a plan that is gone since, with its title, or the only one that is gone. */
async function formerUri(
  repository: Repository,
  commit: Commit,
  { title, isThereNow }: PlanWanted,
  files: FilesThen,
  uriOf: (path: string) => string,
): Promise<string | undefined> {
  const gone = (await repository.planFiles(commit)).filter((path) => !isThereNow(path)).slice(0, MOST_FILES);
  const uris = gone.map((path) => uriOf(join(repository.root, path)));
  await files.fetchAll(uris);
  const plans = uris.filter((uri) => files.planTitle(uri) !== undefined);
  const namesakes = plans.filter((uri) => files.planTitle(uri) === title);
  const [found, ...others] = namesakes.length > 0 ? namesakes : plans;
  if (others.length === 0) return found;
  const names = (namesakes.length > 0 ? namesakes : plans).map((uri) => repository.pathOf(uri));
  throw new GitTrouble(
    `The plan has another name in ${commit.title}, and it may be one of ${names.length}: ${names.slice(0, 8).join(', ')}. Name it: \`--since REVISION:PATH\`.`,
  );
}

/** Files as they stood at a commit, each fetched once, many at a time. */
class FilesThen implements FileAccess {
  readonly library: readonly ReadFile[];
  readonly #repository: Repository;
  readonly #commit: Commit;
  readonly #files = new Map<string, ReadFile | MissingFile['reason']>();
  readonly #submodules = new Map<string, Repository | undefined>();

  constructor(repository: Repository, commit: Commit, library: readonly ReadFile[]) {
    this.#repository = repository;
    this.#commit = commit;
    this.library = library;
  }

  file(uri: string): ReadFile | MissingFile['reason'] {
    return this.#files.get(uri) ?? (this.#repository.pathOf(uri) === undefined ? 'outside' : 'not found');
  }

  set(uri: string, file: ReadFile): void {
    this.#files.set(uri, file);
  }

  /** The title of the plan in a fetched file; undefined: there is none. */
  planTitle(uri: string): string | undefined {
    const file = this.file(uri);
    if (typeof file === 'string' || !file.hasPlan) return undefined;
    const statement = file.statements.find(({ fact }) => fact.kind === 'plan');
    return statement?.fact.kind === 'plan' ? statement.fact.title : undefined;
  }

  async fetch(uri: string): Promise<ReadFile | MissingFile['reason']> {
    await this.fetchAll([uri]);
    return this.file(uri);
  }

  /** Everything that is reached by imports, one depth of them at a time. */
  async fetchImports(start: string): Promise<void> {
    let uris = [start];
    for (let count = 0; uris.length > 0 && count < MOST_FILES; count += uris.length) {
      const next = new Set<string>();
      for (const uri of uris) {
        const file = this.file(uri);
        if (typeof file === 'string') continue;
        for (const { fact } of file.imports) {
          const target = resolveImport(uri, fact.path);
          if (target !== undefined && !this.#files.has(target)) next.add(target);
        }
      }
      uris = [...next];
      await this.fetchAll(uris);
    }
  }

  async fetchAll(uris: readonly string[]): Promise<void> {
    const paths = new Map<string, string>();
    for (const uri of uris) {
      const path = this.#files.has(uri) ? undefined : this.#repository.pathOf(uri);
      if (path !== undefined) paths.set(path, uri);
    }
    if (paths.size === 0) return;
    const found = await this.#repository.read(this.#commit, [...paths.keys()]);
    for (const [path, uri] of paths) {
      const then = found.get(path) ?? 'not found';
      const content = then === 'not found' ? await this.#fromSubmodule(path) : then;
      this.#files.set(uri, typeof content === 'string' ? content : readBytes(uri, content));
    }
  }

  /** A file of a submodule stands in a repository of its own, at the commit that this one names. */
  async #fromSubmodule(path: string): Promise<FileThen> {
    const place = await this.#repository.submodule(this.#commit, path);
    if (!place) return 'not found';
    let submodule = this.#submodules.get(place.folder);
    if (!this.#submodules.has(place.folder)) {
      submodule = await openQuietly(place.folder);
      this.#submodules.set(place.folder, submodule);
    }
    // A folder that is not checked out belongs to the outer repository.
    if (!submodule || submodule.root !== place.folder) return 'not found';
    const commit = { id: place.commit, title: place.commit };
    return (await submodule.read(commit, [place.rest])).get(place.rest) ?? 'not found';
  }
}

async function openQuietly(folder: string): Promise<Repository | undefined> {
  try {
    return await Repository.open(folder);
  } catch (error) {
    if (error instanceof GitTrouble) return undefined;
    throw error;
  }
}
