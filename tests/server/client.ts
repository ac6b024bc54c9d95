/**
 * An editor for tests: starts the language server as a program of its own and speaks the protocol with it over the
 * standard streams, as any editor does.
 */
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import {
  type ClientCapabilities,
  createProtocolConnection,
  type Diagnostic,
  type InitializeResult,
  type Position,
  type ProtocolConnection,
  type PublishDiagnosticsParams,
  type Range,
  StreamMessageReader,
  StreamMessageWriter,
  type TextEdit,
  type WorkspaceEdit,
} from 'vscode-languageserver-protocol/node';

/** The program that ships; another build of it can be named, to test that one. */
export const program = process.env.FEEDPLOT ?? path.join(import.meta.dirname, '../../dist/feedplot.cjs');

/** No answer takes that long; a test fails with what it waited for instead of hanging. */
const PATIENCE_MS = 20_000;

export interface EditorOptions {
  /** Settings as the user has them, below `feedplot`. */
  readonly settings?: Record<string, unknown>;
  readonly initializationOptions?: Record<string, unknown>;
  /** What this editor can do beyond the least. */
  readonly capabilities?: ClientCapabilities;
  /** Files that are on disk but outside the folder of the workspace are written with `../` in their names. */
  readonly files: Record<string, string>;
}

interface OpenFile {
  version: number;
  text: string;
}

/** One editor with one folder open. Dispose of it at the end of the test. */
export class Editor implements AsyncDisposable {
  readonly #process: ChildProcess;
  readonly #folder: string;
  readonly #open = new Map<string, OpenFile>();
  readonly #published = new Map<string, PublishDiagnosticsParams>();
  readonly #waiting = new Set<() => void>();
  readonly #asked: string[] = [];
  readonly connection: ProtocolConnection;
  /** What the server wrote to its error stream or logged. */
  readonly log: string[] = [];
  /** Registrations that the server asked for, by method. */
  readonly registered = new Map<string, unknown>();
  initialized!: InitializeResult;

  private constructor(child: ChildProcess, folder: string) {
    this.#process = child;
    this.#folder = folder;
    this.connection = createProtocolConnection(
      new StreamMessageReader(child.stdout!),
      new StreamMessageWriter(child.stdin!),
    );
  }

  /** Writes the files into a fresh folder, starts a server on it and waits until the workspace is read. */
  static async start(options: EditorOptions): Promise<Editor> {
    const base = mkdtempSync(path.join(tmpdir(), 'feedplot-editor-'));
    const folder = path.join(base, 'show');
    mkdirSync(folder);
    for (const [name, text] of Object.entries(options.files)) {
      const file = path.join(folder, name);
      mkdirSync(path.dirname(file), { recursive: true });
      writeFileSync(file, text);
    }
    const child = spawn(process.execPath, [program, 'serve', '--stdio'], { stdio: 'pipe' });
    const editor = new Editor(child, folder);
    child.stderr!.on('data', (data: Buffer) => editor.log.push(data.toString()));
    await editor.#connect(options);
    return editor;
  }

