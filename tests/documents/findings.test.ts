import { describe, expect, test } from 'vitest';
import type { Check } from '../../src/checks/check.ts';
import type { Finding } from '../../src/checks/finding.ts';
import { findingsForGithub } from '../../src/documents/findings/github.ts';
import { locateFindings } from '../../src/documents/findings/located.ts';
import { findingsMarkdown } from '../../src/documents/findings/markdown.ts';
import { findingsSarif } from '../../src/documents/findings/sarif.ts';
import { findingsText, summaryText } from '../../src/documents/findings/text.ts';
import { ansiPaint, plainPaint } from '../../src/documents/paint.ts';

function finding(changes: Partial<Finding> & { file?: string; line?: number } = {}): Finding {
  const { file = 'a', line = 4, ...rest } = changes;
  return {
    check: 'link-overload',
    severity: 'error',
    message: 'trunk carries 107.4 %.',
    place: { file, range: { line, column: 0, endLine: line, endColumn: 9 } },
    subject: 'trunk',
    segment: null,
    related: [],
    fixes: [],
    ...rest,
  };
}

const located = (...findings: Finding[]) => locateFindings(findings, ['a', 'b'], (uri) => `${uri}.feedplot`);

test('findings stand in the order of reading: file, line, column', () => {
  const order = located(
    finding({ file: 'b', line: 0 }),
    finding({ file: 'a', line: 7 }),
    finding({ file: 'a', line: 2 }),
  );
  expect(order.map(({ file, line }) => `${file}:${line}`)).toEqual([
    'a.feedplot:3',
    'a.feedplot:8',
    'b.feedplot:1',
  ]);
});

