import { describe, expect, it } from 'vitest';
import { analyse } from '../../src/analysis/analyse.ts';
import { planChecks } from '../../src/checks/catalogue.ts';
import type { Check } from '../../src/checks/check.ts';
import { smallPlan } from '../../src/checks/example-plans.ts';
import { locate } from '../../src/checks/finding.ts';
import {
  acceptedFindingsOf,
  checkPlan,
  type FindingsOptions,
  findingsOf,
  statementFindings,
} from '../../src/checks/findings.ts';
import { readText } from '../../src/plan/read-text.ts';
import { assembledOf } from '../support/plans.ts';

function check(files: string | Record<string, string>, options?: FindingsOptions) {
  const { plan, unreadables } = assembledOf(files);
  return checkPlan(analyse(plan), unreadables, options);
}

const speaking = (name: string, when?: 'idle'): Check => ({
  ...planChecks[0]!,
  name,
  ...(when ? { when } : {}),
  find: ({ plan }, report) => report({ statement: plan.statements[0]!, message: `${name} speaks.` }),
});

const failing: Check = {
  ...planChecks[0]!,
  name: 'link-reach',
  find: () => {
    throw new Error('broken');
  },
};

describe('the order of findings', () => {
  it('is that of files and statements, whatever the checks are called in which order', () => {
    const { findings } = check({
      'show.feedplot': `plan "Order"\nimport "b.feedplot"\nplace 4th\nplace a\nplace a\nrun a <-> c 4 ells\n`,
      'b.feedplot': `place b\nplace b\nrun b <-> d 4 m\n`,
    });
    expect(findings.map(({ check: name, place }) => `${name} ${locate(place).file.at(-10)}`)).toEqual([
      'unreadable w',
      'duplicate-name w',
      'unknown-unit w',
      'unknown-name w',
      'duplicate-name b',
      'unknown-name b',
    ]);
  });

  it('is the same for the same plan, and the plan may be checked twice', () => {
    const text = smallPlan('place desk', 'feed camera -> nowhere', 'run stage <-> moon 3 m');
    const told = () =>
      check(text).findings.map(({ check: name, message, place, related, fixes }) => [
        name,
        message,
        locate(place),
        related.map((one) => [one.message, locate(one.place)]),
        fixes.map(({ title }) => title),
      ]);
    expect(told().length).toBeGreaterThan(2);
    expect(told()).toEqual(told());
  });
});

describe('acceptances', () => {
  const laptop = [
    'source laptop at stage sends 1080p60 as sdi_3g into box_s.in2 over rg6 75 m',
    'destination side at desk takes 1080p60 as sdi_3g from box_d.out2 over rg6 5 m',
    'feed laptop -> side',
  ];

  it('take a finding out of the list and keep it apart with its reason', () => {
    const text = smallPlan(...laptop, 'accept rate-differs on laptop "the mixer converts it"');
    const { findings, accepted } = check(text);
    expect(findings.map((one) => one.check)).toEqual(['link-near-limit']);
    expect(accepted.map(({ finding }) => finding.check)).toEqual(['rate-differs']);
    expect(accepted[0]!.acceptance.fact.reason).toBe('the mixer converts it');
    const { plan } = assembledOf(text);
    expect(acceptedFindingsOf(analyse(plan))).toHaveLength(1);
    expect(findingsOf(analyse(plan), [])).toHaveLength(1);
  });

  it('are for one check and one subject', () => {
    const names = (...accepts: string[]) =>
      check(smallPlan(...laptop, ...accepts)).findings.map((one) => one.check);
    expect(names('accept rate-differs on camera "no"')).toEqual([
      'link-near-limit',
      'rate-differs',
      'nothing-accepted',
    ]);
    expect(names('accept rate-differs on laptop "a"', 'accept link-near-limit on laptop "b"')).toEqual([]);
  });

  it('know a link by its ends, whichever way they are written, and a feed by its two', () => {
    const long = 'link box_d.out2 -> mixer.in1 over rg6 75 m';
    const mixer = ['kit mixer_2 {', '  inputs in[1..2] as sdi_3g', '}', 'node mixer : mixer_2 at desk'];
    const plan = (accept: string) =>
      smallPlan(...mixer, long, 'feed camera -> mixer.in1 within 10 ms', accept);
    const names = (accept: string) => check(plan(accept)).findings.map((one) => one.check);
    expect(names('accept link-near-limit on box_d.out2 -> mixer.in1 "a"')).toEqual(['delay-over']);
    expect(names('accept link-near-limit on mixer.in1 -> box_d.out2 "a"')).toEqual(['delay-over']);
    expect(names('accept delay-over on camera -> mixer.in1 "a"')).toEqual(['link-near-limit']);
  });

  it('of an idle check are not told as matching nothing while it is not asked', () => {
    const text = smallPlan('accept redundant-broken on camera -> screen "we have a spare"');
    const checks = [{ ...speaking('redundant-broken', 'idle'), find: () => {} }];
    expect(check(text, { checks, when: 'typing' }).findings).toEqual([]);
    expect(check(text, { checks }).findings.map((one) => one.check)).toEqual(['nothing-accepted']);
  });
});

