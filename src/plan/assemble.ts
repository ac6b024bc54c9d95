import { importClosure, resolveImport } from '../language/imports.ts';
import type { MissingFile, Plan, Statement, Unreadable } from './plan.ts';
import type { ReadFile } from './read-file.ts';

/** At most so many files make one plan; more are a loop of links or a slip, not a show. */
const MOST_FILES = 500;

/** Where files come from: the disk, the editor's open documents, a test's strings. */
export interface FileAccess {
  /** The file as read, or why it cannot be had. */
  file(uri: string): ReadFile | MissingFile['reason'];
  /** The files of the shipped library. */
  readonly library: readonly ReadFile[];
}

/** A plan and the places in its files that could not be read. */
export interface AssembledPlan {
  readonly plan: Plan;
  readonly unreadables: readonly Unreadable[];
  /** The statements in which something is written wrongly, in no order. */
  readonly faulty: readonly Statement[];
  /** Changes when something is found, beside the facts, that was not or was found before. */
  readonly wording: number;
  /** By file: how many labels had been replaced when this was put together. */
  readonly labelsReplaced: readonly number[];
  readonly files: readonly ReadFile[];
}

/** The labels that were replaced since a plan was put together, while its files are still the same. */
export function labelsReplacedSince({ files, labelsReplaced }: AssembledPlan): (string | undefined)[] {
  return files.flatMap((file, i) => file.formerLabels.slice(labelsReplaced[i]));
}

/**
 * Puts a plan together: its own file, what that imports, what those import, and the shipped library. Cycles are
 * harmless: each file stands once, where it is first named.
 *
 * @param before The same plan as it was: while no fact and no file is new, it is the same object again.
 */
export function assemblePlan(
  uri: string,
  access: FileAccess,
  before?: AssembledPlan,
): AssembledPlan | undefined {
  const read = new Map<string, ReadFile>();
  const missingFiles: MissingFile[] = [];
  const own = access.file(uri);
  if (typeof own === 'string') return undefined;
  read.set(uri, own);
  const order = importClosure(uri, (from) => {
    const imports: string[] = [];
    for (const statement of read.get(from)?.imports ?? []) {
      const target = resolveImport(from, statement.fact.path);
      const reason = target === undefined ? 'outside' : obtain(target);
      if (typeof reason === 'string') missingFiles.push({ statement, reason });
      else if (target !== undefined) imports.push(target);
    }
    return imports;
  });

  function obtain(target: string): ReadFile | MissingFile['reason'] {
    const known = read.get(target);
    if (known) return known;
    if (read.size >= MOST_FILES) return 'too many';
    const file = access.file(target);
    if (typeof file === 'string') return file;
    if (file.hasPlan) return 'has a plan';
    read.set(target, file);
    return file;
  }

  const files = [
    ...order.map((file) => read.get(file)!),
    ...access.library.filter((file) => !read.has(file.uri)),
  ];
  const plan: Plan = {
    file: uri,
    files: files.map((file) => file.uri),
    statements: joined(files.map((file) => file.statements)),
    missingFiles,
    libraryFiles: new Set(access.library.map((file) => file.uri)),
  };
  return {
    plan: before && isSamePlan(before.plan, plan) ? before.plan : plan,
    unreadables: files.flatMap((file) => file.unreadables),
    faulty: files.flatMap((file) => file.faulty),
    wording: files.reduce((sum, file) => sum + file.wording, 0),
    labelsReplaced: files.map((file) => file.formerLabels.length),
    files,
  };
}

/** Array.concat copies whole lists at once, which flatMap does not. */
function joined(lists: readonly (readonly Statement[])[]): readonly Statement[] {
  return ([] as Statement[]).concat(...lists);
}

function isSamePlan(a: Plan, b: Plan): boolean {
  return (
    sameItems(a.files, b.files) &&
    sameItems(a.statements, b.statements) &&
    a.missingFiles.length === b.missingFiles.length &&
    a.missingFiles.every(({ statement, reason }, i) => {
      const other = b.missingFiles[i]!;
      return statement === other.statement && reason === other.reason;
    })
  );
}

function sameItems<T>(a: readonly T[], b: readonly T[]): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}
