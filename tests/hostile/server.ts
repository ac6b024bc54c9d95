/** A language server in this process, asked everything that it can be asked. */
import { PassThrough } from 'node:stream';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import {
  createProtocolConnection,
  type InitializeResult,
  LSPErrorCodes,
  type Position,
  type ProtocolConnection,
  type Range,
  ResponseError,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver-protocol/node';
import { guarded } from '../../src/server/faults.ts';
import { addReviewHandlers } from '../../src/server/review.ts';
import { createServerServices } from '../../src/server/services.ts';
import { startServer } from '../../src/server/start.ts';
import { MemoryFiles } from '../incremental/memory-files.ts';
import { misspoken } from './words.ts';

const folder = 'file:///show';
export const shown = `${folder}/show.feedplot`;
const before = `${folder}/before.feedplot`;

/** Where in the text a request is about. */
export interface Place {
  readonly position: Position;
  readonly range: Range;
}

/** One request: what it sends, and what follows out of its answer. */
export interface Question {
  readonly method: string;
  /** Asked once a text rather than at a place. */
  readonly ofFile?: true;
  readonly params: (place: Place) => object;
  /** Requests that take an item of the answer. */
  readonly next?: readonly { readonly method: string; readonly params: (item: never) => unknown }[];
}

const textDocument = { uri: shown };
const options = { tabSize: 2, insertSpaces: true };
const resolving = (method: string) => [{ method, params: (item: never) => item as unknown }];

export const questions: readonly Question[] = [
  {
    method: 'textDocument/completion',
    params: ({ position }) => ({ textDocument, position }),
    next: resolving('completionItem/resolve'),
  },
  { method: 'textDocument/hover', params: ({ position }) => ({ textDocument, position }) },
  { method: 'textDocument/definition', params: ({ position }) => ({ textDocument, position }) },
  {
    method: 'textDocument/references',
    params: ({ position }) => ({ textDocument, position, context: { includeDeclaration: true } }),
  },
  { method: 'textDocument/documentHighlight', params: ({ position }) => ({ textDocument, position }) },
  { method: 'textDocument/prepareRename', params: ({ position }) => ({ textDocument, position }) },
  {
    method: 'textDocument/rename',
    params: ({ position }) => ({ textDocument, position, newName: 'renamed_9' }),
  },
  {
    method: 'textDocument/selectionRange',
    params: ({ position }) => ({ textDocument, positions: [position] }),
  },
  { method: 'textDocument/linkedEditingRange', params: ({ position }) => ({ textDocument, position }) },
  {
    method: 'textDocument/prepareCallHierarchy',
    params: ({ position }) => ({ textDocument, position }),
    next: [
      { method: 'callHierarchy/incomingCalls', params: (item) => ({ item }) },
      { method: 'callHierarchy/outgoingCalls', params: (item) => ({ item }) },
    ],
  },
  {
    method: 'textDocument/codeAction',
    params: ({ range }) => ({ textDocument, range, context: { diagnostics: [] } }),
  },
  {
    method: 'textDocument/inlayHint',
    params: ({ range }) => ({ textDocument, range }),
    next: resolving('inlayHint/resolve'),
  },
  { method: 'textDocument/semanticTokens/range', params: ({ range }) => ({ textDocument, range }) },
  { method: 'textDocument/rangeFormatting', params: ({ range }) => ({ textDocument, range, options }) },
  {
    method: 'textDocument/onTypeFormatting',
    params: ({ position }) => ({ textDocument, position, ch: '\n', options }),
  },
  { method: 'feedplot/thingAt', params: ({ position }) => ({ uri: shown, position }) },
  { method: 'textDocument/documentSymbol', ofFile: true, params: () => ({ textDocument }) },
  {
    method: 'textDocument/codeLens',
    ofFile: true,
    params: () => ({ textDocument }),
    next: resolving('codeLens/resolve'),
  },
  { method: 'textDocument/documentLink', ofFile: true, params: () => ({ textDocument }) },
  { method: 'textDocument/foldingRange', ofFile: true, params: () => ({ textDocument }) },
  { method: 'textDocument/formatting', ofFile: true, params: () => ({ textDocument, options }) },
  { method: 'textDocument/semanticTokens/full', ofFile: true, params: () => ({ textDocument }) },
  {
    method: 'textDocument/semanticTokens/full/delta',
    ofFile: true,
    params: () => ({ textDocument, previousResultId: '' }),
  },
  { method: 'workspace/symbol', ofFile: true, params: () => ({ query: 'o' }) },
  {
    method: 'workspace/willRenameFiles',
    ofFile: true,
    params: () => ({ files: [{ oldUri: before, newUri: `${folder}/new.feedplot` }] }),
  },
  { method: 'feedplot/health', ofFile: true, params: () => ({ uri: shown }) },
  { method: 'feedplot/drawing', ofFile: true, params: () => ({ uri: shown, place: null, have: null }) },
  { method: 'feedplot/drawing', ofFile: true, params: () => ({ uri: shown, place: 'desk', have: 1 }) },
  {
    method: 'feedplot/thingPlace',
    ofFile: true,
    params: () => ({ plan: shown, id: 'box_s', what: 'thing' }),
  },
  { method: 'feedplot/book', ofFile: true, params: () => ({ uri: shown }) },
  {
    method: 'feedplot/review',
    ofFile: true,
    params: () => ({ uri: shown, against: { kind: 'file', uri: before } }),
  },
  { method: 'feedplot/textThen', ofFile: true, params: () => ({ uri: shown, revision: '../x' }) },
];

/** The server, with one file open. */
export class AskedServer implements Disposable {
  readonly #client: ProtocolConnection;
  readonly #finish: () => void;
  readonly #log: string[] = [];
  readonly #faults: string[] = [];
  #version = 0;
  #text = '';
  /** How many requests were answered. */
  asked = 0;
  readonly initialized: InitializeResult;

  private constructor(client: ProtocolConnection, initialized: InitializeResult, finish: () => void) {
    this.#client = client;
    this.#finish = finish;
    this.initialized = initialized;
    client.onNotification('window/logMessage', ({ message }: { message: string }) => {
      this.#log.push(message);
    });
    client.onNotification('window/showMessage', ({ message }: { message: string }) =>
      this.#listen('message', message),
    );
    client.onNotification('textDocument/publishDiagnostics', (told: object) =>
      this.#listen('findings', told),
    );
  }

  static async start(other: string): Promise<AskedServer> {
    const [up, down] = [new PassThrough(), new PassThrough()];
    const connection = createConnection(
      ProposedFeatures.all,
      new StreamMessageReader(up),
      new StreamMessageWriter(down),
    );
    const files = new MemoryFiles();
    files.files.set(before, other);
    const { shared } = createServerServices({
      connection,
      libraryFolder: 'file:///library',
      fileSystemProvider: () => files,
    });
    addReviewHandlers(guarded(connection, shared.plans.Faults), shared, 'file:///library');
    startServer(shared);
    const client = createProtocolConnection(new StreamMessageReader(down), new StreamMessageWriter(up));
    client.listen();
    for (const method of [
      'client/registerCapability',
      'workspace/inlayHint/refresh',
      'workspace/codeLens/refresh',
    ])
      client.onRequest(method, () => null);
    const initialized = await client.sendRequest<InitializeResult>('initialize', {
      processId: null,
      rootUri: null,
      workspaceFolders: [{ uri: folder, name: 'show' }],
      capabilities: {
        workspace: { workspaceEdit: { documentChanges: true, resourceOperations: ['create'] } },
      },
    });
    await client.sendNotification('initialized', {});
    const server = new AskedServer(client, initialized, () => shared.plans.Plans.finish());
    await client.sendNotification('textDocument/didOpen', {
      textDocument: { uri: shown, languageId: 'feedplot', version: 0, text: '' },
    });
    return server;
  }

  [Symbol.dispose](): void {
    this.#client.dispose();
  }

  /** Makes the open file another text, by an edit of what differs, as an editor tells it. */
  async open(text: string): Promise<void> {
    this.#version++;
    const old = this.#text;
    const most = Math.min(old.length, text.length);
    let start = 0;
    while (start < most && old[start] === text[start]) start++;
    let behind = 0;
    while (behind < most - start && old.at(-1 - behind) === text.at(-1 - behind)) behind++;
    const range = { start: positionIn(old, start), end: positionIn(old, old.length - behind) };
    this.#text = text;
    await this.#client.sendNotification('textDocument/didChange', {
      textDocument: { uri: shown, version: this.#version },
      contentChanges: [{ range, text: text.slice(start, text.length - behind) }],
    });
  }

  placeAt(offset: number, length: number): Place {
    const from = Math.min(offset, this.#text.length);
    const position = positionIn(this.#text, from);
    return { position, range: { start: position, end: positionIn(this.#text, from + length) } };
  }

  /** Asks one question, and what follows out of its answer. */
  async ask({ method, params, next = [] }: Question, place: Place): Promise<void> {
    const answer = await this.#send(method, params(place));
    const items: unknown[] = Array.isArray(answer)
      ? answer
      : ((answer as { items?: unknown[] } | null)?.items ?? []);
    for (const { method: followed, params: of } of next)
      for (const item of items.slice(0, 3)) await this.#send(followed, of(item as never));
  }

  /** What went wrong since this was asked last, in words; undefined for nothing. */
  fault(): string | undefined {
    this.#finish();
    const logged = this.#log.splice(0).find((line) => line.includes('fault of Feedplot'));
    const said = this.#faults.splice(0)[0];
    return logged ?? said;
  }

  async #send(method: string, params: unknown): Promise<unknown> {
    this.asked++;
    try {
      const answer = await this.#client.sendRequest<unknown>(method, params);
      this.#listen(method, answer);
      return answer;
    } catch (error) {
      if (!(error instanceof ResponseError)) throw error;
      this.#listen(method, error.message);
      const cancelled: readonly number[] = [LSPErrorCodes.RequestCancelled, LSPErrorCodes.ServerCancelled];
      if (!cancelled.includes(error.code) && !/-32602/.test(String(error.code)))
        this.#faults.push(`${method} ${JSON.stringify(params)}: ${error.code} ${error.message}`);
      return null;
    }
  }

  #listen(where: string, told: unknown): void {
    const fault = misspoken(textsIn(told).join('\n'), where === 'findings' ? 'file' : 'editor');
    if (fault) this.#faults.push(`${where}: ${fault}`);
  }
}

/** Every text in an answer, but the plan's own where it comes back. */
function textsIn(told: unknown, key = ''): string[] {
  if (typeof told === 'string') return ['newText', 'text', 'style', 'uri'].includes(key) ? [] : [told];
  if (Array.isArray(told)) return told.flatMap((item) => textsIn(item, key));
  if (typeof told !== 'object' || told === null) return [];
  return Object.entries(told).flatMap(([name, value]) => textsIn(value, name));
}

function positionIn(text: string, offset: number): Position {
  const lines = text.slice(0, offset).split(/\r\n|\r|\n/);
  return { line: lines.length - 1, character: lines.at(-1)!.length };
}
