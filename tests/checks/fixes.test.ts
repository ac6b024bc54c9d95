import { describe, expect, it } from 'vitest';
import { catalogue } from '../../src/checks/catalogue.ts';
import { changedPlan, smallPlan } from '../../src/checks/example-plans.ts';
import type { Finding, Fix } from '../../src/checks/finding.ts';
import { applied } from '../support/apply-edits.ts';
import { checkText, findingTexts } from '../support/fixtures.ts';

const FILE = 'show.feedplot';

function findingsOf(text: string, check: string): Finding[] {
  return checkText({ [FILE]: text }).findings.filter((finding) => finding.check === check);
}

function fixesOf(text: string, check: string): Fix[] {
  return findingsOf(text, check).flatMap(({ fixes }) => fixes);
}

/** The text after a fix. */
function mended(text: string, { edits, title }: Fix): string {
  const result = applied({ [FILE]: text }, edits)?.[FILE];
  if (result === undefined) throw new Error(`The fix "${title}" does not fit the text`);
  return result;
}

/** The plan has this finding alone and the fix of this title; after it nothing is found. @returns the mended text. */
function expectMended(text: string, check: string, title: string): string {
  const fix = fixesOf(text, check).find((one) => one.title === title);
  expect(fixesOf(text, check).map((one) => one.title)).toContain(title);
  const result = mended(text, fix!);
  expect(findingTexts(result)).toEqual([]);
  return result;
}

const examples = catalogue.flatMap(({ name, examples: ofCheck }) =>
  ofCheck.map(({ wrong }, i) => ({ name, i: i + 1, wrong })),
);

/** What a fix may bring with it, and why that is right. */
function isWaived({ title }: Fix, finding: string): boolean {
  // A misspelt name can be declared as well; then what was meant before is not used, or how far it is not known.
  if (title.startsWith('Declare the ')) return /^(destination-unfed|length-unknown): /.test(finding);
  return false;
}

describe('every fix of every example', () => {
  it.each(examples)('$name, example $i: its finding goes and no other comes', ({ name, wrong }) => {
    for (const finding of findingsOf(wrong, name)) {
      const before = findingTexts(wrong);
      for (const fix of finding.fixes) {
        const after = findingTexts(mended(wrong, fix));
        expect({
          fix: fix.title,
          still: after.filter((text) => text === `${name}: ${finding.message}`),
        }).toEqual({
          fix: fix.title,
          still: [],
        });
        const more = after.filter((text) => !before.includes(text) && !isWaived(fix, text));
        expect({ fix: fix.title, more }).toEqual({ fix: fix.title, more: [] });
      }
    }
  });

  it('is a title in words and at least one edit', () => {
    const fixes = examples.flatMap(({ name, wrong }) => fixesOf(wrong, name));
    expect(fixes.length).toBeGreaterThan(60);
    for (const { title, edits } of fixes) {
      expect(title).toMatch(/^[A-Z][^\n]{4,90}$/);
      expect(title).not.toMatch(/undefined|null/);
      expect(edits.length).toBeGreaterThan(0);
    }
  });
});

describe('accepting with a reason', () => {
  it('is offered wherever a finding has a subject, and nowhere else', () => {
    for (const { name, wrong } of examples) {
      for (const { subject, fixes } of findingsOf(wrong, name)) {
        const offered = fixes.some(({ title }) => title === 'Accept this with a reason');
        expect({ name, offered }).toEqual({ name, offered: subject !== null });
      }
    }
  });

  it('stands behind what was accepted before', () => {
    const text = smallPlan(
      'source laptop at stage sends 1080p60 as sdi_3g into box_s.in2 over rg6 75 m',
      'destination side at desk takes 1080p60 as sdi_3g from box_d.out2 over rg6 5 m',
      'accept link-near-limit on laptop "tested"',
      'feed laptop -> side',
    );
    const [fix] = fixesOf(text, 'rate-differs').filter(({ title }) => title.startsWith('Accept'));
    expect(mended(text, fix!)).toContain(
      'accept link-near-limit on laptop "tested"\naccept rate-differs on laptop "say why it is acceptable"\n',
    );
  });
});

