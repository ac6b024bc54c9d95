/** The server as it runs in a browser: a worker that has no files of its own and asks the editor for every one. */
import path from 'node:path';
import { Worker } from 'node:worker_threads';
import { expect, test } from 'vitest';
import {
  AbstractMessageReader,
  AbstractMessageWriter,
  createProtocolConnection,
  type DataCallback,
  type Hover,
  type MarkupContent,
  type Message,
  type PublishDiagnosticsParams,
} from 'vscode-languageserver-protocol/node';
import { program } from './client.ts';
import { files, show } from './small-show.ts';

const worker = path.join(path.dirname(program), 'server-worker.js');
const folder = 'memfs://shows/evening';

/** A worker of a browser as Node has it. */
const browserScope = `
  const { parentPort } = require('node:worker_threads');
  globalThis.self = globalThis;
  globalThis.postMessage = (message) => parentPort.postMessage(message);
  globalThis.addEventListener = (kind, listen) => {
    if (kind === 'message') parentPort.on('message', (data) => listen({ data }));
  };
  Object.defineProperty(globalThis, 'onmessage', {
    set: (listen) => parentPort.on('message', (data) => listen({ data })),
  });
  require(${JSON.stringify(worker)});
`;

class FromWorker extends AbstractMessageReader {
  readonly #worker: Worker;

  constructor(from: Worker) {
    super();
    this.#worker = from;
  }

  listen(callback: DataCallback) {
    this.#worker.on('message', callback);
    return { dispose: () => this.#worker.off('message', callback) };
  }
}

class ToWorker extends AbstractMessageWriter {
  readonly #worker: Worker;

  constructor(to: Worker) {
    super();
    this.#worker = to;
  }

  async write(message: Message): Promise<void> {
    this.#worker.postMessage(message);
  }

  end(): void {}
}

test('finds the plans of a folder, reads what they import and answers, all through the editor', async () => {
  const thread = new Worker(browserScope, { eval: true });
  const connection = createProtocolConnection(new FromWorker(thread), new ToWorker(thread));
  try {
    const asked: string[] = [];
    const fileOf = (uri: string) => files[uri.slice(folder.length + 1) as keyof typeof files];
    connection.onRequest('feedplot/file/list', ({ uri }: { uri: string }) => {
      asked.push(`list ${uri}`);
      return Object.keys(files).map((name) => ({ uri: `${folder}/${name}`, kind: 'file' }));
    });
    connection.onRequest('feedplot/file/read', ({ uri }: { uri: string }) => {
      asked.push(`read ${uri}`);
      return fileOf(uri);
    });
    connection.onRequest('feedplot/file/kind', ({ uri }: { uri: string }) => (fileOf(uri) ? 'file' : null));
    const told = new Promise<PublishDiagnosticsParams>((resolve) => {
      connection.onNotification('textDocument/publishDiagnostics', (params: PublishDiagnosticsParams) => {
        if (params.version === 1) resolve(params);
      });
    });
    connection.listen();
    await connection.sendRequest('initialize', {
      processId: null,
      rootUri: folder,
      workspaceFolders: [{ uri: folder, name: 'evening' }],
      initializationOptions: { library: 'memfs://extension/library' },
      capabilities: {},
    });
    await connection.sendNotification('initialized', {});
    const uri = `${folder}/show.feedplot`;
    await connection.sendNotification('textDocument/didOpen', {
      textDocument: { uri, languageId: 'feedplot', version: 1, text: show },
    });
    const line = show.split('\n').findIndex((text) => text.startsWith('link trunk'));
    const position = { line, character: 7 };
    const hover = await connection.sendRequest<Hover>('textDocument/hover', {
      textDocument: { uri },
      position,
    });
    expect((hover.contents as MarkupContent).value).toMatch(/\*\*trunk\*\*[\s\S]*53\.7 %/);
    expect(await told).toEqual({ uri, version: 1, diagnostics: [] });
    expect(asked).toEqual(expect.arrayContaining([`list ${folder}`, `read ${folder}/kit.feedplot`]));
  } finally {
    connection.dispose();
    await thread.terminate();
  }
});
