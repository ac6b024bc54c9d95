import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

describe('the layers of src/', () => {
  it('import only what stands before them', () => {
    const report = JSON.parse(
      execFileSync('depcruise', ['src', '--config', '.dependency-cruiser.mjs', '--output-type', 'json'], {
        encoding: 'utf8',
        maxBuffer: 1 << 28,
      }),
    ) as {
      summary: { violations: { rule: { name: string }; from: string; to: string }[]; totalCruised: number };
    };
    expect(report.summary.violations.map(({ rule, from, to }) => `${rule.name}: ${from} -> ${to}`)).toEqual(
      [],
    );
    expect(report.summary.totalCruised).toBeGreaterThan(60);
  });
});

describe('the packages', () => {
  it('hold one copy of the protocol, so that a cancelled request is not answered as a success', () => {
    const copies = readdirSync('node_modules', { recursive: true, encoding: 'utf8' }).filter(
      (file) =>
        /(^|\/)vscode-(jsonrpc|languageserver-protocol)\/package\.json$/.test(file) &&
        !file.includes('typescript/'),
    );
    const versions = copies.map((file) => {
      const { name, version } = JSON.parse(readFileSync(`node_modules/${file}`, 'utf8')) as {
        name: string;
        version: string;
      };
      return `${name} ${version}`;
    });
    expect(versions.sort()).toEqual(['vscode-jsonrpc 9.0.3', 'vscode-languageserver-protocol 3.18.4']);
  });

  it('are locked without the address of a registry', () => {
    expect(readFileSync('package-lock.json', 'utf8')).not.toMatch(/"resolved"/);
  });
});
