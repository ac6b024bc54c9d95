/** What the drawing must do in a real VS Code, driven as a person drives it, whatever runs the extension. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import type { FrameLocator } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findInstallation, type Installation } from './installation.ts';
import type { OpenOptions } from './open-workbench.ts';
import { packageExtension } from './package-extension.ts';
import { see } from './see.ts';
import type { Workbench } from './workbench.ts';

const finals = path.join(import.meta.dirname, '../../examples/finals');
const lines = readFileSync(path.join(finals, 'finals.feedplot'), 'utf8').split('\n');

/** Line and column, from 1, of the first occurrence of a text in the example. */
function positionOf(text: string): { line: number; column: number } {
  const index = lines.findIndex((line) => line.includes(text));
  if (index < 0) throw new Error(`The example has no "${text}".`);
  return { line: index + 1, column: lines[index]!.indexOf(text) + 1 };
}

/** Declares the tests. @param host the kind of extension host, for the tests' names */
export function testDrawing(
  host: string,
  open: (installation: Installation, options: OpenOptions) => Promise<Workbench>,
): void {
  const { installation, missing } = findInstallation();
  if (!installation) {
    const reason = `no editor for the tests of the drawing: ${missing.join('; ')}`;
    if (process.env.CI || process.env.FEEDPLOT_REQUIRE_EDITOR)
      it('finds the editor', () => expect.fail(reason));
    else console.warn(`SKIPPED, ${reason}.`);
  }

  describe.runIf(installation)(`the drawing in a workbench with ${host}`, () => {
    let workbench: Workbench;
    let view: FrameLocator;

    beforeAll(async () => {
      const packages = mkdtempSync(path.join(os.tmpdir(), 'feedplot-package-'));
      try {
        workbench = await open(installation!, { vsix: await packageExtension(packages), folder: finals });
      } finally {
        rmSync(packages, { recursive: true });
      }
      await workbench.openFile('finals.feedplot');
      await workbench.runCommand('View: Toggle Primary Side Bar Visibility');
      await workbench.runCommand('Feedplot: Show the drawing beside the text');
      view = workbench.webview();
      await see(workbench.page, 'the drawing', () => view.locator('g[data-id="trunk"]').first().isVisible(), {
        limit_ms: 60_000,
      });
      // It begins where words can be read; here all of it is looked at, and the focus stays in the text.
      await view.locator('#whole').evaluate((button) => (button as HTMLElement).click());
    }, 240_000);

    afterAll(() => workbench?.close());

    const things = () => view.locator('g[data-id]');
    const classesOf = async (id: string) =>
      (await view.locator(`g[data-id="${id}"]:not(.room)`).first().getAttribute('class')) ?? '';
    const figures = async () => (await view.locator('#figures').textContent()) ?? '';
    const transform = () =>
      view.locator('#sheet').evaluate((sheet) => (sheet as HTMLElement).style.transform);

    it('lights up what the cursor stands in', async () => {
      const { line, column } = positionOf('node mixer');
      await workbench.goTo(line, column + 5);
      await see(workbench.page, 'the mixer lit up', async () => /cursor/.test(await classesOf('mixer')));
      expect(await figures()).toContain('Vision mixer');

      const feed = positionOf('feed clean -> overflow');
      await workbench.goTo(feed.line, feed.column + 6);
      await see(workbench.page, 'the way of the feed lit up', async () =>
        /cursor/.test(await classesOf('trunk')),
      );
      await workbench.screenshot(`drawing, cursor in a feed, ${host}`);
    }, 60_000);

    it('opens the text of what is clicked', async () => {
      await view.locator('g[data-id="judges"]').first().click();
      const crumbs = workbench.page.locator('.breadcrumbs-control').first();
      await see(workbench.page, 'the cursor in the statement of the monitor', async () =>
        /judges/.test((await crumbs.textContent()) ?? ''),
      );
    }, 60_000);

    it('shows another part of the show without moving anything', async () => {
      const before = await things().evaluateAll((all) =>
        all.map((one) => (one as SVGGElement).querySelector('rect')?.getAttribute('x')),
      );
      await view.locator('#segment').selectOption('results');
      await see(workbench.page, 'the clean picture on the judges’ monitor', async () =>
        /Clean feed/.test(
          (await view.locator('g[data-id="judges"]').first().getAttribute('aria-label')) ?? '',
        ),
      );
      const after = await things().evaluateAll((all) =>
        all.map((one) => (one as SVGGElement).querySelector('rect')?.getAttribute('x')),
      );
      // Labels of cables lose their plate with their number; boxes, rooms and ribbons stay where they are.
      expect(after.length).toBe(before.length);
      await workbench.screenshot(`drawing, segment, ${host}`);
      await view.locator('#segment').selectOption('');
    }, 60_000);

    it('follows the typing, keeps its place, and marks the last whole picture', async () => {
      await view.locator('#closer').click();
      await view.locator('#closer').click();
      const before = await transform();

      const { line, column } = positionOf('"Judges\' monitor"');
      await workbench.typeAt(line, column + 1, 'Other ');
      await see(workbench.page, 'the new label in the drawing', async () =>
        /Other Judges/.test((await view.locator('svg').first().textContent()) ?? ''),
      );
      await workbench.typeAt(line, 1, '((');
      await see(workbench.page, 'that the picture is an old one', () =>
        view.locator('#frame.stale').isVisible(),
      );
      expect(await view.locator('#notice').textContent()).toContain('errors');
      expect(await things().count()).toBeGreaterThan(40);
      await workbench.screenshot(`drawing, broken text, ${host}`);

      await workbench.undoAll();
      await see(
        workbench.page,
        'that the picture is of now',
        async () =>
          (await view.locator('#notice').isHidden()) &&
          !/Other/.test((await view.locator('svg').first().textContent()) ?? ''),
      );
      const scale = (words: string) => /scale\(([\d.]+)\)/.exec(words)?.[1];
      expect(scale(await transform())).toBe(scale(before));
    }, 120_000);

    it('asks nothing of the network', () => {
      // What a webview reads of the extension has such an address, which the editor itself answers in the browser.
      const own = /^https:\/\/[\w+.-]+\.vscode-resource\.vscode-cdn\.net\/.*\/dist\/[\w-]+\.js$/;
      expect(workbench.externalRequests().filter((address) => !own.test(address))).toEqual([]);
    });
  });
}
