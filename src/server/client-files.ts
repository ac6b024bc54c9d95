import { type FileSystemNode, type FileSystemProvider, URI } from 'langium';
import type { Connection } from 'vscode-languageserver';
import { type FileKind, type FileQuestion, type FolderEntry, fileRequests } from './protocol.ts';

/** Files that only the editor can read: in a browser, or on a file system of the editor's own. */
export class ClientFiles implements FileSystemProvider {
  readonly #connection: Connection;

  constructor(connection: Connection) {
    this.#connection = connection;
  }

  async stat(uri: URI): Promise<FileSystemNode> {
    const kind = await this.#kind(uri);
    if (kind === null) throw new Error(`There is no file ${uri.toString(true)}.`);
    return nodeOf(uri, kind);
  }

  async exists(uri: URI): Promise<boolean> {
    return (await this.#kind(uri)) !== null;
  }

  async readFile(uri: URI): Promise<string> {
    return this.#ask<string>(fileRequests.read, uri);
  }

  async readBinary(uri: URI): Promise<Uint8Array> {
    return new TextEncoder().encode(await this.readFile(uri));
  }

  async readDirectory(uri: URI): Promise<FileSystemNode[]> {
    const entries = await this.#ask<FolderEntry[]>(fileRequests.list, uri);
    return entries.map((entry) => nodeOf(URI.parse(entry.uri), entry.kind));
  }

  statSync(): FileSystemNode {
    throw noHurry();
  }

  existsSync(): boolean {
    throw noHurry();
  }

  readFileSync(): string {
    throw noHurry();
  }

  readBinarySync(): Uint8Array {
    throw noHurry();
  }

  readDirectorySync(): FileSystemNode[] {
    throw noHurry();
  }

  /** Null also from an editor that knows nothing of these questions. */
  async #kind(uri: URI): Promise<FileKind | null> {
    try {
      return await this.#ask<FileKind | null>(fileRequests.kind, uri);
    } catch {
      return null;
    }
  }

  #ask<T>(method: string, uri: URI): Promise<T> {
    const question: FileQuestion = { uri: uri.toString() };
    return this.#connection.sendRequest<T>(method, question);
  }
}

/** Files on the disk by one provider, everything else by another. */
export class FilesByScheme implements FileSystemProvider {
  readonly #disk: FileSystemProvider;
  readonly #others: FileSystemProvider;

  constructor(disk: FileSystemProvider, others: FileSystemProvider) {
    this.#disk = disk;
    this.#others = others;
  }

  #for(uri: URI): FileSystemProvider {
    return uri.scheme === 'file' ? this.#disk : this.#others;
  }

  stat(uri: URI): Promise<FileSystemNode> {
    return this.#for(uri).stat(uri);
  }

  exists(uri: URI): Promise<boolean> {
    return this.#for(uri).exists(uri);
  }

  readFile(uri: URI): Promise<string> {
    return this.#for(uri).readFile(uri);
  }

  readBinary(uri: URI): Promise<Uint8Array> {
    return this.#for(uri).readBinary(uri);
  }

  readDirectory(uri: URI): Promise<FileSystemNode[]> {
    return this.#for(uri).readDirectory(uri);
  }

  statSync(uri: URI): FileSystemNode {
    return this.#for(uri).statSync(uri);
  }

  existsSync(uri: URI): boolean {
    return this.#for(uri).existsSync(uri);
  }

  readFileSync(uri: URI): string {
    return this.#for(uri).readFileSync(uri);
  }

  readBinarySync(uri: URI): Uint8Array {
    return this.#for(uri).readBinarySync(uri);
  }

  readDirectorySync(uri: URI): FileSystemNode[] {
    return this.#for(uri).readDirectorySync(uri);
  }
}

function nodeOf(uri: URI, kind: FileKind): FileSystemNode {
  return { uri, isFile: kind === 'file', isDirectory: kind === 'folder' };
}

function noHurry(): Error {
  return new Error('The editor must be asked for this file, and that takes a while.');
}
