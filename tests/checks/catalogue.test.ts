import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { catalogue, checkNames, planChecks } from '../../src/checks/catalogue.ts';
import { explainCheck } from '../../src/checks/explanation.ts';

const folder = new URL('../../src/checks/', import.meta.url);

/** Files that declare a check, by what they say. */
const declaring = readdirSync(folder)
  .filter((file) => file.endsWith('.ts'))
  .filter((file) => /: Check(Text)? = \{|= faultCheck\(/.test(readFileSync(new URL(file, folder), 'utf8')));

describe('the catalogue of checks', () => {
  it('has every check that a file declares, under the name of its file', () => {
    expect([...checkNames].map((name) => `${name}.ts`).sort()).toEqual(declaring.sort());
  });

  it('has each name once', () => {
    expect(checkNames.size).toBe(catalogue.length);
    expect(new Set(planChecks).size).toBe(planChecks.length);
  });

  it.each(catalogue)('$name says what it means, how it is judged and what mends it', (check) => {
    expect(check.name).toMatch(/^[a-z]+(-[a-z]+)+$|^cycle$|^unreadable$|^incomplete$/);
    expect(check.summary).toMatch(/^[A-Z`].*\.$/);
    const paragraphs = check.explanation.split('\n\n');
    expect(paragraphs[0]!.length).toBeGreaterThan(60);
    expect(paragraphs.filter((one) => one.startsWith('**How it is judged.** '))).toHaveLength(1);
    expect(paragraphs.at(-1)).toMatch(/^\*\*What mends it\.\*\* \S[\s\S]+\.$/);
    expect(check.explanation).not.toMatch(/undefined|null|\[object/);
  });

  it.each(catalogue)('$name is explained', ({ name, explanation, summary }) => {
    const text = explainCheck(name);
    expect(text).toContain(`## ${name}`);
    expect(text).toContain(summary);
    expect(text).toContain(explanation);
  });

  it('explains no check that there is not', () => {
    expect(explainCheck('link-too-green')).toBeUndefined();
    expect(explainCheck('__proto__')).toBeUndefined();
  });

  it('has an example for every check but the one that tells a fault of the tool', () => {
    const without = catalogue.filter(({ examples }) => examples.length === 0).map(({ name }) => name);
    expect(without).toEqual(['tool-fault']);
  });
});
