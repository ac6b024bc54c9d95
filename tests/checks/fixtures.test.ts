import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { catalogue } from '../../src/checks/catalogue.ts';
import { mismatches } from '../support/fixtures.ts';

const folder = new URL('./fixtures/', import.meta.url);
const names = readdirSync(folder).filter((name) => name.endsWith('.feedplot'));
const textOf = (name: string) => readFileSync(new URL(name, folder), 'utf8');

/** Files that others import. */
const parts = Object.fromEntries(
  names.filter((name) => name.startsWith('part-')).map((name) => [name, textOf(name)]),
);
const plans = names.filter((name) => !(name in parts));

describe('the fixtures', () => {
  it.each(plans)('%s: everything that is marked is found, and nothing else', (name) => {
    expect(mismatches({ [name]: textOf(name), ...parts })).toEqual([]);
  });

  it('mark every check', () => {
    const marked = new Set(
      plans.flatMap((name) => [...textOf(name).matchAll(/[a-z]+(-[a-z]+)*/g)].map(([word]) => word)),
    );
    const unmarked = catalogue.map(({ name }) => name).filter((name) => !marked.has(name));
    // A fault of the tool has no plan that shows it; tests/checks/findings.test.ts makes one.
    expect(unmarked).toEqual(['tool-fault']);
  });
});

describe('the runner of fixtures', () => {
  const plan = 'plan "Empty"\n';

  it('tells a marker that cannot be read', () => {
    expect(mismatches({ 'a.feedplot': `${plan}// expect link-reach\n` })).toEqual([
      'a.feedplot:2: malformed marker: // expect link-reach',
    ]);
    expect(mismatches({ 'a.feedplot': `${plan}// expect: Link reach\n` })).toHaveLength(1);
    expect(mismatches({ 'a.feedplot': `${plan}// expect: link-reach,\n` })).toHaveLength(2);
    expect(mismatches({ 'a.feedplot': `${plan}// expect: link-reach "half\n` })).toHaveLength(1);
  });

  it('tells a name that is no check', () => {
    expect(mismatches({ 'a.feedplot': `${plan}// expect: link-too-green\n` })).toEqual([
      'a.feedplot:2: no check is named link-too-green: // expect: link-too-green',
    ]);
  });

  it('tells what is expected and not found, and what is found and not expected', () => {
    const text = `${plan}// expect: unknown-name "stag"\nplace stage\nrun stage <-> desk 4 m\n`;
    expect(mismatches({ 'a.feedplot': text })).toEqual([
      'a.feedplot:2: not found: unknown-name "stag"',
      expect.stringMatching(/^a\.feedplot:4: not expected: unknown-name: /),
    ]);
  });

  it('tells a message that does not say what is marked', () => {
    const text = `${plan}place stage\n// expect: unknown-name "kitchen"\nrun stage <-> desk 4 m\n`;
    expect(mismatches({ 'a.feedplot': text })).toHaveLength(2);
  });
});
