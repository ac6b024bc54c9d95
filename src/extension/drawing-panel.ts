import {
  commands,
  Disposable,
  type ExtensionContext,
  Range,
  Selection,
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
  type Drawing,
  type DrawingQuestion,
  type PlaceInText,
  serverRequests,
  type ThingAtQuestion,
  type ThingQuestion,
} from '../server/protocol.ts';
import { type FromView, isFromView, type ToView } from './webview/messages.ts';
import { drawingPage } from './webview/page.ts';

/** Between the last keystroke and the next question for a scene. */
const PAUSE_MS = 120;

/** The command that shows the drawing of the plan on top, beside its text. */
export function addDrawing(context: ExtensionContext, client: BaseLanguageClient): Disposable {
  let open: DrawingPanel | undefined;
  const show = () => {
    const editor = window.activeTextEditor ?? window.visibleTextEditors.find((one) => isPlan(one.document));
    open ??= new DrawingPanel(context, client, () => {
      open = undefined;
    });
    open.reveal(editor);
  };
  return Disposable.from(
    commands.registerCommand('feedplot.showDrawing', show),
    new Disposable(() => open?.dispose()),
  );
}

/** One panel: it follows the plan whose text is on top, and asks for one scene at a time. */
class DrawingPanel {
  readonly #client: BaseLanguageClient;
  readonly #panel: WebviewPanel;
  readonly #subscriptions: Disposable;
  #uri: Uri | undefined;
  #plan: string | undefined;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #asking = false;
  #askAgain = false;

  constructor(context: ExtensionContext, client: BaseLanguageClient, closed: () => void) {
    this.#client = client;
    const dist = Uri.joinPath(context.extensionUri, 'dist');
    this.#panel = window.createWebviewPanel(
      'feedplot.drawing',
      'Drawing',
      { viewColumn: ViewColumn.Beside, preserveFocus: true },
      { enableScripts: true, localResourceRoots: [dist], retainContextWhenHidden: true },
    );
    const { webview } = this.#panel;
    webview.html = drawingPage(
      webview.asWebviewUri(Uri.joinPath(dist, 'drawing.js')).toString(),
      newNonce(),
      webview.cspSource,
    );
    this.#subscriptions = Disposable.from(
      webview.onDidReceiveMessage((message: unknown) => {
        if (isFromView(message)) void this.#answer(message);
      }),
      workspace.onDidChangeTextDocument(({ document }) => {
        if (isPlan(document)) this.#soon();
      }),
      window.onDidChangeActiveTextEditor((editor) => this.#follow(editor)),
      window.onDidChangeTextEditorSelection(({ textEditor }) => void this.#tellCursor(textEditor)),
      client.onDidChangeState(() => this.#soon()),
    );
    this.#panel.onDidDispose(() => {
      clearTimeout(this.#timer);
      this.#subscriptions.dispose();
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
    if (!editor || !isPlan(editor.document)) return;
    this.#uri = editor.document.uri;
    this.#soon();
    void this.#tellCursor(editor);
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
      this.#tell(await this.#scene());
    } catch {
      // A request that a keystroke cancelled: the next one is on its way.
    }
    this.#asking = false;
    if (this.#askAgain) {
      this.#askAgain = false;
      this.#soon();
    }
  }

  async #scene(): Promise<ToView> {
    if (!this.#uri) return { kind: 'nothing', reason: 'Open a plan: its drawing appears here.' };
    if (this.#client.state !== State.Running)
      return {
        kind: 'nothing',
        reason:
          'The language server is not running. The command "Feedplot: Restart the language server" starts it.',
      };
    const question: DrawingQuestion = { uri: this.#uri.toString() };
    const drawing = await this.#client.sendRequest<Drawing | null>(serverRequests.drawing, question);
    if (!drawing)
      return { kind: 'nothing', reason: 'No plan imports this file, so there is nothing to draw.' };
    this.#plan = drawing.plan;
    this.#panel.title = `Drawing: ${drawing.scene.title || 'plan'}`;
    return { kind: 'scene', name: nameOf(drawing.plan), scene: drawing.scene, stale: drawing.stale };
  }

  async #tellCursor(editor: TextEditor): Promise<void> {
    if (!isPlan(editor.document) || this.#client.state !== State.Running) return;
    const question: ThingAtQuestion = {
      uri: editor.document.uri.toString(),
      position: editor.selection.active,
    };
    try {
      this.#tell({
        kind: 'cursor',
        id: await this.#client.sendRequest<string | null>(serverRequests.thingAt, question),
      });
    } catch {
      // Cancelled by the next keystroke, whose own question follows.
    }
  }

  #tell(message: ToView): void {
    void this.#panel.webview.postMessage(message);
  }

  async #answer(message: FromView): Promise<void> {
    if (message.kind === 'ready') return this.#soon();
    if (message.kind === 'open') return this.#open(message.id, message.what);
    await save(message.name, message.format, message.base64, this.#uri);
  }

  async #open(id: string, what: string): Promise<void> {
    if (!this.#plan) return;
    const question: ThingQuestion = { plan: this.#plan, id, what };
    const place = await this.#client.sendRequest<PlaceInText | null>(serverRequests.thingPlace, question);
    if (!place) return;
    const { start, end } = place.range;
    const range = new Range(start.line, start.character, end.line, end.character);
    const uri = Uri.parse(place.uri);
    const beside =
      window.visibleTextEditors.find((one) => one.document.uri.toString() === place.uri) ??
      window.visibleTextEditors.find((one) => isPlan(one.document));
    const editor = await window.showTextDocument(uri, {
      viewColumn: beside?.viewColumn ?? ViewColumn.One,
      preserveFocus: true,
      selection: range,
    });
    editor.selection = new Selection(range.start, range.end);
  }
}

async function save(
  name: string,
  format: 'svg' | 'png',
  base64: string,
  beside: Uri | undefined,
): Promise<void> {
  const folder = beside ? Uri.joinPath(beside, '..') : workspace.workspaceFolders?.[0]?.uri;
  const suggestion = folder && Uri.joinPath(folder, `${name}.${format}`);
  const target = await window.showSaveDialog({
    ...(suggestion ? { defaultUri: suggestion } : {}),
    filters: format === 'svg' ? { SVG: ['svg'] } : { PNG: ['png'] },
  });
  if (!target) return;
  const bytes = Uint8Array.from(atob(base64), (character) => character.charCodeAt(0));
  await workspace.fs.writeFile(target, bytes);
}

function isPlan(document: TextDocument): boolean {
  return document.languageId === 'feedplot';
}

/** The plan's file name without its ending, as a start for the name of an export. */
function nameOf(uri: string): string {
  return decodeURIComponent(uri.slice(uri.lastIndexOf('/') + 1)).replace(/\.feedplot$/, '');
}

function newNonce(): string {
  return [...crypto.getRandomValues(new Uint8Array(16))]
    .map((byte) => byte.toString(16).padStart(2, '0'))
    .join('');
}
