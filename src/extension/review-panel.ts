import {
  commands,
  Disposable,
  type ExtensionContext,
  Uri,
  ViewColumn,
  type WebviewPanel,
  window,
  workspace,
} from 'vscode';
import { type BaseLanguageClient, State } from 'vscode-languageclient';
import {
  type Against,
  type ReviewAnswer,
  type ReviewQuestion,
  reviewRequests,
  type ShownPlace,
  type ShownReview,
} from '../server/protocol/review.ts';
import { isCancelled, newNonce } from './panels.ts';
import { LoadsInText } from './review-loads.ts';
import { addOldTexts, oldTextUri } from './review-old-texts.ts';
import { showPlace } from './review-places.ts';
import { isFromReviewView, type ToReviewView } from './webview/review-messages.ts';
import { reviewPage } from './webview/review-page.ts';

/** Between the last keystroke and the next question. */
const PAUSE_MS = 400;

/** The commands that compare the plan on top with another state of it. */
export function addReview(context: ExtensionContext, client: BaseLanguageClient): Disposable {
  let open: ReviewPanel | undefined;
  const compare = async (choose: () => Promise<Against | undefined>) => {
    const uri = planOnTop();
    if (!uri) {
      void window.showInformationMessage('Open a plan first: it is compared as it is in the editor.');
      return;
    }
    const against = await choose();
    if (!against) return;
    open ??= new ReviewPanel(context, client, () => {
      open = undefined;
    });
    open.show(uri, against);
  };
  return Disposable.from(
    addOldTexts(client),
    commands.registerCommand('feedplot.compareWithLastCommit', () =>
      compare(async () => ({ kind: 'revision', revision: 'HEAD' })),
    ),
    commands.registerCommand('feedplot.compareWithRevision', () => compare(chooseRevision)),
    commands.registerCommand('feedplot.compareWithFile', () => compare(chooseFile)),
    new Disposable(() => open?.dispose()),
  );
}

function planOnTop(): Uri | undefined {
  const editors = [window.activeTextEditor, ...window.visibleTextEditors];
  return editors.find((one) => one?.document.languageId === 'feedplot')?.document.uri;
}

async function chooseRevision(): Promise<Against | undefined> {
  const revision = await window.showInputBox({
    title: 'Compare with a revision',
    prompt: 'A commit, branch or tag of this repository',
    placeHolder: 'HEAD~1, main, v1',
  });
  return revision?.trim() ? { kind: 'revision', revision: revision.trim() } : undefined;
}

async function chooseFile(): Promise<Against | undefined> {
  const files = await workspace.findFiles('**/*.feedplot', '**/node_modules/**');
  const items = files
    .map((uri) => ({ label: workspace.asRelativePath(uri), uri }))
    .sort((a, b) => (a.label < b.label ? -1 : 1));
  const chosen = await window.showQuickPick(items, {
    title: 'Compare with a file',
    placeHolder: 'The plan as it was before',
  });
  return chosen && { kind: 'file', uri: chosen.uri.toString() };
}

/** One panel: it follows the text of the plan that it was opened for. */
class ReviewPanel {
  readonly #client: BaseLanguageClient;
  readonly #panel: WebviewPanel;
  readonly #subscriptions: Disposable;
  readonly #loads = new LoadsInText();
  #uri: Uri | undefined;
  #against: Against | undefined;
  #review: ShownReview | undefined;
  #timer: ReturnType<typeof setTimeout> | undefined;
  /** Which of the questions is the latest. */
  #asked = 0;

  constructor(context: ExtensionContext, client: BaseLanguageClient, closed: () => void) {
    this.#client = client;
    const dist = Uri.joinPath(context.extensionUri, 'dist');
    this.#panel = window.createWebviewPanel(
      'feedplot.review',
      'Comparison',
      { viewColumn: ViewColumn.Beside, preserveFocus: true },
      { enableScripts: true, localResourceRoots: [dist], retainContextWhenHidden: true },
    );
    const { webview } = this.#panel;
    webview.html = reviewPage(webview.asWebviewUri(Uri.joinPath(dist, 'review.js')).toString(), newNonce());
    this.#subscriptions = Disposable.from(
      this.#loads,
      webview.onDidReceiveMessage((message: unknown) => {
        if (!isFromReviewView(message)) return;
        if (message.kind === 'ready') void this.#ask();
        else void this.#open(this.#review?.sections[message.section]?.entries[message.entry]?.place ?? null);
      }),
      workspace.onDidChangeTextDocument(({ document, contentChanges }) => {
        if (document.languageId === 'feedplot' && contentChanges.length > 0) this.#soon();
      }),
      window.onDidChangeVisibleTextEditors(() => this.#loads.show(this.#review)),
      client.onDidChangeState(() => this.#soon()),
    );
    this.#panel.onDidDispose(() => {
      clearTimeout(this.#timer);
      this.#subscriptions.dispose();
      closed();
    });
  }

  show(uri: Uri, against: Against): void {
    this.#uri = uri;
    this.#against = against;
    this.#panel.reveal(undefined, true);
    void this.#ask();
  }

  dispose(): void {
    this.#panel.dispose();
  }

  #soon(): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.#ask(), PAUSE_MS);
  }

  async #ask(): Promise<void> {
    if (!this.#uri || !this.#against || this.#client.state !== State.Running) return;
    const mine = ++this.#asked;
    const question: ReviewQuestion = { uri: this.#uri.toString(), against: this.#against };
    try {
      const answer = await this.#client.sendRequest<ReviewAnswer>(reviewRequests.review, question);
      if (mine === this.#asked) this.#take(answer);
    } catch (error) {
      if (mine !== this.#asked) return;
      if (isCancelled(error)) this.#soon();
      else this.#tell({ kind: 'nothing', reason: `The plans could not be compared: ${error}` });
    }
  }

  #take(answer: ReviewAnswer): void {
    if (answer.kind === 'trouble') {
      this.#tell({ kind: 'nothing', reason: answer.reason });
      return;
    }
    this.#review = answer.review;
    this.#panel.title = `Comparison: ${answer.review.title || 'plan'}`;
    this.#loads.show(this.#review);
    this.#tell({ kind: 'review', review: answer.review });
  }

  #tell(message: ToReviewView): void {
    void this.#panel.webview.postMessage(message);
  }

  async #open(place: ShownPlace | null): Promise<void> {
    if (!place || !this.#against) return;
    const isOld = place.side === 'old' && this.#against.kind === 'revision';
    const uri = isOld
      ? oldTextUri(place.uri, (this.#against as { revision: string }).revision)
      : Uri.parse(place.uri);
    await showPlace(uri, place.range);
  }
}
