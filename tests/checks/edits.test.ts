import { describe, expect, it } from 'vitest';
import type { Edit } from '../../src/checks/finding.ts';
import { applied } from '../support/apply-edits.ts';
import { planOf } from '../support/plans.ts';

function edited(text: string, edits: (statements: ReturnType<typeof planOf>['statements']) => Edit[]) {
  const plan = planOf(text);
  return applied({ 'show.feedplot': text }, edits(plan.statements))?.['show.feedplot'];
}

describe('edits', () => {
  const text =
    'plan "x" { // the { show\n  rate 50\n}\nplace desk "a { b"\nnode box : stand at desk // here\nplace last';

  it('replace a part', () => {
    expect(
      edited(text, ([, desk]) => [{ kind: 'replace', statement: desk!, part: 'name', text: 'table' }]),
    ).toContain('place table "a { b"');
  });

  it('never replace a whole line for a part that is not written', () => {
    expect(
      edited(text, ([, desk]) => [{ kind: 'replace', statement: desk!, part: 'cables/0', text: 'x' }]),
    ).toBeUndefined();
  });

  it('append to a statement, before its block', () => {
    expect(
      edited(text, ([, , box]) => [{ kind: 'append', statement: box!, text: 'powered by left' }]),
    ).toContain('node box : stand at desk powered by left // here\n');
    expect(edited(text, ([plan]) => [{ kind: 'append', statement: plan!, text: 'more' }])).toContain(
      'plan "x" more { // the { show\n',
    );
  });

  it('insert into a block, and make one', () => {
    expect(
      edited(text, ([plan]) => [{ kind: 'insertInside', statement: plan!, text: 'slack 2 m' }]),
    ).toContain('plan "x" {\n  slack 2 m // the { show\n  rate 50\n}');
    expect(
      edited(text, ([, , box]) => [{ kind: 'insertInside', statement: box!, text: 'firmware "1"' }]),
    ).toContain('node box : stand at desk {\n  firmware "1"\n} // here\n');
  });

  it('insert a line behind a statement and what stands on its line', () => {
    expect(
      edited(text, ([, , box]) => [{ kind: 'insertAfter', statement: box!, text: 'place new' }]),
    ).toContain('// here\nplace new\nplace last');
    expect(
      edited(text, ([plan]) => [{ kind: 'insertAfter', statement: plan!, text: 'place new' }]),
    ).toContain('}\nplace new\nplace desk');
    expect(
      edited(text, ([, , , last]) => [{ kind: 'insertAfter', statement: last!, text: 'place new' }]),
    ).toMatch(/place last\nplace new$/);
  });

  it('insert on top', () => {
    expect(
      edited(text, ([plan]) => [{ kind: 'insertOnTop', file: plan!.source.file, text: 'place first' }]),
    ).toBe(`place first\n${text}`);
  });

  it('delete the lines of a statement', () => {
    expect(edited(text, ([plan]) => [{ kind: 'delete', statement: plan! }])).toMatch(/^place desk/);
    expect(edited(text, ([, , , last]) => [{ kind: 'delete', statement: last! }])).toMatch(/\/\/ here$/);
    expect(edited('place a', ([a]) => [{ kind: 'delete', statement: a! }])).toBe('');
  });

  it('keep the line ends of the file', () => {
    const windows = 'plan "x"\r\nplace a\r\nplace b\r\n';
    expect(edited(windows, ([, a]) => [{ kind: 'insertAfter', statement: a!, text: 'place c' }])).toBe(
      'plan "x"\r\nplace a\r\nplace c\r\nplace b\r\n',
    );
    expect(edited(windows, ([, a]) => [{ kind: 'delete', statement: a! }])).toBe('plan "x"\r\nplace b\r\n');
  });
});
