import { describe, expect, it } from 'vitest';
import {
  capital,
  counted,
  either,
  listed,
  listedWords,
  quoted,
  shown,
  withArticle,
} from '../../src/checks/words.ts';

describe('words', () => {
  it('show a text without what a terminal would act on', () => {
    expect(shown('a\u001b[31mb\u202ec')).toBe('a [31mb c');
    expect(quoted('a`b')).toBe("`a'b`");
  });

  it('cut what is absurdly long, between letters', () => {
    expect(shown('x'.repeat(48))).toBe('x'.repeat(48));
    expect(shown('x'.repeat(49))).toBe(`${'x'.repeat(36)}…`);
    expect(shown('😀'.repeat(60))).toBe(`${'😀'.repeat(36)}…`);
  });

  it('list things, and count what is too many', () => {
    expect(listed([])).toBe('');
    expect(listed(['a'])).toBe('a');
    expect(listed(['a', 'b', 'c'])).toBe('a, b and c');
    expect(listed(['a', 'b', 'c', 'd', 'e', 'f'])).toBe('a, b, c, d and 2 more');
    expect(either(['a', 'b', 'c'])).toBe('a, b or c');
  });

  it('never cut a list of words of our own', () => {
    const long = 'losing the run front_of_house <-> stage_left_wing overfills spare_trunk';
    expect(listedWords([long, long])).toBe(`${long} and ${long}`);
  });

  it('count and name', () => {
    expect(counted(1, 'picture')).toBe('1 picture');
    expect(counted(2, 'feed takes', 'feeds take')).toBe('2 feeds take');
    expect(withArticle('interface')).toBe('an interface');
    expect(withArticle('place')).toBe('a place');
    expect(capital('the cable')).toBe('The cable');
  });
});
