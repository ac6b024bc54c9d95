import { type FileSystemNode, type FileSystemProvider, URI } from 'langium';

/** Files that lie nowhere: URI to text. */
export class MemoryFiles implements FileSystemProvider {
  readonly files = new Map<string, string>();

  async stat(uri: URI): Promise<FileSystemNode> {
    return this.statSync(uri);
  }

  statSync(uri: URI): FileSystemNode {
    if (this.files.has(uri.toString())) return { isFile: true, isDirectory: false, uri };
    if ([...this.files.keys()].some((file) => file.startsWith(`${uri.toString()}/`)))
      return { isFile: false, isDirectory: true, uri };
    throw new Error(`There is no ${uri.toString()}`);
  }

  async exists(uri: URI): Promise<boolean> {
    return this.existsSync(uri);
  }

  existsSync(uri: URI): boolean {
    return this.files.has(uri.toString());
  }

  async readFile(uri: URI): Promise<string> {
    return this.readFileSync(uri);
  }

  readFileSync(uri: URI): string {
    const text = this.files.get(uri.toString());
    if (text === undefined) throw new Error(`There is no ${uri.toString()}`);
    return text;
  }

  async readBinary(uri: URI): Promise<Uint8Array> {
    return this.readBinarySync(uri);
  }

  readBinarySync(uri: URI): Uint8Array {
    return new TextEncoder().encode(this.readFileSync(uri));
  }

  async readDirectory(uri: URI): Promise<FileSystemNode[]> {
    return this.readDirectorySync(uri);
  }

  readDirectorySync(uri: URI): FileSystemNode[] {
    const below = `${uri.toString().replace(/\/$/, '')}/`;
    const names = new Set<string>();
    for (const file of this.files.keys())
      if (file.startsWith(below)) names.add(file.slice(below.length).split('/', 1)[0]!);
    return [...names].map((name) => this.statSync(URI.parse(below + name)));
  }
}
