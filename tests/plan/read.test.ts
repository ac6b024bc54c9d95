import { describe, expect, it } from 'vitest';
import type { Fact } from '../../src/plan/facts.ts';
import { everyStatement } from '../support/every-statement.ts';
import { assembledOf, planOf } from '../support/plans.ts';

function only(text: string) {
  const { plan } = assembledOf(text);
  const [statement] = plan.statements.filter((s) => !plan.libraryFiles.has(s.source.file));
  return statement!;
}

function faults(text: string): string[] {
  return only(text).faults.map((fault) => `${fault.check}: ${fault.message}`);
}

describe('facts of a statement', () => {
  it.each(everyStatement)('are read without a fault: %s', (text) => {
    expect(only(text).faults).toEqual([]);
  });

  it('are in SI units', () => {
    expect(only('run desk <-> platform 100 ft "left wall" at 40 C').fact).toEqual<Fact>({
      kind: 'run',
      from: 'desk',
      to: 'platform',
      length_m: 30.48,
      route: 'left wall',
      temperature_c: 40,
    });
    expect(
      only(
        'cable c { weighs 65 g per m delay 4 ns per m loss 17.7 dB per 100 m at 742.5 MHz loss 3 dB per km at 850 nm }',
      ).fact,
    ).toMatchObject({
      weight_kg_per_m: 0.065,
      delay_s_per_m: 4e-9,
      losses: [
        { loss_db_per_m: 0.177, frequency_hz: 742.5e6, fromMemory: false },
        { loss_db_per_m: 0.003, wavelength_m: 850e-9, fromMemory: false },
      ],
    });
    expect(only('circuit c at p 16 A 230 V').fact).toMatchObject({ current_a: 16, voltage_v: 230 });
    expect(only('plan "x" { headroom 10 % lasts 8 h slack 10 ft rate 59.94 }').fact).toMatchObject({
      headroomShare: 0.1,
      lasts_s: 28800,
      slack_m: 3.048,
      rate: '59.94',
    });
  });

  it('keep frames apart from seconds', () => {
    expect(only('feed a -> b within 4 frames').fact).toMatchObject({ limit: { frames: 4 } });
    expect(only('feed a -> b within 80 ms').fact).toMatchObject({ limit: { seconds: 0.08 } });
    expect(only('measured a -> b 5.5 frames').fact).toMatchObject({ delay: { frames: 5.5 } });
    expect(only('measured hotel 38 Mb/s').fact).toMatchObject({ rate_bits_per_second: 38e6 });
    expect(only('measured trunk 61 m').fact).toMatchObject({ length_m: 61 });
  });

  it('are equal for two texts that mean the same', () => {
    const a = only('source s "Cam" at p sends 1080p50 as sdi_3g into b.in1 over rg6 12 m // first');
    const b = only(
      '/** words */\nsource s "Camera"\n  into b.in1 over rg6 12 m at p\n  as sdi_3g sends 1080p50',
    );
    expect(a.fact).toEqual(b.fact);
    expect([a.label, b.label, b.description]).toEqual(['Cam', 'Camera', 'words']);
  });

  it('tell subjects apart', () => {
    const subject = (text: string) =>
      (only(`accept link-reach on ${text} "why"`).fact as { subject: unknown }).subject;
    expect(subject('trunk')).toEqual({ kind: 'name', name: 'trunk' });
    expect(subject('a.out1 -> b.in1')).toEqual({
      kind: 'link',
      from: { node: 'a', port: 'out1' },
      to: { node: 'b', port: 'in1' },
    });
    expect(subject('bench -> mixer.in1')).toEqual({
      kind: 'feed',
      source: 'bench',
      target: { thing: 'mixer', port: 'in1' },
    });
    expect(subject('desk <-> annex')).toEqual({ kind: 'run', from: 'desk', to: 'annex' });
  });
});

