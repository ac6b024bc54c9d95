/** One editor with one server of its own: opens a plan, types into it and takes the time. */
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import {
  createProtocolConnection,
  type Position,
  type ProtocolConnection,
  type PublishDiagnosticsParams,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver-protocol/node';

const PATIENCE_MS = 60_000;

/** What the server asks of an editor. */
const asked = [
  'client/registerCapability',
  'workspace/configuration',
  'workspace/inlayHint/refresh',
  'workspace/codeLens/refresh',
];

export class Session {
  readonly name: string;
  /** From the start of the process to the first findings, in milliseconds. */
  cold_ms = 0;
  findings = 0;
  readonly #child: ChildProcess;
  readonly #connection: ProtocolConnection;
  readonly #folder: string;
  readonly #uri: string;
  #text: string;
  #version = 1;
  #waiting: ((params: PublishDiagnosticsParams) => void) | undefined;

  private constructor(name: string, command: readonly string[], files: Map<string, string>, typedIn: string) {
    this.name = name;
    this.#folder = mkdtempSync(join(tmpdir(), 'feedplot-bench-'));
    for (const [path, text] of files) {
      mkdirSync(dirname(join(this.#folder, path)), { recursive: true });
      writeFileSync(join(this.#folder, path), text);
    }
    this.#uri = pathToFileURL(join(this.#folder, typedIn)).toString();
    this.#text = files.get(typedIn)!;
    this.#child = spawn(process.execPath, [...command], { stdio: ['pipe', 'pipe', 'inherit'] });
    this.#connection = createProtocolConnection(
      new StreamMessageReader(this.#child.stdout!),
      new StreamMessageWriter(this.#child.stdin!),
    );
  }

  /** Starts a server on a folder with these files and opens the one that will be typed in. */
  static async start(
    name: string,
    command: readonly string[],
    files: Map<string, string>,
    typedIn = 'show.feedplot',
  ): Promise<Session> {
    const began = performance.now();
    const session = new Session(name, command, files, typedIn);
    const connection = session.#connection;
    connection.onNotification('textDocument/publishDiagnostics', (params: PublishDiagnosticsParams) => {
      if (params.uri === session.#uri && params.version === session.#version) session.#waiting?.(params);
    });
    for (const request of asked) connection.onRequest(request, () => null);
    connection.listen();
    const folder = { uri: pathToFileURL(session.#folder).toString(), name: 'bench' };
    await connection.sendRequest('initialize', {
      processId: process.pid,
      rootUri: folder.uri,
      workspaceFolders: [folder],
      capabilities: { textDocument: { publishDiagnostics: { versionSupport: true } } },
    });
    await connection.sendNotification('initialized', {});
    const first = session.#published();
    await connection.sendNotification('textDocument/didOpen', {
      textDocument: { uri: session.#uri, languageId: 'feedplot', version: 1, text: session.#text },
    });
    session.findings = (await first).diagnostics.length;
    session.cold_ms = performance.now() - began;
    return session;
  }

  /** The file that is typed in. */
  get uri(): string {
    return this.#uri;
  }

  get text(): string {
    return this.#text;
  }

  /** Replaces [start, end). @returns the milliseconds until the findings of the new text are there. */
  async type(start: number, end: number, text: string): Promise<number> {
    const range = { start: this.position(start), end: this.position(end) };
    this.#text = this.#text.slice(0, start) + text + this.#text.slice(end);
    this.#version++;
    const published = this.#published();
    const began = performance.now();
    await this.#connection.sendNotification('textDocument/didChange', {
      textDocument: { uri: this.#uri, version: this.#version },
      contentChanges: [{ range, text }],
    });
    this.findings = (await published).diagnostics.length;
    return performance.now() - began;
  }

  /** Types and asks at once. @returns the milliseconds until the answer is there. */
  async typeAndAsk(
    start: number,
    end: number,
    text: string,
    method: string,
    params: Record<string, unknown>,
  ): Promise<number> {
    const typed = this.type(start, end, text);
    const began = performance.now();
    await this.ask(method, { textDocument: { uri: this.#uri }, ...params });
    const took_ms = performance.now() - began;
    await typed;
    return took_ms;
  }

  ask<T>(method: string, params: object): Promise<T> {
    return this.#connection.sendRequest<T>(method, params);
  }

  position(offset: number): Position {
    const before = this.#text.slice(0, offset);
    const line = before.split('\n').length - 1;
    return { line, character: offset - (before.lastIndexOf('\n') + 1) };
  }

  /** The most memory that the server ever had, in MiB; undefined where the system does not tell. */
  peakMemory_mib(): number | undefined {
    try {
      const status = readFileSync(`/proc/${this.#child.pid}/status`, 'utf8');
      return Number(/VmHWM:\s+(\d+)/.exec(status)?.[1]) / 1024;
    } catch {
      return undefined;
    }
  }

  async end(): Promise<void> {
    const ended = new Promise((resolve) => this.#child.once('exit', resolve));
    await this.#connection.sendRequest('shutdown');
    await this.#connection.sendNotification('exit');
    await ended;
    this.#connection.dispose();
    rmSync(this.#folder, { recursive: true });
  }

  #published(): Promise<PublishDiagnosticsParams> {
    return new Promise((resolve, reject) => {
      const timer = setTimeout(() => reject(new Error(`${this.name}: no findings came`)), PATIENCE_MS);
      this.#waiting = (params) => {
        clearTimeout(timer);
        this.#waiting = undefined;
        resolve(params);
      };
    });
  }
}
