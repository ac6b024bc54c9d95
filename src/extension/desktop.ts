import { commands, type ExtensionContext } from 'vscode';
import { LanguageClient, type LanguageClientOptions, TransportKind } from 'vscode-languageclient/node';
import { activateWith } from './extension.ts';

/** VS Code on a desktop or a remote machine: the server is a Node process, the same program as on the command line. */
export async function activate(context: ExtensionContext): Promise<void> {
  // Where the window is shown says nothing of this: it may be a browser that looks at another machine.
  await commands.executeCommand('setContext', 'feedplot.readsRepositories', true);
  await activateWith(context, makeClient);
}

function makeClient(context: ExtensionContext, options: LanguageClientOptions): LanguageClient {
  const module = context.asAbsolutePath('dist/feedplot.cjs');
  const server = { module, args: ['serve'], transport: TransportKind.ipc };
  return new LanguageClient('feedplot', 'Feedplot', server, options);
}
