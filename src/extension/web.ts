import { type ExtensionContext, Uri } from 'vscode';
import {
  BrowserMessageReader,
  BrowserMessageWriter,
  LanguageClient,
  type LanguageClientOptions,
} from 'vscode-languageclient/browser';
import { activateWith } from './extension.ts';

/** VS Code in a browser: the server is a worker, and its files come through the editor. */
export async function activate(context: ExtensionContext): Promise<void> {
  await activateWith(context, makeClient);
}

function makeClient(context: ExtensionContext, options: LanguageClientOptions): LanguageClient {
  const program = Uri.joinPath(context.extensionUri, 'dist/server-worker.js').toString(true);
  let worker: Worker | undefined;
  const start = async () => {
    worker?.terminate();
    worker = new Worker(program);
    // The client takes a worker only from its own realm, and VS Code's host makes them in another.
    return { reader: new BrowserMessageReader(worker), writer: new BrowserMessageWriter(worker) };
  };
  context.subscriptions.push({ dispose: () => worker?.terminate() });
  return new LanguageClient('feedplot', 'Feedplot', start, options);
}
