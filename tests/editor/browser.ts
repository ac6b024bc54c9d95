/** Chromium with a fresh profile, in which a workbench runs as it does for a user, and which writes down its requests. */
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { type BrowserContext, chromium, type Page } from 'playwright-core';

/** User settings of the workbench, by their full names. */
export type Settings = Record<string, unknown>;

/** A workbench that stands still: nothing that saves, fetches or pops up by itself. */
const quiet: Settings = {
  'files.autoSave': 'off',
  'explorer.compactFolders': false,
  'workbench.startupEditor': 'none',
  'workbench.secondarySideBar.defaultVisibility': 'hidden',
  'chat.disableAIFeatures': true,
  'telemetry.telemetryLevel': 'off',
  'editor.acceptSuggestionOnEnter': 'off',
};

/** The themes, by names that old and new versions of the workbench know. */
const themes = {
  light: 'Default Light Modern',
  dark: 'Default Dark Modern',
  highContrast: 'Default High Contrast',
  highContrastLight: 'Default High Contrast Light',
};

export type Theme = keyof typeof themes;

export interface Browser {
  context: BrowserContext;
  page: Page;
  /** Addresses of all requests that left this machine, also those of webviews and workers. */
  externalRequests: string[];
}

/**
 * Starts Chromium.
 * @param program path of Chromium
 * @param profile an empty folder
 */
export async function openBrowser(
  program: string,
  profile: string,
  theme: Theme = 'light',
  settings: Settings = {},
): Promise<Browser> {
  allowWebviews(profile);
  const context = await chromium.launchPersistentContext(profile, {
    executablePath: program,
    viewport: { width: 1280, height: 900 },
    args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking', '--disable-component-update'],
  });
  const externalRequests: string[] = [];
  context.on('request', (request) => {
    const { hostname } = new URL(request.url());
    if (hostname && !/(^|\.)localhost$|^127\./.test(hostname)) externalRequests.push(request.url());
  });
  const page = context.pages()[0] ?? (await context.newPage());
  await page.addInitScript(addSettings, { ...quiet, 'workbench.colorTheme': themes[theme], ...settings });
  return { context, page, externalRequests };
}

/**
 * A webview registers a service worker on an origin of its own, and Chromium refuses that while it blocks
 * third-party cookies, as some builds do unless told otherwise.
 */
function allowWebviews(profile: string): void {
  mkdirSync(path.join(profile, 'Default'), { recursive: true });
  writeFileSync(
    path.join(profile, 'Default/Preferences'),
    JSON.stringify({ profile: { cookie_controls_mode: 0, block_third_party_cookies: false } }),
  );
}

/** Runs in the page before the workbench: puts the settings into the configuration that it is about to read. */
function addSettings(settings: Settings): void {
  const observer = new MutationObserver(() => {
    const element = document.getElementById('vscode-workbench-web-configuration');
    if (!element) return;
    observer.disconnect();
    const configuration = JSON.parse(element.getAttribute('data-settings') ?? '{}');
    configuration.configurationDefaults = { ...configuration.configurationDefaults, ...settings };
    element.setAttribute('data-settings', JSON.stringify(configuration));
  });
  observer.observe(document, { childList: true, subtree: true });
}