describe('text', () => {
  test('place, severity, check and message in one line', () => {
    expect(findingsText(located(finding()), plainPaint)).toEqual([
      'a.feedplot:5:1: error link-overload: trunk carries 107.4 %.',
    ]);
  });

  test('other places stand below', () => {
    const place = { file: 'b', range: { line: 0, column: 2, endLine: 0, endColumn: 4 } };
    const lines = findingsText(located(finding({ related: [{ place, message: 'also here' }] })), plainPaint);
    expect(lines[1]).toBe('  b.feedplot:1:3: also here');
  });

  test('colour adds nothing but colour', () => {
    const findings = located(
      finding(),
      finding({ line: 5, severity: 'warning' }),
      finding({ line: 6, severity: 'info' }),
    );
    const coloured = [...findingsText(findings, ansiPaint), summaryText(findings, ['a'], ansiPaint)].join(
      '\n',
    );
    const plain = [...findingsText(findings, plainPaint), summaryText(findings, ['a'], plainPaint)].join(
      '\n',
    );
    expect(coloured).not.toBe(plain);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the colours
    expect(coloured.replace(/\u001b\[\d+m/g, '')).toBe(plain);
  });

  test('a message cannot steer the terminal or make a second line', () => {
    const [line] = findingsText(located(finding({ message: 'a\u001b[2J\nb' })), plainPaint);
    expect(line).toBe('a.feedplot:5:1: error link-overload: a\\u{1b}[2J b');
  });

  test.each([
    [[], 'Nothing wrong in show.feedplot.'],
    [[finding()], '1 error in show.feedplot. `feedplot explain CHECK` tells what a check means.'],
    [
      [
        finding(),
        finding({ line: 5 }),
        finding({ line: 6, severity: 'warning' }),
        finding({ line: 7, severity: 'info' }),
      ],
      '2 errors, 1 warning, 1 note in show.feedplot. `feedplot explain CHECK` tells what a check means.',
    ],
  ])('the summary counts', (findings, summary) => {
    expect(summaryText(located(...findings), ['show.feedplot'], plainPaint)).toBe(summary);
  });
});

// The form is GitHub's documentation of workflow commands; the escapes are those of its public toolkit
// (actions/toolkit, packages/core/src/command.ts).
describe('annotations for GitHub', () => {
  test('one command a finding', () => {
    expect(findingsForGithub(located(finding()))).toEqual([
      '::error file=a.feedplot,line=5,endLine=5,col=1,endColumn=10,title=link-overload::trunk carries 107.4 %25.',
    ]);
  });

  test('what would end a property or a line is escaped', () => {
    const findings = locateFindings([finding({ message: '100 %\nnext' })], ['a'], () => 'a,b:c%.feedplot');
    const [line] = findingsForGithub(findings);
    expect(line).toContain('file=a%2Cb%3Ac%25.feedplot,');
    expect(line).toMatch(/::100 %25%0Anext$/);
  });

  test('a finding over several lines has no columns', () => {
    const place = { file: 'a', range: { line: 0, column: 0, endLine: 2, endColumn: 1 } };
    expect(findingsForGithub(located(finding({ place, severity: 'info' })))[0]).toMatch(
      /^::notice file=a.feedplot,line=1,endLine=3,title=/,
    );
  });
});

// SARIF 2.1.0, OASIS standard of 27 March 2020. Clauses stand beside each claim.
describe('SARIF', () => {
  const check = { name: 'link-overload', severity: 'error', summary: 'A link…', explanation: 'Why' } as Check;
  const log = (...findings: Finding[]) =>
    JSON.parse(JSON.stringify(findingsSarif(located(...findings), [check], '1.2.3')));

  test('version and one run with the tool and its rules (§3.13.2, §3.14.6, §3.19.23)', () => {
    const { version, runs } = log();
    expect(version).toBe('2.1.0');
    expect(runs).toHaveLength(1);
    expect(runs[0].tool.driver).toMatchObject({
      name: 'Feedplot',
      version: '1.2.3',
      rules: [{ id: 'link-overload', defaultConfiguration: { level: 'error' } }],
    });
    expect(runs[0].results).toEqual([]);
  });

  test('a result names its rule by id and index, which agree (§3.27.5, §3.27.6)', () => {
    const { results, tool } = log(finding()).runs[0];
    expect(results[0].ruleId).toBe('link-overload');
    expect(tool.driver.rules[results[0].ruleIndex].id).toBe('link-overload');
  });

  test('a region counts from one, its end column is behind the last, in UTF-16 units (§3.30.6, §3.30.8, §3.14.17)', () => {
    const [run] = log(finding()).runs;
    expect(run.columnKind).toBe('utf16CodeUnits');
    expect(run.results[0].locations[0].physicalLocation.region).toEqual({
      startLine: 5,
      startColumn: 1,
      endLine: 5,
      endColumn: 10,
    });
  });

  test('levels are those of the standard (§3.27.10)', () => {
    const { results } = log(
      finding(),
      finding({ line: 5, severity: 'warning' }),
      finding({ line: 6, severity: 'info' }),
    ).runs[0];
    expect(results.map((result: { level: string }) => result.level)).toEqual(['error', 'warning', 'note']);
  });

  test('a file name is a relative URI (§3.4.3)', () => {
    const sarif = findingsSarif(
      locateFindings([finding()], ['a'], () => 'my shows/größe.feedplot'),
      [check],
      '1',
    );
    expect(JSON.stringify(sarif)).toContain('"uri":"my%20shows/gr%C3%B6%C3%9Fe.feedplot"');
  });

  test('brackets in a message are no links (§3.11.6)', () => {
    const { results } = log(finding({ message: 'in[1..4] \\ x' })).runs[0];
    expect(results[0].message.text).toBe('in\\[1..4\\] \\\\ x');
  });
});

describe('Markdown', () => {
  test('errors come first, in a table', () => {
    const text = findingsMarkdown(
      located(finding({ severity: 'warning', check: 'link-unused', line: 1 }), finding()),
      ['a.feedplot'],
    );
    const rows = text.split('\n').filter((line) => line.startsWith('| ') && line.includes('`'));
    expect(rows[0]).toBe('| **error** | `link-overload` | `a.feedplot:5` | trunk carries 107.4 %. |');
    expect(rows[1]).toContain('link-unused');
  });

  test('a name of the plan is neither markup nor a link nor a mention', () => {
    const text = findingsMarkdown(located(finding({ message: '[x](http://y) <b> | *s* @someone' })), ['a']);
    expect(text).toContain('\\[x\\](http://y) \\<b\\> \\| \\*s\\* @&#8203;someone');
  });

  test('it fits into a comment, and says what was left out', () => {
    const text = findingsMarkdown(located(...Array.from({ length: 5000 }, (_, line) => finding({ line }))), [
      'a',
    ]);
    // A comment on GitHub has at most 65,536 characters (its API answers "body is too long").
    expect(text.length).toBeLessThan(65_536);
    expect(text).toMatch(/\d+ more are not shown/);
  });
});
