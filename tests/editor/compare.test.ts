/** Comparing with the last commit, in a real VS Code with the packaged extension and a real repository. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { TestRepository } from '../review/repositories.ts';
import { changed, kit, plan, withCamera } from '../review/shows.ts';
import { findInstallation } from './installation.ts';
import { openNodeHost } from './node-host.ts';
import { packageExtension } from './package-extension.ts';
import { see } from './see.ts';
import type { Workbench } from './workbench.ts';

const { installation } = findInstallation();

/** What stands in the editor: a camera more, and the recorder gone. */
const fresh = changed(
  changed(withCamera(plan, 'close', 3), 'feed record_out -> recorder\n', ''),
  'destination recorder "Recorder" at desk takes 1080p59.94 as sdi_3g from mixer.out2 over rg6 1 m\n',
  '',
);

describe.runIf(installation)('the packaged extension compares', () => {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'feedplot-compare-'));
  let workbench: Workbench;

  beforeAll(async () => {
    const [work, home] = [path.join(folder, 'work'), path.join(folder, 'home')];
    mkdirSync(work);
    mkdirSync(home);
    const repository = new TestRepository(work, home).write({ 'show.feedplot': plan, 'kit.feedplot': kit });
    repository.git('init', '--quiet', '--initial-branch', 'main');
    repository.commit('The show');
    writeFileSync(path.join(work, 'show.feedplot'), fresh);
    workbench = await openNodeHost(installation!, { vsix: await packageExtension(folder), folder: work });
    await workbench.openFile('show.feedplot');
  }, 180_000);

  afterAll(async () => {
    await workbench?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  const view = () => workbench.webview();
  const sees = (what: string, selector: string) =>
    see(workbench.page, what, () => view().locator(selector).first().isVisible());

  it('with the last commit: both drawings, what came and what is gone marked', async () => {
    await workbench.runCommand('Feedplot: Compare with the last commit');
    await sees('the drawing before', '#before svg');
    await sees('the new camera', '#after g.added g[data-id="close"]');
    await sees('the recorder in its place', '#after g.removed g[data-id="recorder"]');
    expect(await view().locator('#headline').textContent()).toMatch(/1 screen or input loses its picture/);
    await workbench.screenshot('compare');
  }, 90_000);

  it('tells the load beside the text of the trunk', async () => {
    // It is drawn behind the line as content of the style, which no text of the page holds.
    const drawn = () =>
      workbench.page
        .locator('.view-line')
        .evaluateAll((lines) =>
          lines.flatMap((line) =>
            [...line.querySelectorAll('span')].map((span) => getComputedStyle(span, '::after').content),
          ),
        );
    await see(workbench.page, 'the load before and after', async () =>
      (await drawn()).join('\n').replaceAll('\u00a0', ' ').includes('backward 53.7 % → 80.5 %'),
    );
  }, 60_000);

  it('opens the text of what came, and of what is gone as it was, which cannot be written to', async () => {
    await view().locator('summary', { hasText: 'What changed in the plan' }).click();
    await view()
      .getByRole('button', { name: /^source close/ })
      .click();
    const line = fresh.split('\n').findIndex((one) => one.startsWith('source close')) + 1;
    const current = workbench.page.locator('.line-numbers.active-line-number');
    await see(workbench.page, `line ${line} selected`, async () =>
      (await current.allInnerTexts()).includes(String(line)),
    );
    await view()
      .getByRole('button', { name: /^destination recorder/ })
      .click();
    const tab = workbench.page.locator('.tab[data-resource-name="show.feedplot-before"]');
    await see(workbench.page, 'the text as it was', () => tab.isVisible());
    await see(workbench.page, 'the line that is gone', async () =>
      workbench.page
        .locator('.view-line', { hasText: 'destination' })
        .filter({ hasText: 'Recorder' })
        .first()
        .isVisible(),
    );
    await workbench.screenshot('compare-before');
    // A view's own script has an address that the workbench answers from the extension's folder.
    const others = workbench
      .externalRequests()
      .filter((url) => !/\.vscode-resource\.vscode-cdn\.net\/.*\/dist\/review\.js$/.test(url));
    expect(others).toEqual([]);
  }, 90_000);
});