describe('faults of a statement', () => {
  it.each([
    ['run a <-> b 60 W', ['wrong-dimension: A length, for example 12 m, is expected, not 60 W.']],
    [
      'link a.b <-> c.d over cat6a 60 W',
      ['wrong-dimension: A length, for example 12 m, is expected, not 60 W.'],
    ],
    [
      'run a <-> b 58,5 m',
      ['decimal-comma: Write 58.5 m with a decimal point: a comma separates items of a list.'],
    ],
    ['run a <-> b 58', ['unit-missing: 58 of what? A length, for example 12 m, is expected.']],
    ['uplink u at p 40 Mbps', ['unknown-unit: Write `Mb/s`, not `Mbps`.']],
    ['place a “Desk”', ['curly-quotes: Text stands between straight quotes: "like this".']],
    ['place a "Desk', ['open-string: This text is not closed: a string ends on its own line, with a ".']],
    [
      'plan "x" { date 2027-02-30 }',
      ['bad-date: There is no day 2027-02-30; a date is year-month-day, such as 2027-05-14.'],
    ],
    [
      'plan "x" { date 2027-3-2 }',
      ['bad-date: Write the date as 2027-03-02: year, month and day with all their digits.'],
    ],
    [
      'node a : k : l at p',
      ['written-twice: The kit is written 2 times; the first is used. Delete the others.'],
    ],
    [
      'circuit c at p 16 A 0 V',
      ['bad-number: A circuit of 0 V feeds nothing: write what is printed on the breaker.'],
    ],
    ['plan "x" { packing tight }', ['unknown-word: `packing` is `equal` or `block`, not `tight`.']],
  ])('%s', (text, expected) => {
    expect(faults(text)).toEqual(expected);
  });

  it('stand where they were made', () => {
    const statement = only('run a <-> b\n  58,5 m');
    expect(statement.source.range(statement.faults[0]!.part)).toEqual({
      line: 1,
      column: 2,
      endLine: 1,
      endColumn: 8,
    });
    const kit = only('kit k { outputs out1 as x\n  inputs in[1..2] as y }');
    expect(kit.source.range('groups/1.interfaces')).toEqual({
      line: 1,
      column: 21,
      endLine: 1,
      endColumn: 22,
    });
  });

  it('leave the rest of the statement standing', () => {
    expect(only('source s at p sends 1081i50 as sdi_3g into b.in1 over rg6 12 q').fact).toMatchObject({
      name: 's',
      interface: 'sdi_3g',
      into: { node: 'b', port: 'in1' },
    });
  });
});

describe('plans of several files', () => {
  it('take each file once, in the order of the imports, the library last', () => {
    const plan = planOf({
      'show.feedplot': 'plan "x"\nimport "kit/a.feedplot"\nimport "b.feedplot"',
      'kit/a.feedplot': 'import "../b.feedplot"\nkit a { }',
      'b.feedplot': 'import "show2.feedplot"\nimport "kit/a.feedplot"\nkit b { }',
    });
    const own = plan.files
      .filter((file) => !plan.libraryFiles.has(file))
      .map((file) => file.replace('file:///show/', ''));
    expect(own).toEqual(['show.feedplot', 'kit/a.feedplot', 'b.feedplot']);
    expect(plan.files.at(-1)).toContain('/library/');
    expect(plan.missingFiles.map((m) => [m.statement.fact.path, m.reason])).toEqual([
      ['show2.feedplot', 'not found'],
    ]);
  });

  it('refuse another plan, an absolute path and an address', () => {
    const plan = planOf({
      'show.feedplot':
        'plan "x"\nimport "other.feedplot"\nimport "/etc/passwd"\nimport "https://example.org/x.feedplot"\nimport ""',
      'other.feedplot': 'plan "y"',
    });
    expect(plan.missingFiles.map((m) => m.reason)).toEqual(['has a plan', 'outside', 'outside', 'outside']);
  });

  it('find files with spaces and letters beyond ASCII', () => {
    const plan = planOf({
      'show.feedplot': 'plan "x"\nimport "große halle.feedplot"',
      'große halle.feedplot': 'place a',
    });
    expect(plan.missingFiles).toEqual([]);
    expect(plan.statements.some((s) => s.fact.kind === 'place')).toBe(true);
  });
});

describe('text that is no plan', () => {
  it.each([
    ['binary', 'a\u0000b', /no text/],
    ['too long', 'x'.repeat(4_000_001), /4\.0 million characters/],
  ])('is told and not read: %s', (_what, text, message) => {
    const { plan, unreadables } = assembledOf(text);
    expect(unreadables).toHaveLength(1);
    expect(unreadables[0]!.message).toMatch(message);
    expect(plan.statements.every((s) => plan.libraryFiles.has(s.source.file))).toBe(true);
  });
});

describe('a statement without its name', () => {
  it.each([
    'place',
    'kit { }',
    'node : box at desk',
    'source sends 1080p50',
    'segment without a',
    'circuit at desk',
  ])('`%s` says nothing, so it is no fact', (text) => {
    const plan = planOf(`plan "x"\n${text}\nplace stage`);
    const own = plan.statements.filter((s) => !plan.libraryFiles.has(s.source.file));
    expect(own.map(({ fact }) => fact.kind)).toEqual(['plan', 'place']);
  });
});
