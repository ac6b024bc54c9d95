/** Every package that is in what ships is there with its licence. */
import { readFileSync } from 'node:fs';
import esbuild from 'esbuild';
import { beforeAll, describe, expect, it } from 'vitest';
import { noticesOf, packagesIn } from '../../src/package/notices.ts';

const notices = readFileSync('dist/THIRD-PARTY-NOTICES.txt', 'utf8');
const config = readFileSync('esbuild.config.mjs', 'utf8');
const entries = [...config.matchAll(/entryPoints: \['([^']+)'\]/g)].map(([, file]) => file!);

let bundled: ReturnType<typeof packagesIn>;

beforeAll(async () => {
  const inBrowser = (file: string) => /browser|\/web|moving/.test(file);
  const metafiles = [true, false].map(async (browser) => {
    const { metafile } = await esbuild.build({
      entryPoints: entries.filter((file) => inBrowser(file) === browser),
      bundle: true,
      write: false,
      metafile: true,
      platform: browser ? 'browser' : 'node',
      external: ['vscode'],
      outdir: 'nowhere',
      format: 'cjs',
      logLevel: 'error',
      define: { 'import.meta.url': 'ownAddress' },
    });
    return metafile;
  });
  bundled = packagesIn(await Promise.all(metafiles));
}, 120_000);

describe('the notices', () => {
  it('name every bundled package with its version and its licence', () => {
    expect(entries.length).toBeGreaterThan(8);
    expect(bundled.size).toBeGreaterThan(25);
    for (const folder of bundled.keys()) {
      const { name, version } = JSON.parse(readFileSync(`${folder}/package.json`, 'utf8')) as {
        name: string;
        version: string;
      };
      expect(notices, `${name} ${version}`).toContain(`\n${name} ${version}\nLicence: `);
    }
  });

  it('name what is copied as it is: the layout library and the fonts', () => {
    for (const name of ['elkjs', '@fontsource/noto-sans', '@fontsource/unifontex'])
      expect(notices).toContain(`\n${name} `);
    expect(notices).toContain('SIL OPEN FONT LICENSE');
  });

  it('hold the words of each licence', () => {
    for (const notice of notices.split(/^={80}$/m).slice(1)) {
      expect(notice).toMatch(/permission|copyright|license/i);
      expect(notice.length).toBeGreaterThan(200);
    }
  });

  it('are not made for a package that says of no licence', () => {
    expect(() => noticesOf(new Map([['tests/docs/no-licence', new Set<string>()]]))).toThrow(
      'says of no licence',
    );
  });
});
