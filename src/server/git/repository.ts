import { existsSync, readFileSync } from 'node:fs';
import { join, relative, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { MissingFile } from '../../plan/plan.ts';
import { MOST_BYTES } from '../../plan/read-bytes.ts';
import { GitTrouble, runGit } from './git.ts';

/** A state of the repository. */
export interface Commit {
  /** The whole hash. */
  readonly id: string;
  /** As people ask for it, with the beginning of the hash. */
  readonly title: string;
}

/** A repository of its own in a folder of another, and the file in it. */
export interface Submodule {
  readonly folder: string;
  readonly commit: string;
  readonly rest: string;
}

/** The contents of a file at a commit, or why it cannot be had. */
export type FileThen = Uint8Array | MissingFile['reason'];

const HASH = /^[0-9a-f]{40}(?:[0-9a-f]{24})?$/;

/** A git repository with a work tree. It is only read, object by object; nothing is ever checked out. */
export class Repository {
  /** The folder of the work tree. */
  readonly root: string;
  readonly #isShallow: boolean;

  private constructor(root: string, isShallow: boolean) {
    this.root = root;
    this.#isShallow = isShallow;
  }

  /**
   * @param folder Real path of a folder in the work tree.
   * @throws GitTrouble when there is no repository, or one without a work tree
   */
  static async open(folder: string): Promise<Repository> {
    const [bare, shallow] = linesOf(await askWhere(folder));
    if (bare === 'true')
      throw new GitTrouble(
        'This is a bare repository: it has no files here to compare with. Name two files instead.',
      );
    const root = resolve(
      (await runGit(folder, ['rev-parse', '--show-toplevel'])).toString('utf8').replace(/\n$/, ''),
    );
    if (pathBelow(root, folder) === undefined)
      throw new GitTrouble(`The repository says that its files are in ${root}, not here.`);
    return new Repository(root, shallow === 'true');
  }

  /** @throws GitTrouble when there is no such commit */
  async commit(revision: string): Promise<Commit> {
    const id = await this.#resolve(revision);
    if (id === undefined) throw new GitTrouble(this.#unknown(revision));
    return commitOf(id, revision);
  }

  /** Undefined when there is no such commit, or none yet. */
  async #resolve(revision: string): Promise<string | undefined> {
    if (revision === '' || /[\0\n]/.test(revision)) return undefined;
    try {
      const answer = await runGit(this.root, [
        'rev-parse',
        '--verify',
        '--quiet',
        '--end-of-options',
        `${revision}^{commit}`,
      ]);
      const [id = '', ...others] = linesOf(answer);
      return others.length === 0 && HASH.test(id) ? id : undefined;
    } catch (error) {
      if (error instanceof GitTrouble && !/did not answer|not installed/.test(error.message))
        return undefined;
      throw error;
    }
  }

  #unknown(revision: string): string {
    const shallow = this.#isShallow
      ? ' This clone is shallow: it lacks older commits. Fetch more of its history, as `git fetch --unshallow` does, or `fetch-depth: 0` of a checkout in CI.'
      : ' Name a commit, a branch or a tag of this repository.';
    return `There is no commit ${JSON.stringify(revision)}.${shallow}`;
  }

  /**
   * What a merge joins: the parents of a merge commit.
   *
   * @throws GitTrouble when one is missing from a shallow clone
   */
  async parents(commit: Commit): Promise<Commit[]> {
    return Promise.all((await this.#parentIds(commit)).map((parent, i) => this.#parent(parent, i)));
  }

  async #parentIds({ id }: Commit): Promise<string[]> {
    const text = (await runGit(this.root, ['cat-file', 'commit', id])).toString('utf8');
    const header = text.slice(0, text.indexOf('\n\n'));
    return header.split('\n').flatMap((line) => /^parent ([0-9a-f]+)$/.exec(line)?.[1] ?? []);
  }

  async #parent(id: string, index: number): Promise<Commit> {
    if ((await this.#resolve(id)) === undefined) throw new GitTrouble(this.#unknown(id));
    return parentOf(id, index);
  }

  /**
   * What was merged with a commit: when a merge into it has begun, or the commit that is checked out is such a merge. What
   * a shallow clone lacks is left out.
   */
  async mergedWith({ id }: Commit): Promise<Commit[]> {
    const head = await this.commit('HEAD');
    if (head.id === id) return this.mergeHeads();
    const [first, ...others] = await this.#parentIds(head);
    if (first !== id) return [];
    const found = await Promise.all(others.map((other) => this.#resolve(other)));
    return found.flatMap((other, i) => (other === undefined ? [] : [parentOf(other, i + 1)]));
  }

  /** What is being merged into the commit that is checked out, when a merge has begun and is not committed. */
  async mergeHeads(): Promise<Commit[]> {
    const path = (await runGit(this.root, ['rev-parse', '--git-path', 'MERGE_HEAD'])).toString('utf8');
    const file = resolve(this.root, path.replace(/\n$/, ''));
    if (!existsSync(file)) return [];
    const ids = readFileSync(file, 'utf8')
      .split('\n')
      .filter((line) => HASH.test(line));
    return Promise.all(ids.map((id) => this.commit(id)));
  }

  /** The paths of all files of plans at a commit, as git writes them. */
  async planFiles({ id }: Commit): Promise<string[]> {
    const answer = await runGit(this.root, ['ls-tree', '-r', '-z', '--name-only', '--full-tree', id]);
    return answer
      .toString('utf8')
      .split('\0')
      .filter((path) => path.endsWith('.feedplot'));
  }

  /** What stands in files at a commit. Links are followed within the repository. */
  async read({ id }: Commit, paths: readonly string[]): Promise<Map<string, FileThen>> {
    const found = new Map<string, FileThen>();
    const asked = paths.filter((path) => path !== '' && !path.includes('\n'));
    for (const path of paths) found.set(path, 'not found');
    const input = asked.map((path) => `${id}:${path}\n`).join('');
    const sizes = await this.#batch('--batch-check', input);
    const wanted: string[] = [];
    let mostBytes = 1000;
    for (const [i, path] of asked.entries()) {
      const entry = sizes.next();
      if (typeof entry === 'string') found.set(path, entry);
      else if (entry.size > MOST_BYTES) found.set(path, 'too large');
      else {
        wanted.push(asked[i]!);
        mostBytes += entry.size + 200;
      }
    }
    const contents = await this.#batch(
      '--batch',
      wanted.map((path) => `${id}:${path}\n`).join(''),
      mostBytes,
    );
    for (const path of wanted) {
      const entry = contents.next();
      found.set(path, typeof entry === 'string' ? entry : contents.take(entry.size));
    }
    return found;
  }

  async #batch(form: '--batch' | '--batch-check', input: string, mostBytes?: number): Promise<BatchAnswer> {
    if (input === '') return new BatchAnswer(Buffer.alloc(0));
    const options = mostBytes === undefined ? { input } : { input, mostBytes };
    return new BatchAnswer(await runGit(this.root, ['cat-file', form, '--follow-symlinks'], options));
  }

  /**
   * Why a file was not found: undefined when it is not there at all, else the submodule that its path leads into.
   *
   * @throws GitTrouble when it is there, but a partial clone lacks its content
   */
  async submodule({ id, title }: Commit, path: string): Promise<Submodule | undefined> {
    const folders = path.split('/').map((_, i, all) => all.slice(0, i + 1).join('/'));
    const answer = await runGit(this.root, ['ls-tree', '-z', '--full-tree', id, '--', ...folders]);
    for (const line of answer.toString('utf8').split('\0')) {
      const [, type, object, there] = /^\d+ (blob|commit) ([0-9a-f]+)\t([\s\S]*)$/.exec(line) ?? [];
      if (object === undefined || there === undefined) continue;
      if (type === 'commit')
        return { folder: join(this.root, there), commit: object, rest: path.slice(there.length + 1) };
      if (there === path)
        throw new GitTrouble(
          `${path} is in ${title}, but this partial clone lacks its content, and nothing is fetched here. Fetch it: \`git cat-file -e ${object}\`.`,
        );
    }
    return undefined;
  }

  /** The path of a file as git writes it; undefined: it lies outside the work tree. */
  pathOf(uri: string): string | undefined {
    try {
      return pathBelow(this.root, fileURLToPath(uri));
    } catch {
      return undefined;
    }
  }
}

async function askWhere(folder: string): Promise<Buffer> {
  try {
    return await runGit(folder, ['rev-parse', '--is-bare-repository', '--is-shallow-repository']);
  } catch (error) {
    if (error instanceof GitTrouble && error.message.startsWith('not a git repository'))
      throw new GitTrouble(
        'This folder is in no git repository. Name two files instead: `feedplot review OLD NEW`.',
      );
    const [, root] =
      /^detected dubious ownership in repository at '(.*)'/.exec(
        error instanceof GitTrouble ? error.message : '',
      ) ?? [];
    if (root !== undefined)
      throw new GitTrouble(
        `${root} belongs to somebody else, so git does not read it. If you trust it: \`git config --global --add safe.directory ${root}\`.`,
      );
    throw error;
  }
}

function commitOf(id: string, revision: string): Commit {
  return { id, title: id.startsWith(revision) ? short(id) : `${revision} (${short(id)})` };
}

function parentOf(id: string, index: number): Commit {
  return { id, title: `parent ${index + 1} (${short(id)})` };
}

function short(id: string): string {
  return id.slice(0, 8);
}

function linesOf(answer: Buffer): string[] {
  return answer.toString('utf8').replace(/\n$/, '').split('\n');
}

function pathBelow(root: string, path: string): string | undefined {
  const below = relative(root, path);
  if (below === '..' || below.startsWith(`..${sep}`) || resolve(root, below) !== resolve(path))
    return undefined;
  return below.split(sep).join('/');
}

/** What `git cat-file --batch` answers: for each question a line, then the contents where they were asked for. */
class BatchAnswer {
  readonly #bytes: Buffer;
  #at = 0;

  constructor(bytes: Buffer) {
    this.#bytes = bytes;
  }

  /** The size of the next file, or why there is none. */
  next(): { readonly size: number } | MissingFile['reason'] {
    const line = this.#line();
    const [, type, size] = /^[0-9a-f]{40,64} (\w+) (\d+)$/.exec(line) ?? [];
    if (type === 'blob') return { size: Number(size) };
    // With contents a folder is answered with its own; only their size is asked before.
    if (type !== undefined) return 'not found';
    const [, why, length] = /^(dangling|loop|notdir|symlink) (\d+)$/.exec(line) ?? [];
    if (why === undefined) return line.endsWith(' ambiguous') ? 'unreadable' : 'not found';
    // The link's target stands on lines of its own.
    this.#at += Number(length) + 1;
    return why === 'symlink' ? 'outside' : why === 'loop' ? 'unreadable' : 'not found';
  }

  take(size: number): Uint8Array {
    const bytes = this.#bytes.subarray(this.#at, this.#at + size);
    this.#at += size + 1;
    return bytes;
  }

  #line(): string {
    const end = this.#bytes.indexOf(0x0a, this.#at);
    const line = this.#bytes.toString('utf8', this.#at, end < 0 ? this.#bytes.length : end);
    this.#at = end < 0 ? this.#bytes.length : end + 1;
    return line;
  }
}
