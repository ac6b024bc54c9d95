/**
 * The drawing's view in a plain browser: the page that the editor shows, with its own policy, and a stand-in for the
 * editor that keeps what the view says.
 */
import { readFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join, resolve } from 'node:path';
import { build } from 'esbuild';
import { type Browser, chromium, type Page } from 'playwright-core';
import type { Scene } from '../../src/documents/drawing/scene.ts';
import type { FromView, ToView } from '../../src/extension/webview/messages.ts';
import { drawingPage } from '../../src/extension/webview/page.ts';
import { type EditorTheme, useTheme } from '../support/editor-colours.ts';

const root = resolve(import.meta.dirname, '../..');

/** What the editor tells beside the scene, where nothing is said: the whole plan, just read. */
export function sceneMessage(
  scene: Scene | null,
  others: Partial<Extract<ToView, { kind: 'scene' }>> = {},
): ToView {
  return {
    kind: 'scene',
    plan: 'file:///show/show.feedplot',
    scene,
    stale: false,
    place: null,
    places: [],
    onlyPlaces: false,
    ...others,
  };
}

export class View {
  readonly page: Page;
  /** What the browser complained of: a policy that was broken, an exception. */
  readonly complaints: string[] = [];

  constructor(page: Page) {
    this.page = page;
    page.on('pageerror', (error) => this.complaints.push(String(error)));
    page.on('console', (message) => {
      if (message.type() === 'error' || message.type() === 'warning') this.complaints.push(message.text());
    });
  }

  async send(message: ToView | unknown): Promise<void> {
    await this.page.evaluate((data) => window.postMessage(data, '*'), message);
  }

  /** Sends a scene and waits until it is drawn. */
  async draw(scene: Scene, others: Partial<Extract<ToView, { kind: 'scene' }>> = {}): Promise<void> {
    await this.send(sceneMessage(scene, others));
    await this.page.waitForFunction(
      (count) =>
        document.getElementById('frame')?.getAttribute('aria-busy') !== 'true' &&
        document.querySelectorAll('g[data-id]:not(.room)').length === count,
      scene.boxes.length + scene.wires.length + scene.ribbons.length,
      { timeout: 60_000 },
    );
  }

  /** What the view has told the editor so far. */
  async said(): Promise<FromView[]> {
    return this.page.evaluate(() => (window as unknown as { said: FromView[] }).said);
  }

  async useTheme(theme: EditorTheme): Promise<void> {
    await useTheme(this.page, theme);
  }
}

/** A browser with a server for the view's files. */
export class ViewBrowser {
  readonly #browser: Browser;
  readonly #server: Server;
  readonly #address: string;

  constructor(browser: Browser, server: Server, address: string) {
    this.#browser = browser;
    this.#server = server;
    this.#address = address;
  }

  static async start(program: string): Promise<ViewBrowser> {
    const script = await viewScript();
    const layout = readFileSync(join(root, 'node_modules/elkjs/lib/elk-worker.min.js'));
    const server = createServer((request, response) => {
      const files: Record<string, [string, string | Buffer]> = {
        '/': ['text/html', pageAt(`http://${request.headers.host}`)],
        '/drawing.js': ['text/javascript', script],
        '/layout-worker.js': ['text/javascript', layout],
      };
      const [type, content] = files[request.url ?? ''] ?? ['text/plain', ''];
      response.writeHead(content ? 200 : 404, { 'content-type': `${type}; charset=utf-8` }).end(content);
    });
    await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
    const address = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
    const browser = await chromium.launch({ executablePath: program, args: ['--no-sandbox'] });
    return new ViewBrowser(browser, server, address);
  }

  async open(size = { width: 1000, height: 700 }, theme: EditorTheme = 'light'): Promise<View> {
    const page = await this.#browser.newPage({ viewport: size });
    await page.addInitScript(() => {
      const said: unknown[] = [];
      let state: unknown;
      Object.assign(window, {
        said,
        acquireVsCodeApi: () => ({
          postMessage: (message: unknown) => said.push(message),
          getState: () => state,
          setState: (next: unknown) => {
            state = next;
          },
        }),
      });
    });
    const view = new View(page);
    await page.goto(this.#address);
    await view.useTheme(theme);
    return view;
  }

  async close(): Promise<void> {
    await this.#browser.close();
    this.#server.close();
  }
}

function pageAt(origin: string): string {
  return drawingPage({
    script: `${origin}/drawing.js`,
    layout: `${origin}/layout-worker.js`,
    nonce: crypto.randomUUID(),
    cspSource: origin,
  });
}

async function viewScript(): Promise<string> {
  const { outputFiles } = await build({
    entryPoints: [join(root, 'src/extension/webview/drawing.ts')],
    bundle: true,
    write: false,
    format: 'iife',
    target: 'es2022',
  });
  return outputFiles[0]!.text;
}
