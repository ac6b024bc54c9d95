import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addressingOf } from '../../src/analysis/addresses.ts';
import { analyse } from '../../src/analysis/analyse.ts';
import { cableChoices } from '../../src/analysis/cable-choices.ts';
import { cableStockOf } from '../../src/analysis/cable-pieces.ts';
import { packingOf } from '../../src/analysis/case-weights.ts';
import { poweringOf } from '../../src/analysis/circuit-loads.ts';
import { costOf } from '../../src/analysis/costs.ts';
import { failuresOf } from '../../src/analysis/failures.ts';
import { firmwareOf } from '../../src/analysis/firmware.ts';
import { howFar } from '../../src/analysis/how-far.ts';
import type { Analysis } from '../../src/analysis/model.ts';
import { recordingsOf } from '../../src/analysis/recordings.ts';
import { soundMatchesOf } from '../../src/analysis/sound-matches.ts';
import { uplinkLoadsOf } from '../../src/analysis/uplink-loads.ts';
import { heaviestLink } from '../../src/analysis/worst.ts';
import { everyStatement } from '../support/every-statement.ts';
import { planOf } from '../support/plans.ts';
import { finals } from './plans.ts';

const lines = [...everyStatement, ...finals.split(/\n(?=[a-z])/)].filter((line) => line.trim() !== '');
const names = [
  'box_d',
  'box_p',
  'mixer',
  'trunk',
  'program',
  'judges',
  'cat6a',
  'desk',
  'in1',
  'out1',
  'net1',
  'results',
  '__proto__',
  'x',
];
const numbers = ['0', '1', '1000000', '99999999999999999999', '0.000001', '58,5'];

/** One statement with words and numbers of it exchanged, or cut off. */
const mutated = fc
  .tuple(
    fc.constantFrom(...lines),
    fc.nat(200),
    fc.constantFrom(...names),
    fc.constantFrom(...numbers),
    fc.nat(5),
  )
  .map(([line, at, name, number, how]) => {
    const words = line.split(/\b/);
    const index = at % words.length;
    if (how === 0) return line.slice(0, at);
    if (how === 1) return words.filter((_, i) => i !== index).join('');
    const word = words[index]!;
    if (/^\d/.test(word)) words[index] = number;
    else if (/^[a-z_]+$/.test(word)) words[index] = name;
    return words.join('');
  });

/** Asks for everything that is worked out later, too. */
function askAll(analysis: Analysis): void {
  for (const delivery of analysis.deliveries) {
    if (delivery.noRoute) howFar(analysis, delivery);
    expect(delivery.delay.parts.every(({ time_s }) => Number.isFinite(time_s))).toBe(true);
  }
  for (const link of analysis.links.slice(0, 50)) cableChoices(analysis, link);
  failuresOf(analysis);
  heaviestLink(analysis);
  poweringOf(analysis);
  uplinkLoadsOf(analysis);
  recordingsOf(analysis);
  soundMatchesOf(analysis);
  addressingOf(analysis);
  firmwareOf(analysis);
  const stock = cableStockOf(analysis);
  packingOf(analysis, stock);
  expect(Number.isFinite(costOf(analysis, stock).total)).toBe(true);
}

test('no plan, however broken, makes it throw', () => {
  fc.assert(
    fc.property(fc.array(mutated, { minLength: 1, maxLength: 40 }), (statements) => {
      const analysis = analyse(planOf(statements.join('\n')));
      askAll(analysis);
      for (const { base, differing, worst } of analysis.traffic) {
        for (const load of [base, ...differing]) {
          expect(
            Number.isFinite(load.forward.load_bits_per_second + load.backward.load_bits_per_second),
          ).toBe(true);
        }
        expect(worst.load_bits_per_second).toBeGreaterThanOrEqual(0);
      }
      expect(analysis.reaches).toHaveLength(analysis.chains.length);
    }),
    { numRuns: 150 },
  );
});

test('the finals plan with any of its lines missing or broken', () => {
  const whole = finals.split(/\n(?=[a-z])/);
  for (let i = 0; i < whole.length; i++) {
    askAll(analyse(planOf(whole.filter((_, k) => k !== i).join('\n'))));
    askAll(
      analyse(planOf(whole.map((line, k) => (k === i ? line.slice(0, line.length / 2) : line)).join('\n'))),
    );
  }
});

test('an empty plan', () => {
  const analysis = analyse(planOf(''));
  expect(analysis.situations).toHaveLength(1);
  expect(analysis.links).toEqual([]);
});

test('statements of one kind a thousand times', () => {
  for (const line of everyStatement) {
    askAll(analyse(planOf(Array.from({ length: 1000 }, () => line).join('\n'))));
  }
}, 120_000);
