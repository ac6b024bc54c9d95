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
  type ThingsAt,
} from '../server/protocol.ts';
import { isCancelled, newNonce } from './panels.ts';
import { type FromView, isFromView, type ToView } from './webview/messages.ts';
import { drawingPage } from './webview/page.ts';

/** Between the last keystroke and the next question for a scene; but while somebody types on, now and then. */
const PAUSE_MS = 120;
const LONGEST_MS = 1500;
/** Between the cursor's last movement and the question what it stands in. */
const CURSOR_PAUSE_MS = 80;

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
  readonly #drawing = new Later(PAUSE_MS, LONGEST_MS, () => void this.#ask());
  readonly #cursor = new Later(CURSOR_PAUSE_MS, CURSOR_PAUSE_MS, () => void this.#tellCursor());
  #uri: Uri | undefined;
  #plan: string | undefined;
  #place: string | null = null;
  /** The version of the drawing that the view has. */
  #shown: number | null = null;
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
    const addressOf = (file: string) => webview.asWebviewUri(Uri.joinPath(dist, file)).toString();
    webview.html = drawingPage({
      script: addressOf('drawing.js'),
      layout: addressOf('layout-worker.js'),
      nonce: newNonce(),
      cspSource: webview.cspSource,
    });
    this.#subscriptions = Disposable.from(
      webview.onDidReceiveMessage((message: unknown) => {
        if (isFromView(message)) void this.#answer(message);
      }),
      workspace.onDidChangeTextDocument(({ document }) => {
        if (isPlan(document)) this.#drawing.soon();
      }),
      window.onDidChangeActiveTextEditor((editor) => this.#follow(editor)),
      window.onDidChangeTextEditorSelection(() => this.#cursor.soon()),
      this.#panel.onDidChangeViewState(() => this.#drawing.soon()),
      client.onDidChangeState(() => this.#startAnew()),
    );
    this.#panel.onDidDispose(() => {
      this.#drawing.never();
      this.#cursor.never();
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
    if (editor && isPlan(editor.document)) this.#uri = editor.document.uri;
    this.#drawing.soon();
    this.#cursor.soon();
  }

  /** Another server counts its drawings anew. */
  #startAnew(): void {
    this.#shown = null;
    this.#drawing.soon();
  }

  /** One question at a time: whatever changes meanwhile is asked for once, after the answer. */
  async #ask(): Promise<void> {
    if (!this.#panel.visible) return;
    if (this.#asking) {
      this.#askAgain = true;
      return;
    }
    this.#asking = true;
    try {
      this.#tell(await this.#scene());
    } catch (error) {
      if (isCancelled(error)) this.#askAgain = true;
      else this.#tell({ kind: 'nothing', reason: `The plan could not be drawn: ${error}`, keep: true });
    }
    this.#asking = false;
    if (this.#askAgain) {
      this.#askAgain = false;
      this.#drawing.soon();
    }
  }

  async #scene(): Promise<ToView> {
    if (!this.#uri) return { kind: 'nothing', reason: 'Open a plan: its drawing appears here.', keep: false };
    if (this.#client.state !== State.Running)
      return {
        kind: 'nothing',
        reason:
          'The language server is not running. The command "Feedplot: Restart the language server" starts it.',
        keep: true,
      };
    const question: DrawingQuestion = {
      uri: this.#uri.toString(),
      place: this.#place,
      have: this.#shown,
    };
    const drawing = await this.#client.sendRequest<Drawing | null>(serverRequests.drawing, question);
    if (!drawing) {
      this.#shown = null;
      return {
        kind: 'nothing',
        reason:
          'No plan imports this file, so there is nothing to draw. Open the plan, or write an `import` of this file into it.',
        keep: false,
      };
    }
    const { plan, version, scene, ...message } = drawing;
    this.#plan = plan;
    // Unless a person has chosen another one meanwhile.
    if (this.#place === question.place) this.#place = message.place;
    this.#shown = version;
    if (scene) this.#panel.title = `Drawing: ${scene.title || 'plan'}`;
    return { kind: 'scene', plan, scene, ...message };
  }

  async #tellCursor(): Promise<void> {
    const editor = window.activeTextEditor;
    if (!editor || !isPlan(editor.document) || !this.#panel.visible || this.#client.state !== State.Running)
      return;
    // A position of the editor's would lose its figures on the way to a worker.
    const { line, character } = editor.selection.active;
    const question: ThingAtQuestion = {
      uri: editor.document.uri.toString(),
      position: { line, character },
    };
    try {
      const at = await this.#client.sendRequest<ThingsAt | null>(serverRequests.thingAt, question);
      this.#tell({ kind: 'cursor', at });
    } catch (error) {
      if (isCancelled(error)) this.#cursor.soon();
    }
  }

  #tell(message: ToView): void {
    void this.#panel.webview.postMessage(message);
  }

  async #answer(message: FromView): Promise<void> {
    switch (message.kind) {
      case 'ready':
        this.#startAnew();
        this.#cursor.soon();
        break;
      case 'place':
        this.#place = message.place;
        this.#drawing.soon();
        break;
      case 'open':
        await this.#open(message.id, message.what);
        break;
      case 'export':
        await save(this.#plan ? nameOf(this.#plan) : 'plan', message.format, message.base64, this.#uri);
    }
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

/** Does something once nothing has happened for a while; and at the latest after a longer one. */
class Later {
  readonly #pause_ms: number;
  readonly #longest_ms: number;
  readonly #act: () => void;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #since: number | undefined;

  constructor(pause_ms: number, longest_ms: number, act: () => void) {
    this.#pause_ms = pause_ms;
    this.#longest_ms = longest_ms;
    this.#act = act;
  }

  soon(): void {
    clearTimeout(this.#timer);
    this.#since ??= Date.now();
    const left_ms = this.#since + this.#longest_ms - Date.now();
    this.#timer = setTimeout(
      () => {
        this.#since = undefined;
        this.#act();
      },
      Math.max(0, Math.min(this.#pause_ms, left_ms)),
    );
  }

  never(): void {
    clearTimeout(this.#timer);
  }
}
