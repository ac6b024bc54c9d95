/**
 * A VS Code workbench as a user sees it: keys and mouse go in, what stands on the screen comes out.
 * `node-host.ts` and `web-host.ts` open one. Nothing here waits for a fixed time: each step looks until it sees what
 * it needs, and else fails with what it looked for, what it saw instead, and a screenshot.
 */
import type { FrameLocator, Locator, Page } from 'playwright-core';
import {
  findInLine,
  type Place,
  type Problem,
  readProblems,
  readSquiggles,
  type Severity,
  type Squiggle,
} from './screen.ts';
import { fail, see, takeScreenshot } from './see.ts';

/** What the host that opened a workbench knows about it. */
export interface Host {
  page: Page;
  /** The open folder: a copy, which a test may change. */
  folder: string;
  /** Requests of the browser and connections of the server that left this machine, since the start. */
  externalRequests(): string[];
  close(): Promise<void>;
}

export class Workbench {
  readonly page: Page;
  readonly folder: string;
  readonly #host: Host;
  readonly #editor: Locator;

  constructor(host: Host) {
    this.#host = host;
    this.page = host.page;
    this.folder = host.folder;
    this.#editor = host.page.locator('.editor-group-container.active .monaco-editor').first();
  }

  /** Goes to the address where the host serves the workbench and waits until it has drawn the folder's files. */
  async show(address: string): Promise<this> {
    await this.page.goto(address);
    const file = this.page.locator('.explorer-folders-view .monaco-list-row').first();
    await see(this.page, 'the files of the folder', () => file.isVisible(), { limit_ms: 60_000 });
    return this;
  }

  /** Opens a file by its path below the folder, through the tree of files. */
  async openFile(file: string): Promise<void> {
    const names = file.split('/');
    for (const [depth, name] of names.entries()) {
      const row = this.page
        .locator(`.explorer-folders-view .monaco-list-row[aria-level="${depth + 1}"]`)
        .filter({ has: this.page.getByText(name, { exact: true }) })
        .first();
      await see(this.page, `"${name}" in the tree of files`, () => row.isVisible());
      const expanded = await row.getAttribute('aria-expanded'); // null on a file
      if (expanded === null) await row.dblclick();
      else if (expanded === 'false') await row.click();
    }
    const tab = this.page.locator(`.tab.active[data-resource-name="${names.at(-1)}"]`);
    const text = this.#editor.locator('.view-line').first();
    await see(this.page, `${file} in an editor`, async () => (await tab.isVisible()) && text.isVisible());
  }

  /** Runs a command by the title that the command palette shows. */
  async runCommand(title: string): Promise<void> {
    await this.page.keyboard.press('F1');
    const palette = this.page.locator('.quick-input-widget');
    await see(this.page, 'the command palette', () => palette.locator('input[type=text]:focus').isVisible());
    await this.page.keyboard.type(title);
    const row = palette.locator('.monaco-list-row').filter({ hasText: title }).first();
    await see(this.page, `the command "${title}"`, () => row.isVisible());
    await row.click();
  }

  /** Sets the cursor; line and column count from 1. */
  async goTo(line: number, column: number): Promise<void> {
    await this.#focusEditor();
    await this.page.keyboard.press('Control+g');
    const input = this.page.locator('.quick-input-widget input[type=text]');
    await see(this.page, 'the box for a line number', () =>
      input.and(this.page.locator(':focus')).isVisible(),
    );
    await this.page.keyboard.type(`${line}:${column}`);
    await this.page.keyboard.press('Enter');
    const position = new RegExp(`Ln ${line}, Col ${column}$`, 'm');
    const status = this.page.locator('.part.statusbar .statusbar-item');
    await see(
      this.page,
      `the cursor at line ${line}, column ${column}`,
      async () => position.test((await status.allInnerTexts()).join('\n')) && !(await input.isVisible()),
    );
  }

  /** Types at a position as a person does, key by key; whatever the editor adds by itself (closing quotes) is added. */
  async typeAt(line: number, column: number, text: string): Promise<void> {
    await this.goTo(line, column);
    await this.page.keyboard.type(text);
    await see(this.page, 'the edit in the editor', () => this.isEdited());
  }

