/** A Chromium without a window, for tests that look at what the tool writes as a person's browser shows it. */
import { type Browser, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findChromium } from '../editor/installation.ts';

export interface Viewer {
  /** A fresh page that writes down every request and everything that goes wrong in it. */
  open(options?: { width?: number; height?: number }): Promise<Watched>;
}

export interface Watched {
  readonly page: Page;
  /** Addresses of all requests but the page's own file. */
  readonly requests: string[];
  /** Errors of scripts and of the page's policy. */
  readonly complaints: string[];
}

/** Declares tests that need a browser; without one they are skipped and say so, with CI in the environment they fail. */
export function describeInBrowser(name: string, declare: (viewer: Viewer) => void): void {
  const program = findChromium();
  if (!program) {
    const reason = 'no Chromium was found: install it, or name its program in the variable CHROMIUM';
    if (process.env.CI) it(name, () => expect.fail(reason));
    else console.warn(`SKIPPED, ${name}: ${reason}.`);
  }
  describe.runIf(program)(name, () => {
    let browser: Browser;
    beforeAll(async () => {
      browser = await chromium.launch({
        executablePath: program!,
        args: [
          '--no-sandbox',
          '--disable-gpu',
          '--force-color-profile=srgb',
          '--autoplay-policy=no-user-gesture-required',
        ],
      });
    }, 60_000);
    afterAll(() => browser?.close());
    declare({
      open: async ({ width = 1280, height = 900 } = {}) => {
        const page = await browser.newPage({ viewport: { width, height } });
        const [requests, complaints]: [string[], string[]] = [[], []];
        page.on('request', (request) => {
          if (!request.isNavigationRequest()) requests.push(request.url());
        });
        page.on('pageerror', (error) => complaints.push(error.message));
        page.on('console', (message) => {
          if (message.type() === 'error') complaints.push(message.text());
        });
        return { page, requests, complaints };
      },
    });
  });
}
