import {
  commands,
  Disposable,
  type ExtensionContext,
  env,
  type TextDocument,
  type TextEditor,
  Uri,
  ViewColumn,
  type WebviewPanel,
  window,
  workspace,
} from 'vscode';
import { type BaseLanguageClient, State } from 'vscode-languageclient';
import {
  type Book,
  type BookQuestion,
  type PlaceInText,
  serverRequests,
  type ThingQuestion,
} from '../server/protocol.ts';
import { newNonce } from './panels.ts';
import { showPlace } from './review-places.ts';
import { type FromBookView, isFromBookView, type ToBookView } from './webview/book-messages.ts';
import { bookPreviewPage } from './webview/book-page.ts';

/** Papers are looked at, not typed at: they follow when the typing pauses. */
const PAUSE_MS = 600;

/** The command that shows the papers of the plan on top, beside its text. */
export function addBook(context: ExtensionContext, client: BaseLanguageClient): Disposable {
  let open: BookPanel | undefined;
  return Disposable.from(
    commands.registerCommand('feedplot.showBook', () => {
      const editor = window.activeTextEditor ?? window.visibleTextEditors.find((one) => isPlan(one.document));
      open ??= new BookPanel(context, client, () => {
        open = undefined;
      });
      open.reveal(editor);
    }),
    new Disposable(() => open?.dispose()),
  );
}

/** One panel: it follows the plan whose text is on top, and asks for one book at a time. */
class BookPanel {
  readonly #client: BaseLanguageClient;
  readonly #panel: WebviewPanel;
  #uri: Uri | undefined;
  /** The plan whose papers are shown. */
  #plan: string | undefined;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #asking = false;
  #askAgain = false;

  constructor(context: ExtensionContext, client: BaseLanguageClient, closed: () => void) {
    this.#client = client;
    const dist = Uri.joinPath(context.extensionUri, 'dist');
    this.#panel = window.createWebviewPanel(
      'feedplot.book',
      'Papers',
      { viewColumn: ViewColumn.Beside, preserveFocus: true },
      {
        enableScripts: true,
        localResourceRoots: [dist],
        retainContextWhenHidden: true,
        enableFindWidget: true,
      },
    );
    const { webview } = this.#panel;
    const addressOf = (file: string) => webview.asWebviewUri(Uri.joinPath(dist, file)).toString();
    webview.html = bookPreviewPage({
      script: addressOf('book.js'),
      layout: addressOf('layout-worker.js'),
      nonce: newNonce(),
      cspSource: webview.cspSource,
    });
    const subscriptions = Disposable.from(
      webview.onDidReceiveMessage((message: unknown) => {
        if (isFromBookView(message)) void this.#answer(message);
      }),
      workspace.onDidChangeTextDocument(({ document }) => {
        if (isPlan(document)) this.#soon();
      }),
      window.onDidChangeActiveTextEditor((editor) => this.#follow(editor)),
      client.onDidChangeState(() => this.#soon()),
    );
    this.#panel.onDidDispose(() => {
      clearTimeout(this.#timer);
      subscriptions.dispose();
      closed();
    });
  }

  reveal(editor: TextEditor | undefined): void {
    this.#panel.reveal(undefined, true);
    this.#follow(editor);
  }

  dispose(): void {
    this.#panel.dispose();
  }

  #follow(editor: TextEditor | undefined): void {
    if (!editor || !isPlan(editor.document) || editor.document.uri.toString() === this.#uri?.toString())
      return;
    this.#uri = editor.document.uri;
    this.#soon();
  }

  #soon(): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.#ask(), PAUSE_MS);
  }

  async #ask(): Promise<void> {
    if (this.#asking) {
      this.#askAgain = true;
      return;
    }
    this.#asking = true;
    try {
      void this.#panel.webview.postMessage(await this.#book());
    } catch {
      // A request that a keystroke cancelled: the next one is on its way.
    }
    this.#asking = false;
    if (this.#askAgain) {
      this.#askAgain = false;
      this.#soon();
    }
  }

  async #book(): Promise<ToBookView> {
    if (!this.#uri) return { kind: 'nothing', reason: 'Open a plan: its papers appear here.' };
    if (this.#client.state !== State.Running)
      return {
        kind: 'nothing',
        reason:
          'The language server is not running. The command "Feedplot: Restart the language server" starts it.',
      };
    const question: BookQuestion = { uri: this.#uri.toString() };
    const book = await this.#client.sendRequest<Book | null>(serverRequests.book, question);
    if (!book) return { kind: 'nothing', reason: 'No plan imports this file, so it has no papers.' };
    this.#plan = book.plan;
    this.#panel.title = `Papers: ${book.parts.title}`;
    const file = decodeURIComponent(book.plan.slice(book.plan.lastIndexOf('/') + 1));
    return { kind: 'book', name: file.replace(/\.feedplot$/, ''), parts: book.parts };
  }

  async #open(id: string, what: string): Promise<void> {
    if (!this.#plan) return;
    const question: ThingQuestion = { plan: this.#plan, id, what };
    const place = await this.#client.sendRequest<PlaceInText | null>(serverRequests.thingPlace, question);
    if (place) await showPlace(Uri.parse(place.uri), place.range);
  }

  async #answer(message: FromBookView): Promise<void> {
    if (message.kind === 'ready') return this.#soon();
    if (message.kind === 'open') return this.#open(message.id, message.what);
    const folder = this.#uri ? Uri.joinPath(this.#uri, '..') : workspace.workspaceFolders?.[0]?.uri;
    const target = await window.showSaveDialog({
      ...(folder ? { defaultUri: Uri.joinPath(folder, `${message.name}-papers.html`) } : {}),
      filters: { HTML: ['html'] },
    });
    if (!target) return;
    await workspace.fs.writeFile(target, new TextEncoder().encode(message.html));
    const open = 'Open it in the browser';
    if ((await window.showInformationMessage('The papers are saved. A browser prints them.', open)) === open)
      await env.openExternal(target);
  }
}

function isPlan(document: TextDocument): boolean {
  return document.languageId === 'feedplot';
}
