import { lstatSync, mkdirSync, realpathSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve, sep } from 'node:path';
import { Trouble } from './trouble.ts';

/** A folder that files are written into and never outside of, whatever a link in it points to. */
export class OutputFolder {
  /** What the folder really is. */
  readonly path: string;
  readonly written: string[] = [];

  /** @throws Trouble when it cannot be made or is no folder. */
  constructor(path: string) {
    const wanted = resolve(path);
    try {
      mkdirSync(wanted, { recursive: true });
      this.path = realpathSync(wanted);
    } catch (error) {
      throw new Trouble(`${path} cannot be used as a folder: ${(error as Error).message}`);
    }
    if (!statSync(this.path).isDirectory()) throw new Trouble(`${path} is no folder.`);
  }

  /**
   * Writes a file whole or not at all: beside its place first, then into it.
   *
   * @param name Path below the folder, parts joined by `/`.
   * @throws Trouble when it would lie outside, is a link or a folder, or cannot be written.
   */
  write(name: string, content: string | Uint8Array): void {
    const path = join(this.path, ...name.split('/'));
    if (!path.startsWith(this.path.endsWith(sep) ? this.path : this.path + sep))
      throw new Trouble(`${name} would lie outside ${this.path}.`);
    try {
      mkdirSync(dirname(path), { recursive: true });
      this.#refuseLinks(path, name);
      const beside = `${path}.part`;
      rmSync(beside, { force: true });
      writeFileSync(beside, content, { flag: 'wx' });
      renameSync(beside, path);
    } catch (error) {
      if (error instanceof Trouble) throw error;
      throw new Trouble(`${name} could not be written: ${(error as Error).message}`);
    }
    this.written.push(name);
  }

  #refuseLinks(path: string, name: string): void {
    if (realpathSync(dirname(path)) !== dirname(path))
      throw new Trouble(
        `${name} would be written through a link to another folder; nothing was written there.`,
      );
    const there = lstatSync(path, { throwIfNoEntry: false });
    if (there && !there.isFile())
      throw new Trouble(`${name} is there and is no plain file; it was left alone.`);
  }
}
