import { existsSync, readFileSync, realpathSync, statSync } from 'node:fs';
import { dirname, join, sep } from 'node:path';
import type { FileAccess } from '../plan/assemble.ts';
import { readLibrary } from '../plan/library/read.ts';
import type { MissingFile } from '../plan/plan.ts';
import { MOST_BYTES, readBytes } from '../plan/read-bytes.ts';
import type { ReadFile } from '../plan/read-file.ts';
import { filePath } from './file-uri.ts';

type Missing = MissingFile['reason'];

/** The files of a plan on this machine's disk. Nothing outside one folder is read, whatever a link points to. */
export class Disk implements FileAccess {
  readonly library: readonly ReadFile[];
  readonly #boundary: string;
  readonly #files = new Map<string, ReadFile | Missing>();

  /**
   * @param boundary Real path of the folder that imports may not leave.
   * @param libraryFolder URI of the folder of the shipped library.
   */
  constructor(boundary: string, libraryFolder: string) {
    this.#boundary = boundary;
    this.library = readLibrary(libraryFolder);
  }

  file(uri: string): ReadFile | Missing {
    let file = this.#files.get(uri);
    if (file === undefined) {
      file = this.#read(uri);
      this.#files.set(uri, file);
    }
    return file;
  }

  #read(uri: string): ReadFile | Missing {
    const path = filePath(uri);
    if (path === undefined) return 'not found';
    if (!isInside(path, this.#boundary)) return 'outside';
    try {
      const real = realpathSync(path);
      if (!isInside(real, this.#boundary)) return 'outside';
      const { size } = requireFile(real);
      if (size > MOST_BYTES) return 'too large';
      return readBytes(uri, readFileSync(real));
    } catch (error) {
      const { code } = error as NodeJS.ErrnoException;
      return code === 'ENOENT' || code === 'ENOTDIR' ? 'not found' : 'unreadable';
    }
  }
}

/** @throws for a folder, a device, a pipe: reading those may never end. */
function requireFile(path: string): { size: number } {
  const stats = statSync(path);
  if (!stats.isFile()) throw new Error(`${path} is no file`);
  return stats;
}

/** The folder that the imports of a plan may not leave: the nearest one above with `.git`, else the plan's own. */
export function boundaryOf(planPath: string): string {
  const own = dirname(planPath);
  for (let folder = own; ; folder = dirname(folder)) {
    if (existsSync(join(folder, '.git'))) return folder;
    if (folder === dirname(folder)) return own;
  }
}

function isInside(path: string, folder: string): boolean {
  return path.startsWith(folder.endsWith(sep) ? folder : folder + sep);
}