  async #connect({
    settings = {},
    initializationOptions = {},
    capabilities = {},
  }: EditorOptions): Promise<void> {
    const { connection } = this;
    connection.onNotification('textDocument/publishDiagnostics', (params: PublishDiagnosticsParams) => {
      this.#published.set(params.uri, params);
      for (const check of this.#waiting) check();
    });
    connection.onNotification('window/logMessage', ({ message }: { message: string }) => {
      this.log.push(message);
    });
    connection.onRequest(
      'client/registerCapability',
      ({ registrations }: { registrations: Registration[] }) => {
        for (const { method, registerOptions } of registrations) this.registered.set(method, registerOptions);
      },
    );
    connection.onRequest('workspace/configuration', ({ items }: { items: unknown[] }) =>
      items.map(() => settings),
    );
    for (const method of ['workspace/inlayHint/refresh', 'workspace/codeLens/refresh'])
      connection.onRequest(method, () => {
        this.#noted(method);
        return null;
      });
    connection.listen();
    const uri = this.uri('').replace(/\/$/, '');
    this.initialized = await connection.sendRequest('initialize', {
      processId: process.pid,
      rootUri: uri,
      workspaceFolders: [{ uri, name: 'show' }],
      initializationOptions,
      capabilities: {
        ...capabilities,
        workspace: {
          configuration: true,
          didChangeWatchedFiles: { dynamicRegistration: true },
          didChangeConfiguration: { dynamicRegistration: true },
          ...capabilities.workspace,
        },
      },
    });
    await connection.sendNotification('initialized', {});
    await connection.sendRequest('workspace/symbol', { query: '' });
  }

  /** URI of a file by its path below the folder. */
  uri(name: string): string {
    return pathToFileURL(path.join(this.#folder, name)).toString();
  }

  /** Path below the folder of a file by its URI. */
  nameOf(uri: string): string {
    return path.relative(this.#folder, new URL(uri).pathname);
  }

  /** Opens a file in the editor, with the given text or as written at the start. @returns its findings. */
  async open(name: string, text: string): Promise<Diagnostic[]> {
    this.#open.set(name, { version: 1, text });
    await this.connection.sendNotification('textDocument/didOpen', {
      textDocument: { uri: this.uri(name), languageId: 'feedplot', version: 1, text },
    });
    return this.findings(name);
  }

  /** Types: replaces the first occurrence of a text by another. @returns the findings afterwards. */
  async replace(name: string, before: string, after: string): Promise<Diagnostic[]> {
    const file = this.#file(name);
    const offset = file.text.indexOf(before);
    if (offset < 0) throw new Error(`${name} does not contain: ${before}`);
    const range = rangeIn(file.text, offset, offset + before.length);
    return this.edit(name, [{ range, newText: after }]);
  }

  /** Writes other text over a whole file. @returns the findings afterwards. */
  async write(name: string, text: string): Promise<Diagnostic[]> {
    const range = rangeIn(this.#file(name).text, 0, this.#file(name).text.length);
    return this.edit(name, [{ range, newText: text }]);
  }

  /** Applies edits, all meant for the text as it was. @returns the findings afterwards. */
  async edit(name: string, edits: readonly TextEdit[]): Promise<Diagnostic[]> {
    const file = this.#file(name);
    const ordered = [...edits].sort((a, b) => comparePositions(b.range.start, a.range.start));
    file.text = applyEdits(file.text, edits);
    file.version++;
    await this.connection.sendNotification('textDocument/didChange', {
      textDocument: { uri: this.uri(name), version: file.version },
      contentChanges: ordered.map(({ range, newText }) => ({ range, text: newText })),
    });
    return this.findings(name);
  }

  /** Does what a rename or a quick fix asks for. Files that are not open are opened first. */
  async apply(change: WorkspaceEdit, texts: Record<string, string> = {}): Promise<void> {
    for (const [uri, edits] of Object.entries(change.changes ?? {})) {
      const name = this.nameOf(uri);
      if (!this.#open.has(name)) await this.open(name, texts[name] ?? '');
      await this.edit(name, edits);
    }
  }

  async close(name: string): Promise<void> {
    this.#open.delete(name);
    await this.connection.sendNotification('textDocument/didClose', {
      textDocument: { uri: this.uri(name) },
    });
  }

  /** The text of an open file as it is now. */
  text(name: string): string {
    return this.#file(name).text;
  }

  /** The findings of an open file, once they are those of its present text. */
  async findings(name: string): Promise<Diagnostic[]> {
    const uri = this.uri(name);
    const { version } = this.#file(name);
    await this.#until(
      () => this.#published.get(uri)?.version === version,
      `findings of version ${version} of ${name}`,
    );
    return this.#published.get(uri)!.diagnostics;
  }

  /** The findings of an open file once they are as wanted: what is costly is told when the typing pauses. */
  async findingsOnce(
    name: string,
    wanted: (findings: readonly Diagnostic[]) => boolean,
  ): Promise<Diagnostic[]> {
    await this.findings(name);
    await this.#until(() => wanted(this.lastFindings(name)), `such findings of ${name}`);
    return this.lastFindings(name);
  }

  /** The findings that a file was told last, open or not. */
  lastFindings(name: string): Diagnostic[] {
    return this.#published.get(this.uri(name))?.diagnostics ?? [];
  }

  /** Asks the server about a place in an open file, where `|` stands in a piece of its text. */
  ask<R>(method: string, name: string, where: string, more: Record<string, unknown> = {}): Promise<R> {
    const params = { textDocument: { uri: this.uri(name) }, position: this.at(name, where), ...more };
    return this.connection.sendRequest<R>(method, params);
  }

  /** Asks the server about a whole file. */
  request<R>(method: string, name: string, more: Record<string, unknown> = {}): Promise<R> {
    return this.connection.sendRequest(method, { textDocument: { uri: this.uri(name) }, ...more });
  }

  /** The place of `|` in a piece of a file's text, such as `box_d.ne|t1`. */
  at(name: string, where: string): Position {
    const cursor = where.indexOf('|');
    const piece = where.slice(0, cursor) + where.slice(cursor + 1);
    const offset = this.#file(name).text.indexOf(piece);
    if (cursor < 0 || offset < 0) throw new Error(`${name} has no such place: ${where}`);
    return positionIn(this.#file(name).text, offset + cursor);
  }

  /** The text of a range of an open file. */
  slice(name: string, { start, end }: Range): string {
    const { text } = this.#file(name);
    return text.slice(offsetIn(text, start), offsetIn(text, end));
  }

  #file(name: string): OpenFile {
    const file = this.#open.get(name);
    if (!file) throw new Error(`${name} is not open`);
    return file;
  }

  #noted(method: string): void {
    this.#asked.push(method);
    for (const check of this.#waiting) check();
  }

  /** Waits until the server has asked this editor for something. */
  async wasAsked(method: string): Promise<void> {
    await this.#until(() => this.#asked.includes(method), `request ${method}`);
  }

  async #until(done: () => boolean, what: string): Promise<void> {
    if (done()) return;
    await new Promise<void>((resolve, reject) => {
      const check = () => {
        if (done()) finish(resolve);
      };
      const finish = (then: () => void) => {
        clearTimeout(timer);
        this.#waiting.delete(check);
        then();
      };
      const fail = () => reject(new Error(`There came no ${what}.\n${this.log.join('\n')}`));
      const timer = setTimeout(() => finish(fail), PATIENCE_MS);
      this.#waiting.add(check);
    });
  }

  async [Symbol.asyncDispose](): Promise<void> {
    const ended = new Promise((resolve) => this.#process.once('exit', resolve));
    await this.connection.sendRequest('shutdown');
    await this.connection.sendNotification('exit');
    await ended;
    this.connection.dispose();
    rmSync(path.dirname(this.#folder), { recursive: true, force: true });
  }
}

interface Registration {
  readonly method: string;
  readonly registerOptions?: unknown;
}

export function applyEdits(text: string, edits: readonly TextEdit[]): string {
  const ordered = [...edits].sort((a, b) => comparePositions(b.range.start, a.range.start));
  return ordered.reduce(
    (whole, { range, newText }) =>
      whole.slice(0, offsetIn(whole, range.start)) + newText + whole.slice(offsetIn(whole, range.end)),
    text,
  );
}

function comparePositions(a: Position, b: Position): number {
  return a.line - b.line || a.character - b.character;
}

function rangeIn(text: string, start: number, end: number): Range {
  return { start: positionIn(text, start), end: positionIn(text, end) };
}

function positionIn(text: string, offset: number): Position {
  const before = text.slice(0, offset).split('\n');
  return { line: before.length - 1, character: before.at(-1)!.length };
}

function offsetIn(text: string, { line, character }: Position): number {
  let start = 0;
  for (let i = 0; i < line; i++) start = text.indexOf('\n', start) + 1;
  return start + character;
}