  /** Undoes until the file is as it was when it was opened or last saved. */
  async undoAll(): Promise<void> {
    await this.#focusEditor();
    await see(this.page, 'the file as it was before the edit', async () => {
      if (!(await this.isEdited())) return true;
      await this.page.keyboard.press('Control+z');
      return undefined;
    });
  }

  /** Whether the file in front has edits that are not saved. */
  async isEdited(): Promise<boolean> {
    return this.page.locator('.editor-group-container.active .tab.active.dirty').first().isVisible();
  }

  /** The text of a line, without the hints drawn in it; scrolls to it. */
  async lineText(line: number): Promise<string> {
    await this.goTo(line, 1);
    return (await this.#find(line, '')).lineText;
  }

  /** The rows of the Problems view, which this opens; fails when there are more than fit on the screen. */
  async problems(): Promise<Problem[]> {
    const view = this.page.locator('.markers-panel');
    if (!(await view.isVisible())) {
      await this.page.keyboard.press('Control+Shift+m');
      await see(this.page, 'the Problems view', () => view.isVisible());
    }
    const list = view.locator('.monaco-list').first();
    if (!(await list.isVisible())) return []; // instead it says that there are none
    const { problems, complete } = await list.evaluate(readProblems);
    return complete ? problems : fail(this.page, 'all problems: there are more than fit', problems);
  }

  /** Waits until the Problems view has a row that contains the text or matches the expression. */
  async waitForProblem(wanted: string | RegExp): Promise<Problem> {
    return see(
      this.page,
      `a problem like ${wanted}`,
      async () => (await this.problems()).find((problem) => matches(problem.text, wanted)),
      { instead: () => this.problems() },
    );
  }

  /** Waits until no row of the Problems view matches; without an argument, until it is empty. */
  async waitForNoProblem(unwanted: string | RegExp = ''): Promise<void> {
    await see(
      this.page,
      unwanted ? `that the problems like ${unwanted} are gone` : 'that all problems are gone',
      async () => !(await this.problems()).some((problem) => matches(problem.text, unwanted)),
      { instead: () => this.problems() },
    );
  }

  /** The squiggles under the lines that are on the screen, from the top. */
  async squiggles(): Promise<Squiggle[]> {
    return this.#editor.evaluate(readSquiggles);
  }

  /** Waits for a squiggle on a line that is on the screen. */
  async waitForSquiggle(line: number, severity: Severity = 'error'): Promise<void> {
    await see(
      this.page,
      `a squiggle of kind ${severity} on line ${line}`,
      async () => (await this.squiggles()).some((one) => one.line === line && one.severity === severity),
      { instead: () => this.squiggles() },
    );
  }

  /** Waits until no line on the screen has a squiggle. */
  async waitForNoSquiggle(): Promise<void> {
    await see(this.page, 'that all squiggles are gone', async () => (await this.squiggles()).length === 0, {
      instead: () => this.squiggles(),
    });
  }

  /**
   * Points at the first occurrence of a text on a line and leaves the hover open.
   * @param wanted what the hover must say: its parts come one after the other
   * @returns all that it says
   */
  async hoverAt(line: number, text: string, wanted: string | RegExp): Promise<string> {
    await this.closeHover();
    await this.goTo(line, 1);
    let said: string[] = [];
    let pointed = { x: 0, y: 0, time_ms: 0 };
    return see(
      this.page,
      `a hover on "${text}" in line ${line} that says ${wanted}`,
      async () => {
        said = (await this.#hover().allInnerTexts()).map(plain);
        const found = said.find((each) => matches(each, wanted));
        if (found) return found;
        const { x, y } = await this.#find(line, text);
        // The text moves when a lens appears above it, and a hover comes to nothing while the server still reads.
        const still = x === pointed.x && y === pointed.y;
        if (still && Date.now() - pointed.time_ms < 5000) return undefined;
        await this.page.mouse.move(5, 5);
        await this.page.mouse.move(x, y, { steps: 4 });
        pointed = { x, y, time_ms: Date.now() };
        return undefined;
      },
      { instead: async () => said },
    );
  }

  /** Moves the pointer away and waits until no hover is open. */
  async closeHover(): Promise<void> {
    await this.page.mouse.move(5, 5);
    await see(this.page, 'that the hover is gone', async () => !(await this.#hover().first().isVisible()));
  }

  /** The first entries of the completion list at a position, as many as it shows at once; closes it again. */
  async completionsAt(line: number, column: number): Promise<string[]> {
    await this.goTo(line, column);
    await this.page.keyboard.press('Control+Space');
    const rows = this.page.locator('.suggest-widget.visible .monaco-list-row .label-name');
    await see(this.page, 'a completion list', () => rows.first().isVisible());
    const labels = await rows.allInnerTexts();
    await this.page.keyboard.press('Escape');
    return labels.map(plain);
  }

  /** The titles in the quick fix menu at a text; leaves the menu open. */
  async quickFixesAt(line: number, text: string): Promise<string[]> {
    await this.goTo(line, 1);
    const { column } = await this.#find(line, text);
    await this.goTo(line, column);
    await this.page.keyboard.press('Control+.');
    const rows = this.#quickFixes();
    await see(this.page, 'a quick fix menu', () => rows.first().isVisible());
    return (await rows.allInnerTexts()).map(plain);
  }

  /** Applies the quick fix with this title at a text. */
  async applyQuickFix(line: number, text: string, title: string): Promise<void> {
    const titles = await this.quickFixesAt(line, text);
    if (!titles.includes(title)) await fail(this.page, `a quick fix "${title}"`, titles);
    const chosen = this.#quickFixes().and(this.page.locator('.focused')).filter({ hasText: title });
    await see(this.page, `the quick fix "${title}" chosen`, async () => {
      if (await chosen.isVisible()) return true;
      await this.page.keyboard.press('ArrowDown');
      return undefined;
    });
    await this.page.keyboard.press('Enter');
    await see(this.page, 'that the quick fix menu is gone', async () => !(await chosen.isVisible()));
  }

  /** The inside of the webview in front. */
  webview(): FrameLocator {
    return this.page.frameLocator('iframe.webview.ready').frameLocator('#active-frame');
  }

  /** Requests of the browser and connections of the server that left this machine, since the start. */
  externalRequests(): string[] {
    return this.#host.externalRequests();
  }

  /** Takes a picture of the whole window and returns its path (see `takeScreenshot`). */
  async screenshot(name: string): Promise<string> {
    return takeScreenshot(this.page, name);
  }

  async close(): Promise<void> {
    await this.#host.close();
  }

  #hover(): Locator {
    return this.page.locator('.monaco-hover:not(.hidden) .monaco-hover-content:visible');
  }

  #quickFixes(): Locator {
    return this.page.locator('.action-widget .monaco-list-row.action');
  }

  async #focusEditor(): Promise<void> {
    await this.page.keyboard.press('Escape'); // closes a menu that was left open
    // A view hands keys on to the workbench a while after they were pressed in it, so what follows waits for the focus.
    await see(this.page, 'the focus in the text', async () => {
      const isThere = () => document.activeElement?.closest('.monaco-editor') instanceof Element;
      if (await this.page.evaluate(isThere)) return true;
      await this.page.keyboard.press('Control+1');
      return undefined;
    });
  }

  /** Finds a text in a line that is on the screen. */
  async #find(line: number, text: string): Promise<Place> {
    return see(this.page, `"${text}" in line ${line}`, () =>
      this.#editor.evaluate(findInLine, { line, text }),
    );
  }
}

/** Text of the screen with the blanks that a person sees. */
function plain(text: string): string {
  return text.replaceAll('\u00a0', ' ').trim();
}

function matches(text: string, wanted: string | RegExp): boolean {
  return typeof wanted === 'string' ? text.includes(wanted) : wanted.test(text);
}
