import { describe, expect, it } from 'vitest';
import { catalogue } from '../../src/checks/catalogue.ts';
import { findingTexts } from '../support/fixtures.ts';

const examples = catalogue.flatMap(({ name, examples: ofCheck }) =>
  ofCheck.map((example, i) => ({ name, i: i + 1, ...example })),
);

describe('the examples in the explanations', () => {
  it.each(examples)(
    '$name, example $i: the wrong plan has this finding and no other',
    ({ name, wrong, times = 1 }) => {
      const found = findingTexts(wrong);
      expect(found.filter((text) => text.startsWith(`${name}: `))).toHaveLength(times);
      expect(found).toHaveLength(times);
    },
  );

  it.each(examples)('$name, example $i: the mended plan has no finding', ({ right }) => {
    expect(findingTexts(right)).toEqual([]);
  });

  it.each(examples)('$name, example $i: the two plans differ', ({ wrong, right }) => {
    expect(wrong).not.toBe(right);
  });
});

describe('what the findings of the examples say', () => {
  it.each(examples)('$name, example $i: is whole, in plain words', ({ wrong }) => {
    for (const text of findingTexts(wrong)) {
      expect(text).not.toMatch(/undefined|null|NaN|Infinity|\[object|offset/);
      expect(text).toMatch(/[.?]$/);
      expect(text).not.toMatch(/ {2}|\n/);
    }
  });
});
