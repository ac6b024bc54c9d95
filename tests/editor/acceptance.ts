/** What the packaged extension must show in a real VS Code, driven as a person drives it, whatever runs it. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findInstallation, type Installation } from './installation.ts';
import type { OpenOptions } from './open-workbench.ts';
import { packageExtension } from './package-extension.ts';
import type { Workbench } from './workbench.ts';

const starter = path.join(import.meta.dirname, '../../examples/starter');

/**
 * Declares the tests. Where there is no editor they are skipped, and say so; with CI or FEEDPLOT_REQUIRE_EDITOR in the
 * environment they fail.
 * @param host the kind of extension host, for the tests' names
 */
export function testPackagedExtension(
  host: string,
  open: (installation: Installation, options: OpenOptions) => Promise<Workbench>,
): void {
  const { installation, missing } = findInstallation();
  if (!installation) {
    const reason = `no editor for the tests of the packaged extension: ${missing.join('; ')}`;
    if (process.env.CI || process.env.FEEDPLOT_REQUIRE_EDITOR) {
      it('finds the editor that this run requires', () => expect.fail(reason));
    } else {
      console.warn(`SKIPPED, ${reason}.`);
    }
  }

  describe.runIf(installation)(`the packaged extension in a workbench with ${host}`, () => {
    let workbench: Workbench;
    const trunk = positionOf('link trunk');

    beforeAll(async () => {
      const packages = mkdtempSync(path.join(os.tmpdir(), 'feedplot-package-'));
      try {
        workbench = await open(installation!, { vsix: await packageExtension(packages), folder: starter });
      } finally {
        rmSync(packages, { recursive: true });
      }
      await workbench.openFile('starter.feedplot');
    }, 180_000);

    afterAll(() => workbench?.close());

    it('underlines a mistake as it is typed, explains it, and forgets it when it is undone', async () => {
      const cable = positionOf('cat6a', trunk.line);
      await workbench.typeAt(cable.line, cable.column, 'x');

      await workbench.waitForSquiggle(cable.line, 'error');
      await workbench.waitForProblem('xcat6a');
      expect(await workbench.hoverAt(cable.line, 'xcat6a', 'xcat6a')).toContain('feedplot');
      await workbench.screenshot(`mistake, ${host}`);

      await workbench.undoAll();
      await workbench.waitForNoSquiggle();
      await workbench.waitForNoProblem();
    }, 120_000);

    it('tells the load of the trunk both ways when the pointer rests on it', async () => {
      // Worked out by hand at the head of the example: 8.05 Gb/s one way, 5.37 Gb/s the other.
      const told = await workbench.hoverAt(trunk.line, 'trunk', /\b8\.05\d? Gb\/s/);
      expect(told).toMatch(/\b5\.3(7|6[5-9]) Gb\/s/);
      await workbench.screenshot(`trunk, ${host}`);
    }, 120_000);

    it('asks nothing of the network', () => {
      expect(workbench.externalRequests()).toEqual([]);
    });
  });
}

/** Line and column, from 1, of the first occurrence of a text in the starter example, from a line on. */
function positionOf(text: string, fromLine = 1): { line: number; column: number } {
  const lines = readFileSync(path.join(starter, 'starter.feedplot'), 'utf8').split('\n');
  const index = lines.findIndex((line, number) => number + 1 >= fromLine && line.includes(text));
  if (index < 0) throw new Error(`The starter example has no "${text}".`);
  return { line: index + 1, column: lines[index]!.indexOf(text) + 1 };
}
