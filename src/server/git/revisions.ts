import { existsSync, realpathSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { URI } from 'langium';
import { type Revisions, RevisionTrouble } from '../review.ts';
import { GitTrouble } from './git.ts';
import { readPlanThen } from './plan-then.ts';
import { type Commit, Repository } from './repository.ts';

/** Revisions out of the git repository that a plan lies in. */
export const gitRevisions: Revisions = {
  plan: (plan, revision, library) =>
    inWords(async () => {
      const path = realPath(plan.uri);
      const repository = await Repository.open(nearestFolder(path));
      const commit = await repository.commit(revision);
      const wanted = {
        title: plan.title,
        uri: uriOf(path),
        isThereNow: (other: string) => existsSync(join(repository.root, other)),
      };
      const read = async (one: Commit) => ({
        ...(await readPlanThen(repository, one, wanted, library, uriOf)),
        title: one.title,
      });
      const old = await read(commit);
      return {
        old,
        mergedWith: await quietly(async () => Promise.all((await repository.mergedWith(commit)).map(read))),
      };
    }),

  text: (uri, revision) =>
    inWords(async () => {
      const path = realPath(uri);
      const repository = await Repository.open(nearestFolder(path));
      const inside = repository.pathOf(uriOf(path));
      if (inside === undefined) return undefined;
      const then = (await repository.read(await repository.commit(revision), [inside])).get(inside);
      return then === undefined || typeof then === 'string' ? undefined : new TextDecoder().decode(then);
    }),
};

function uriOf(path: string): string {
  return URI.file(path).toString();
}

/** Where a file really lies, through all links; of a file that is gone, where its folder does. */
function realPath(uri: string): string {
  if (!uri.startsWith('file:'))
    throw new RevisionTrouble('Only files on this machine have a repository. Compare with a file instead.');
  const path = fileURLToPath(uri);
  const folder = nearestFolder(path);
  return existsSync(path) ? realpathSync(path) : join(realpathSync(folder), relative(folder, path));
}

/** The folder of a file, or the nearest one above that is still there. */
function nearestFolder(path: string): string {
  let folder = dirname(path);
  while (!existsSync(folder) && folder !== dirname(folder)) folder = dirname(folder);
  return folder;
}

/** Nothing where the repository cannot answer. */
async function quietly<T>(ask: () => Promise<readonly T[]>): Promise<readonly T[]> {
  try {
    return await ask();
  } catch (error) {
    if (error instanceof GitTrouble) return [];
    throw error;
  }
}

async function inWords<T>(ask: () => Promise<T>): Promise<T> {
  try {
    return await ask();
  } catch (error) {
    if (error instanceof GitTrouble) throw new RevisionTrouble(error.message);
    throw error;
  }
}
