/** Values that nobody can mean are told with what is allowed, and nothing is worked out with them. */
import { describe, expect, test } from 'vitest';
import { analyse } from '../../src/analysis/analyse.ts';
import { findingTexts } from '../support/fixtures.ts';
import { planOf } from '../support/plans.ts';

const plan = (line: string) => `plan "Nonsense" { slack 2 m }
kit box { network net[1..4] as ethernet_10g forwards weighs 2 kg }
place a
place b
node p : box at a
node q : box at b
${line}
`;
const told = (line: string) => findingTexts(plan(line)).join('\n');

describe('nonsense is told, not computed', () => {
  test.each([
    ['circuit c at a 0 A 230 V', /bad-number: A circuit of 0 A/],
    ['circuit c at a 16 A 0 V', /bad-number: A circuit of 0 V/],
    ['circuit c at a 0.0000001 A 230 V', /bad-number: A circuit of 0.0000001 A feeds nothing/],
    ['circuit c at a 16 A 0.5 V', /bad-number: A circuit of 0.5 V feeds nothing/],
    ['circuit c at a 16 A 230000 V', /bad-number: .*230000 V is refused; allowed: 0 V to 1000 V/],
    ['circuit c at a -16 A 230 V', /less than 0/],
    ['kit z { costs -5 }', /less than 0/],
    ['kit z { weighs -5 kg }', /less than 0/],
    ['kit z { weighs 50000 kg }', /bad-number: .*50000 kg is refused/],
    ['kit z { delay 1000000 frames }', /bad-number: .*1000000 frames is refused/],
    ['kit z { poe class 9 }', /bad-number: .*no class 9/],
    ['kit z { network net as ethernet_10g carries compressed at 0 Mb/s }', /bad-number: A picture of 0 b\/s/],
    ['kit z { network net as ethernet_10g carries compressed 1:8 }', /bad-number: A ratio/],
    ['case c holds p weighs 300 kg', /case-heavy: c weighs 302 kg and has no limit/],
    ['case c holds p weighs 300 kg up to 400 kg', /case-heavy: c weighs 302 kg, more than the 200 kg/],
    ['stock cat6a 1 of 0 m', /bad-number: A piece of 0 m/],
    ['stock cat6a 1.5 of 10 m', /bad-number: A count of pieces is a whole number/],
    ['stock cat6a 1 of 10 m costs -61', /less than 0/],
    ['uplink u at a 0 Mb/s', /bad-number: An upload of 0/],
    ['destination d streams 0 Mb/s', /bad-number: A rate of 0/],
    ['destination d records 0 Mb/s', /bad-number: A rate of 0/],
    ['destination d sound from 5 km', /bad-number: Nobody hears/],
    ['run a <-> b 50000 km', /bad-number: .*50000 km is refused/],
    ['run a <-> b 4 m at 900 C', /bad-number: .*900 C is refused/],
    ['source s sends 1081i50', /bad-format: .*1081 rows cannot be split/],
    ['source s sends 1080p0', /bad-format: .*frame rate 0 is refused/],
    ['source s sends 1080p10000', /bad-format: .*frame rate 10000 is refused/],
    ['source s sends 1920x1081p50 4:2:0', /bad-format: .*1081 rows must both be even/],
  ])('%s', (line, message) => {
    expect(told(line)).toMatch(message);
  });

  test('what is less than 0 counts as not written, but for a temperature', () => {
    const { uplinks, runs, kits } = analyse(
      planOf(plan('uplink u at a -5 Mb/s\nrun a <-> b - 4 m at -5 C\nkit z { draws -18 W }')),
    );
    expect(uplinks.get('u')!.statement.fact).not.toHaveProperty('rate_bits_per_second');
    expect(kits.get('z')!.statement.fact).not.toHaveProperty('draws_w');
    expect(runs.map(({ statement: { fact } }) => [fact.length_m, fact.temperature_c])).toEqual([
      [undefined, -5],
    ]);
    expect(told('uplink u at a -5 Mb/s')).toContain(
      'bad-number: -5 Mb/s is less than 0: write 5 Mb/s, without `-`.',
    );
    expect(told('run a <-> b 4 m at -5 C')).not.toContain('less than 0');
  });

  test('prefixes that are none, or too small', () => {
    const prefix = (setting: string) =>
      findingTexts(plan('').replace('{ slack 2 m }', `{ ${setting} }`)).join('\n');
    expect(prefix('subnet 300.0.0.0/8')).toContain('bad-number');
    expect(prefix('subnet 10.0.0.0/33')).toContain('bad-number');
    expect(prefix('subnet 10.0.0.0/32')).toMatch(/prefix-too-small: .*room for 1 node, and 1 node gets/);
    expect(prefix('multicast 10.0.0.0/8')).toMatch(/prefix-wrong: .*no multicast prefix/);
  });

  test('a delay that was measured on a way that is not there', () => {
    const text = `${plan('source s at a sends 1080p50\ndestination d at b\nfeed s -> d\nmeasured s -> d 40 ms')}`;
    expect(findingTexts(text).join('\n')).toMatch(/nothing-measured: .*s -> d/);
  });
});
