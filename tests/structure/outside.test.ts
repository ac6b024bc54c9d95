/** What leaves the program and what gets in: nothing but what is said here. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { bookPreviewPage } from '../../src/extension/webview/book-page.ts';
import { drawingPage } from '../../src/extension/webview/page.ts';
import { reviewPage } from '../../src/extension/webview/review-page.ts';

const sources = readdirSync('src', { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.ts') && !file.includes('generated/'))
  .map((file) => ({ file, text: readFileSync(join('src', file), 'utf8') }));

const filesWith = (pattern: RegExp) =>
  sources.filter(({ text }) => pattern.test(text)).map(({ file }) => file);

const manifest = JSON.parse(readFileSync('package.json', 'utf8')) as {
  readonly activationEvents?: readonly string[];
  readonly capabilities: Record<string, { readonly supported: boolean }>;
  readonly contributes: {
    readonly configuration: { readonly properties: Record<string, { readonly type: string }> };
  };
  readonly dependencies: Record<string, string>;
};

describe('other programs', () => {
  it('are git alone, which is given arguments and never a line for a shell', () => {
    expect(filesWith(/child_process|worker_threads|node:cluster/)).toEqual(['server/git/git.ts']);
    const { text } = sources.find(({ file }) => file === 'server/git/git.ts')!;
    expect(text).toMatch(/^import \{ execFile \} from 'node:child_process';$/m);
    expect([...text.matchAll(/\bexecFile\(\s*'(\w+)'/g)].map(([, name]) => name)).toEqual(['git']);
    expect(filesWith(/\bshell: (true|['"`])/)).toEqual([]);
  });

  it('are never made of text', () => {
    expect(filesWith(/\beval\(|new Function\(|node:vm|setTimeout\(\s*['"`]/)).toEqual([]);
  });
});

describe('the network', () => {
  it('is used by nothing', () => {
    expect(filesWith(/node:(https?|http2|net|tls|dgram|dns)'/)).toEqual([]);
    expect(filesWith(/\b(XMLHttpRequest|WebSocket|EventSource|sendBeacon|RTCPeerConnection)\b/)).toEqual([]);
  });

  it('is not what the view fetches: the worker of the layout, which lies beside its script', () => {
    expect(filesWith(/\bfetch\(\s*[^)]/).filter((file) => file !== 'server/git/plan-then.ts')).toEqual([
      'extension/webview/layout-worker.ts',
    ]);
  });
});

const nonce = 'mark-1234';
const cspSource = 'https://editor.test';
const pages: Record<string, string> = {
  'extension/drawing-panel.ts': drawingPage({
    script: `${cspSource}/drawing.js`,
    layout: `${cspSource}/layout.js`,
    nonce,
    cspSource,
  }),
  'extension/book-panel.ts': bookPreviewPage({
    script: `${cspSource}/book.js`,
    layout: `${cspSource}/layout.js`,
    nonce,
    cspSource,
  }),
  'extension/review-panel.ts': reviewPage(`${cspSource}/review.js`, nonce),
};

/** The rules of a page for what it may load, by their names. */
function policyOf(page: string): Map<string, string[]> {
  const [, content = ''] = /<meta http-equiv="Content-Security-Policy" content="([^"]*)">/.exec(page) ?? [];
  return new Map(
    content.split(';').map((rule) => {
      const [name = '', ...allowed] = rule.trim().split(/\s+/);
      return [name, allowed];
    }),
  );
}

describe('every page in the editor', () => {
  it('is one of these', () => {
    expect(filesWith(/\.html = /).sort()).toEqual(Object.keys(pages).sort());
  });

  it.each(Object.entries(pages))('%s runs only the script with its mark', (_file, page) => {
    const policy = policyOf(page);
    expect(policy.get('default-src')).toEqual(["'none'"]);
    expect(policy.get('script-src')).toEqual([`'nonce-${nonce}'`]);
    expect(policy.get('style-src')).toEqual([`'nonce-${nonce}'`]);
    for (const [name, allowed] of policy) {
      expect(['default-src', 'script-src', 'style-src', 'img-src', 'connect-src', 'worker-src']).toContain(
        name,
      );
      for (const one of allowed)
        expect(["'none'", `'nonce-${nonce}'`, 'data:', 'blob:', cspSource], name).toContain(one);
    }
    for (const [tag] of page.matchAll(/<(?:script|style)\b[^>]*>/g))
      expect(tag).toContain(`nonce="${nonce}"`);
    // Neither handlers nor styles in attributes.
    expect(page).not.toMatch(/<[^>]+\s(?:on\w+|style)=/);
    expect(page).not.toMatch(/javascript:/);
  });

  it.each(Object.keys(pages))('%s draws its mark from a cryptographic source', (file) => {
    const { text } = sources.find((one) => one.file === file)!;
    expect(text).toMatch(/\bnewNonce\(\)/);
    const made = sources.filter((one) => one.text.includes('function newNonce('));
    expect(made).toHaveLength(1);
    for (const one of made)
      expect(one.text).toMatch(/crypto\.getRandomValues\(new Uint8Array\((1[6-9]|[2-9]\d)\)\)/);
  });

  it('and nothing is drawn from a source that can be foretold', () => {
    expect(filesWith(/Math\.random/)).toEqual([]);
  });
});

describe('the manifest of the extension', () => {
  it('says that it works in folders that are not trusted, and in those that lie elsewhere', () => {
    expect(manifest.capabilities.untrustedWorkspaces?.supported).toBe(true);
    expect(manifest.capabilities.virtualWorkspaces?.supported).toBe(true);
  });

  it('is true in that: no setting, which a folder can bring along, names a program or an address', () => {
    const { properties } = manifest.contributes.configuration;
    const texts = Object.entries(properties).filter(([, { type }]) => type !== 'boolean');
    expect(texts.map(([name]) => name)).toEqual(['feedplot.trace.server']);
  });

  it('starts with a plan, never with the editor', () => {
    expect(manifest.activationEvents ?? []).toEqual([]);
  });
});

describe('the packages that ship', () => {
  const guide = readFileSync('DEVELOPERS.md', 'utf8');
  const [, section = ''] = /## Dependencies\n([\s\S]*?)(\n## |$)/.exec(guide) ?? [];
  const reasoned = section
    .split('\n')
    .filter((line) => line.startsWith('| `'))
    .map((line) => line.split('|'))
    .map(([, names = '', reason = '']) => ({
      names: [...names.matchAll(/`([^`]+)`/g)].map(([, name]) => name!),
      reason: reason.trim(),
    }));

  it('are each named with their reason in the guide for developers', () => {
    const named = reasoned.flatMap(({ names }) => names).filter((name) => !name.startsWith('@fontsource'));
    expect(named.sort()).toEqual(Object.keys(manifest.dependencies).sort());
    for (const { names, reason } of reasoned) expect(reason.length, names.join()).toBeGreaterThan(8);
  });

  it('are few, and each in one exact version', () => {
    expect(Object.keys(manifest.dependencies).length).toBeLessThanOrEqual(15);
    for (const version of Object.values(manifest.dependencies)) expect(version).toMatch(/^\d+\.\d+\.\d+$/);
  });
});