describe('a check that fails', () => {
  it('is told as a fault of the tool, logged, and the others still speak', () => {
    const logged: string[] = [];
    const { findings } = check(smallPlan(), {
      checks: [failing, speaking('after')],
      onToolFault: (name, error) => logged.push(`${name}: ${(error as Error).message}`),
    });
    expect(findings.map((one) => one.check)).toEqual(['tool-fault', 'after']);
    expect(findings[0]!.message).toMatch(
      /`link-reach` has failed\. This is a fault of Feedplot, not of the plan/,
    );
    expect(findings[0]!.severity).toBe('error');
    expect(findings[0]!.subject).toBeNull();
    expect(logged).toEqual(['link-reach: broken']);
  });
});

describe('checks that cost', () => {
  it('are left out while typing', () => {
    const checks = [speaking('quick'), speaking('slow', 'idle')];
    const names = (options: FindingsOptions) => check(smallPlan(), options).findings.map((one) => one.check);
    expect(names({ checks, when: 'typing' })).toEqual(['quick']);
    expect(names({ checks })).toEqual(['quick', 'slow']);
  });
});

describe('a file that belongs to no plan', () => {
  it('has the findings of its own text only', () => {
    const file = readText(
      'file:///kit.feedplot',
      'kit box {\n  delay 1 km\n  weighs 1,5 kg\n}\nplace 4th\nrun a <-> b 4 m\n',
    );
    expect(statementFindings(file).map((one) => one.check)).toEqual([
      'unreadable',
      'wrong-dimension',
      'decimal-comma',
    ]);
  });
});

describe('what a plan can be', () => {
  it.each([
    ['nothing', '', ['plan-missing']],
    ['no text', 'plan "x"\u0000', ['unreadable']],
    ['one line of a million characters, which is not read', `plan "x" ${'y'.repeat(1e6)}`, ['unreadable']],
    ['a slip in the word itself', 'pln "x"\nplace a\n', ['unreadable']],
    ['a slip further down in a part', 'place a\nplace 4b\n', ['unreadable', 'plan-missing']],
    ['an unclosed brace', 'plan "x" {\nplace a\n', ['unreadable']],
  ])('%s', (_what, text, expected) => {
    expect(check(text).findings.map((one) => one.check)).toEqual(expected);
  });

  it('a thousand names alike', () => {
    const { findings } = check(`plan "x"\n${'place desk\n'.repeat(1000)}`);
    expect(findings).toHaveLength(999);
    expect(new Set(findings.map((one) => one.check))).toEqual(new Set(['duplicate-name']));
  });

  it('names that mean something to the machine are names', () => {
    const names = ['__proto__', 'constructor', 'toString'].map((name) => `place ${name}`);
    expect(check(`plan "x"\n${names.join('\n')}\nrun __proto__ <-> constructor 4 m\n`).findings).toEqual([]);
  });

  it('an absurdly long name is cut in messages', () => {
    const name = 'n'.repeat(5000);
    const [finding] = check(smallPlan(`feed camera -> ${name}`)).findings;
    expect(finding!.check).toBe('unknown-name');
    expect(finding!.message.length).toBeLessThan(200);
  });
});
