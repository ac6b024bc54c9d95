/** What the extension does in every kind of editor; how the server is started is told by the entry points. */
import { commands, type ExtensionContext, Uri, window } from 'vscode';
import type { BaseLanguageClient, LanguageClientOptions } from 'vscode-languageclient';
import { clientCommands, type StartOptions } from '../server/protocol.ts';
import { acceptFinding } from './accept-finding.ts';
import { addBook } from './book-panel.ts';
import { addDrawing } from './drawing-panel.ts';
import { addExplanations } from './explanations.ts';
import { answerFileRequests } from './files.ts';
import { writeNewPlan } from './new-plan.ts';
import { addPlanStatus } from './plan-status.ts';
import { addReview } from './review-panel.ts';
import { showPlaces } from './show-places.ts';

/** Makes a client that is not started yet. */
export type ClientMaker = (context: ExtensionContext, options: LanguageClientOptions) => BaseLanguageClient;

export async function activateWith(
  context: ExtensionContext,
  makeClient: ClientMaker,
): Promise<BaseLanguageClient> {
  const output = window.createOutputChannel('Feedplot', { log: true });
  const startOptions: StartOptions = {
    library: Uri.joinPath(context.extensionUri, 'dist/library').toString(),
    asksForReason: true,
    showsPlaces: true,
    showsExplanations: true,
  };
  const client = makeClient(context, {
    documentSelector: [{ language: 'feedplot' }],
    initializationOptions: startOptions,
    outputChannel: output,
    markdown: { isTrusted: false, supportHtml: false },
  });
  answerFileRequests(client);
  context.subscriptions.push(
    output,
    client,
    commands.registerCommand('feedplot.newPlan', () => writeNewPlan(context.extensionUri)),
    commands.registerCommand('feedplot.restart', () => restart(client)),
    commands.registerCommand('feedplot.followPictures', () => showFlow('references-view.showOutgoingCalls')),
    commands.registerCommand('feedplot.showWhatFeeds', () => showFlow('references-view.showIncomingCalls')),
    commands.registerCommand('feedplot.showLog', () => output.show()),
    commands.registerCommand(clientCommands.accept, acceptFinding),
    commands.registerCommand(clientCommands.showPlaces, showPlaces),
    addPlanStatus(client),
    addDrawing(context, client),
    addBook(context, client),
    addReview(context, client),
    addExplanations(client),
  );
  await client.start();
  return client;
}

/** Ends the server if it still runs, and starts a fresh one. */
async function restart(client: BaseLanguageClient): Promise<void> {
  if (client.needsStop()) await client.stop();
  await client.start();
}

/** Opens the editor's own view of a hierarchy at the cursor; its direction has to be set before it opens. */
async function showFlow(setDirection: string): Promise<void> {
  await commands.executeCommand(setDirection);
  await commands.executeCommand('references-view.showCallHierarchy');
}