describe('a cable that reaches', () => {
  it('takes the place of one that does not', () => {
    const text = changedPlan('over cat6a', 'over cat6').replace('desk 40 m', 'desk 80 m');
    expectMended(text, 'link-reach', 'Use a cable that reaches: `cat6a`');
  });

  it('takes the place of one that is near its limit', () => {
    const text = changedPlan('into box_s.in1 over rg6 5 m', 'into box_s.in1 over rg6 75 m');
    const title = 'Use a cable that reaches: `rg11`';
    expectMended(text, 'link-near-limit', title);
  });

  it('takes the place of one that carries nothing of it, and is added where there is none', () => {
    expectMended(changedPlan('over cat6a', 'over om3'), 'cable-wrong', 'Use a cable that reaches: `cat6a`');
    const added = expectMended(
      changedPlan(' over cat6a', ''),
      'cable-missing',
      'Use a cable that reaches: `cat6a`',
    );
    expect(added).toContain('box_d.net1 over cat6a\n');
  });

  it('is not offered where none reaches', () => {
    const text = changedPlan('desk 40 m', 'desk 400 m');
    expect(fixesOf(text, 'link-reach').map(({ title }) => title)).toEqual(['Accept this with a reason']);
  });
});

describe('a free port', () => {
  const second = [
    'destination second at desk takes 1080p50 as sdi_3g from box_d.out1 over rg6 5 m',
    'feed camera -> second',
  ];

  it('of the same kind is used', () => {
    const text = expectMended(smallPlan(...second), 'port-taken', 'Use the free port `box_d.out2`');
    expect(text).toContain('from box_d.out2 over rg6 5 m');
  });

  it('is not offered where none is free', () => {
    const full = [2, 3, 4].flatMap((i) => [
      `destination screen_${i} at desk takes 1080p50 as sdi_3g from box_d.out${i} over rg6 5 m`,
      `feed camera -> screen_${i}`,
    ]);
    const titles = fixesOf(smallPlan(...full, ...second), 'port-taken').map(({ title }) => title);
    expect(titles).toEqual(['Accept this with a reason']);
  });
});

describe('a picture on the other trunk', () => {
  const cameras = [2, 3, 4].flatMap((i) => [
    `source camera_${i} at stage sends 1080p50 as sdi_3g into box_s.in${i} over rg6 5 m`,
    `destination screen_${i} at desk takes 1080p50 as sdi_3g from box_d.out${i} over rg6 5 m`,
    `feed camera_${i} -> screen_${i} via box_d.net1`,
  ]);
  const trunks = (...more: string[]) =>
    smallPlan('link trunk_b box_s.net2 <-> box_d.net2 over cat6a', ...more)
      .replaceAll('1080p50', '1080p59.94')
      .replace('rate 50', 'rate 59.94')
      .replace('feed camera -> screen\n', 'feed camera -> screen via box_d.net1\n');

  it('is not moved where a person has pinned it', () => {
    const titles = fixesOf(trunks(...cameras), 'link-overload').map(({ title }) => title);
    expect(titles).toEqual(['Accept this with a reason']);
  });

  it('is put there by `via`', () => {
    const unpinned = cameras.map((line) =>
      line.replace('feed camera_4 -> screen_4 via box_d.net1', 'feed camera_4 -> screen_4'),
    );
    const text = trunks(...unpinned)
      .replace('link trunk_b', 'link trunk_x')
      .replace('link trunk ', 'link trunk_b ')
      .replace('trunk_x', 'trunk');
    const result = expectMendedExcept(text, 'link-overload', 'Put `camera_4` on trunk', ['equal-routes']);
    expect(result).toContain('feed camera_4 -> screen_4 via box_s.net2\n');
  });
});

