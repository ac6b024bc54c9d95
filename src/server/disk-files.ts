import { realpath, stat } from 'node:fs/promises';
import { sep } from 'node:path';
import type { FileSystemNode } from 'langium';
import { URI } from 'langium';
import { NodeFileSystemProvider } from 'langium/node';
import { MOST_BYTES } from '../plan/read-bytes.ts';
import { Unreadable } from './text-on-disk.ts';

/** Files of this machine's disk. Nothing outside some folders is read, whatever a link points to. */
export class DiskFiles extends NodeFileSystemProvider {
  readonly #folders: () => readonly string[];

  /** @param folders URIs of the folders that may be read from. */
  constructor(folders: () => readonly string[]) {
    super();
    this.#folders = folders;
  }

  override async readBinary(uri: URI): Promise<Uint8Array> {
    const path = await realpath(uri.fsPath);
    if (!(await this.#isInside(path))) throw new Unreadable('outside');
    const { size, isFile } = await kindOf(path);
    // A device or a pipe may never end.
    if (!isFile) throw new Unreadable('unreadable');
    if (size > MOST_BYTES) throw new Unreadable('too large');
    return super.readBinary(URI.file(path));
  }

  override async readFile(uri: URI): Promise<string> {
    return new TextDecoder().decode(await this.readBinary(uri));
  }

  /** A folder that may not be listed is an empty one. */
  override async readDirectory(uri: URI): Promise<FileSystemNode[]> {
    try {
      return await super.readDirectory(uri);
    } catch {
      return [];
    }
  }

  async #isInside(path: string): Promise<boolean> {
    for (const folder of this.#folders()) {
      const root = await realpath(URI.parse(folder).fsPath).catch(() => undefined);
      if (root !== undefined && path.startsWith(root.endsWith(sep) ? root : root + sep)) return true;
    }
    return false;
  }
}

async function kindOf(path: string): Promise<{ size: number; isFile: boolean }> {
  const stats = await stat(path);
  return { size: stats.size, isFile: stats.isFile() };
}
