import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { catalogue } from '../../src/checks/catalogue.ts';
import { checkText, mismatches } from '../support/fixtures.ts';

const folder = new URL('../../examples/', import.meta.url);

/** The plan files of an example, the paths below its folder. */
function textsOf(example: string): Record<string, string> {
  const names = readdirSync(new URL(`${example}/`, folder), { recursive: true, encoding: 'utf8' })
    .map((name) => name.replaceAll('\\', '/'))
    .filter((name) => name.endsWith('.feedplot'));
  return Object.fromEntries(
    names.map((name) => [name, readFileSync(new URL(`${example}/${name}`, folder), 'utf8')]),
  );
}

describe('the shipped examples', () => {
  it.each(['starter', 'finals', 'arena'])('%s has no finding', (example) => {
    const plan = `${example}.feedplot`;
    const texts = textsOf(example);
    const { findings } = checkText({ [plan]: texts[plan]!, ...texts });
    expect(findings.map(({ check, message }) => `${check}: ${message}`)).toEqual([]);
  });
});

describe('the example of mistakes', () => {
  const texts = textsOf('mistakes');
  const kit = { 'kit.feedplot': texts['kit.feedplot']! };
  const plans = Object.keys(texts).filter((name) => !(name in kit));
  const findingsOf = (name: string) => checkText({ [name]: texts[name]!, ...kit }).findings;

  it.each(plans)('%s: everything that is marked is found, and nothing else', (name) => {
    expect(mismatches({ [name]: texts[name]!, ...kit })).toEqual([]);
  });

  it('shows every check once', () => {
    const shown = plans.flatMap(findingsOf).map(({ check }) => check);
    const expected = catalogue
      .map(({ name }) => name)
      // No plan makes the tool fail.
      .filter((name) => name !== 'tool-fault')
      // Of two pictures for one screen both feeds are told.
      .flatMap((name) => (name === 'two-pictures' ? [name, name] : [name]));
    expect(shown.sort()).toEqual(expected.sort());
  });
});