/** Like `expectMended`, where other findings stand beside it that have nothing to do with it. */
function expectMendedExcept(text: string, check: string, title: string, beside: string[]): string {
  const titles = fixesOf(text, check).map((one) => one.title);
  expect(titles).toContain(title);
  const result = mended(text, fixesOf(text, check).find((one) => one.title === title)!);
  const left = checkText({ [FILE]: result }).findings.map((one) => one.check);
  expect(left.filter((one) => !beside.includes(one))).toEqual([]);
  return result;
}

describe('what is missing is declared', () => {
  it('a place, behind the others', () => {
    const text = smallPlan(
      'node box_x : edge_box at attic',
      'link box_x.net1 <-> box_d.net2 over cat6a 20 m',
      ...use,
    );
    const result = expectMended(text, 'unknown-name', 'Declare the place `attic`');
    expect(result).toContain('place desk\nplace attic\n');
  });
  const use = [
    'source far at stage sends 1080p50 as sdi_3g into box_x.in1 over rg6 5 m',
    'destination side at desk takes 1080p50 as sdi_3g from box_d.out2 over rg6 5 m',
    'feed far -> side',
  ];

  it('a node, of a kit that has the ports', () => {
    const text = smallPlan(
      'link box_y.net1 <-> box_d.net2 over cat6a 20 m',
      ...use.map((line) => line.replace('box_x', 'box_y')),
    );
    const result = expectMended(text, 'unknown-name', 'Declare the node `box_y`');
    expect(result).toContain('node box_y : edge_box at stage\n');
  });

  it('a destination, at a free output', () => {
    const text = smallPlan('feed camera -> recorder');
    const result = expectMended(text, 'unknown-name', 'Declare the destination `recorder`');
    expect(result).toContain(
      'destination recorder at desk takes 1080p50 as sdi_3g from box_d.out2 over rg6\n',
    );
  });

  it('a segment', () => {
    const text = smallPlan(
      'feed camera -> screen_2 in talk',
      'destination screen_2 at desk takes 1080p50 as sdi_3g from box_d.out2 over rg6 5 m',
    );
    expectMended(text, 'unknown-name', 'Declare the segment `talk`');
  });

  it('a run between two places, its length marked as a guess', () => {
    const text = changedPlan('run stage <-> desk 40 m', '');
    const result = expectMended(
      text,
      'length-unknown',
      'Add a run from stage to desk, its length to be measured',
    );
    expect(result).toContain('run stage <-> desk 30 m "a guess: measure it"');
  });

  it('the slack of the plan', () => {
    const text = changedPlan('over rg6 5 m', 'over rg6').replace('  slack 2 m\n', '');
    expectMended(text, 'length-unknown', 'Plan with 2 m of slack at each end');
  });

  it('the link between two networks', () => {
    const text = smallPlan(
      'node box_x : edge_box at stage',
      'node box_y : edge_box at desk',
      'source far at stage sends 1080p50 as sdi_3g into box_x.in1 over rg6 5 m',
      'destination side at desk takes 1080p50 as sdi_3g from box_y.out1 over rg6 5 m',
      'feed far -> side',
    );
    const result = expectMended(text, 'no-route', 'Join box_x.net1 and box_y.net1');
    expect(result).toContain('link box_x.net1 <-> box_y.net1 over cat6a\n');
  });

  it('a source that is not used for a destination that is not fed', () => {
    const text = smallPlan(
      'source spare at stage sends 1080p50 as sdi_3g into box_s.in2 over rg6 5 m',
      'destination side at desk takes 1080p50 as sdi_3g from box_d.out2 over rg6 5 m',
    );
    expectMended(text, 'destination-unfed', 'Send it spare');
  });
});

describe('a format that fits', () => {
  it('is the next smaller one', () => {
    const text = changedPlan('sends 1080p50', 'sends 2160p50');
    const result = expectMended(text, 'format-too-big', 'Send 1080p50, which fits');
    expect(result).toContain('sends 1080p50 as');
  });

  it('has the house rate', () => {
    expectMended(
      changedPlan('sends 1080p50 as', 'sends 1080p60 4:2:2 10 bit as').replace(
        'takes 1080p50',
        'takes 1080p60, 1080p50',
      ),
      'rate-differs',
      'Send 1080p50',
    );
  });
});
