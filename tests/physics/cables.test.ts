import { describe, expect, test } from 'vitest';
import { coaxLoss_db, coaxReach_m, fitCoaxLoss, halfClock_hz } from '../../src/physics/coax.ts';
import { delayPart_s, exceedsDelay, PAIR_PROPAGATION, totalDelay_s } from '../../src/physics/delay.ts';
import { fibreLoss_db, judgeFibre } from '../../src/physics/fibre.ts';
import {
  delivered,
  loopResistance_ohm,
  powerClassOf,
  sourced,
} from '../../src/physics/power-over-ethernet.ts';
import { frameRateOf } from '../../src/physics/rate.ts';
import { joinedShare, judgeLength } from '../../src/physics/reach.ts';
import { judgeLipSync } from '../../src/physics/sound.ts';
import { pairReach_m, strandedFactor, temperatureFactor } from '../../src/physics/twisted-pair.ts';

describe('coax', () => {
  test('one stated loss is taken for skin effect', () => {
    const cable = fitCoaxLoss([{ frequency_hz: 1e9, loss_db_per_m: 0.2 }]);
    expect(cable).toEqual({ skin_db: 20, dielectric_db: 0, stated: 1 });
    expect(coaxLoss_db(cable, 4e9, 100)).toBe(40);
  });

  test('the same loss stated twice is one', () => {
    const point = { frequency_hz: 1e9, loss_db_per_m: 0.2 };
    expect(fitCoaxLoss([point, point]).skin_db).toBeCloseTo(20, 12);
    expect(fitCoaxLoss([point, point]).dielectric_db).toBe(0);
  });

  test('a part that would be negative is left out', () => {
    const flat = fitCoaxLoss([
      { frequency_hz: 1e9, loss_db_per_m: 0.2 },
      { frequency_hz: 4e9, loss_db_per_m: 0.25 },
    ]);
    expect(flat.dielectric_db).toBe(0);
    // Least squares through (1, 20) and (2, 25) in the root: (20 x 1 + 25 x 2) / (1 + 4) = 14.
    expect(flat.skin_db).toBeCloseTo(14, 12);
    const steep = fitCoaxLoss([
      { frequency_hz: 1e9, loss_db_per_m: 0.1 },
      { frequency_hz: 4e9, loss_db_per_m: 0.8 },
    ]);
    expect(steep.skin_db).toBe(0);
    // Through (1, 10) and (4, 80): (10 x 1 + 80 x 4) / (1 + 16) = 330 / 17.
    expect(steep.dielectric_db).toBeCloseTo(330 / 17, 12);
  });

  test('many stated losses are fitted by least squares', () => {
    // Three points of 10 sqrt(f) + 2 f, the middle one 1 dB too high: the normal equations by hand.
    const cable = fitCoaxLoss([
      { frequency_hz: 1e9, loss_db_per_m: 0.12 },
      { frequency_hz: 4e9, loss_db_per_m: 0.29 },
      { frequency_hz: 9e9, loss_db_per_m: 0.48 },
    ]);
    // Sums: f 14, f^1.5 36, f^2 98; y sqrt f 12 + 58 + 144 = 214; y f 12 + 116 + 432 = 560; determinant 1372 - 1296.
    expect(cable.skin_db).toBeCloseTo((214 * 98 - 560 * 36) / 76, 9);
    expect(cable.dielectric_db).toBeCloseTo((14 * 560 - 36 * 214) / 76, 9);
    expect(cable.stated).toBe(3);
  });

  test('only slower interfaces limit a faster one', () => {
    const cable = { skin_db: 20, dielectric_db: 0, stated: 1 };
    const slow = { budget_db: 20, frequency_hz: 1e9 };
    const fast = { budget_db: 60, frequency_hz: 4e9 };
    expect(coaxReach_m(cable, slow, [fast])).toBe(100);
    expect(
      coaxReach_m(cable, slow, [
        { budget_db: 20, frequency_hz: 4e9 },
        { budget_db: 10, frequency_hz: 1e9 },
      ]),
    ).toBe(100);
    expect(coaxReach_m(cable, fast)).toBe(150);
    expect(coaxReach_m(cable, fast, [slow])).toBe(100);
    expect(coaxReach_m(cable, { budget_db: 20, frequency_hz: 4e9 }, [slow])).toBe(50);
    expect(halfClock_hz(2.97e9)).toBe(1.485e9);
  });
});

describe('lengths', () => {
  test('are judged against limits that still fit', () => {
    expect(judgeLength(100, { most_m: 100 })).toBe('fits');
    expect(judgeLength(100.01, { most_m: 100 })).toBe('beyond');
    expect(judgeLength(37, { most_m: 55, good_m: 37 })).toBe('fits');
    expect(judgeLength(37.1, { most_m: 55, good_m: 37 })).toBe('doubtful');
    expect(judgeLength(55.1, { most_m: 55, good_m: 37 })).toBe('beyond');
    expect(judgeLength(90, { most_m: 100, near_share: 0.9 })).toBe('fits');
    expect(judgeLength(90.1, { most_m: 100, near_share: 0.9 })).toBe('near limit');
    expect(judgeLength(0, { most_m: 0 })).toBe('fits');
  });

  test('joined cables share one reach', () => {
    expect(joinedShare([{ length_m: 39, reach_m: 78 }])).toBe(0.5);
    expect(
      joinedShare([
        { length_m: 39, reach_m: 78 },
        { length_m: 30, reach_m: 60 },
      ]),
    ).toBe(1);
    expect(joinedShare([])).toBe(0);
  });
});

describe('twisted pair', () => {
  test('warmth counts from 20 °C, faster above 40, half as much when screened', () => {
    expect(temperatureFactor(20, false)).toBe(1);
    expect(temperatureFactor(-10, false)).toBe(1);
    expect(temperatureFactor(30, false)).toBeCloseTo(1.04, 12);
    expect(temperatureFactor(50, false)).toBeCloseTo(1.14, 12);
    expect(temperatureFactor(50, true)).toBeCloseTo(1.06, 12);
    expect(temperatureFactor(60, true)).toBeCloseTo(1.08, 12);
  });

  test('stranded cords of 26 AWG take more', () => {
    expect(strandedFactor(0)).toBe(1);
    expect(pairReach_m(100, { screened: true, stranded_share: 0.5 })).toBeCloseTo((90 + 10 * 1.5) / 1.5, 9);
    expect(pairReach_m(55, { screened: false, temperature_c: 40 })).toBeCloseTo(55 / 1.08, 9);
  });
});

describe('fibre', () => {
  test('two connections and no splice are usual', () => {
    expect(fibreLoss_db({ length_m: 1000, loss_db_per_m: 0.0004 })).toBeCloseTo(0.4 + 1.5, 12);
    expect(
      fibreLoss_db({ length_m: 0, loss_db_per_m: 0, connections: 1, splices: 2, splice_db: 0.1 }),
    ).toBeCloseTo(0.95, 12);
  });

  test('the worse decides', () => {
    const limits = { reach_m: 300, loss_db: 2.6 };
    const short = judgeFibre({ length_m: 300, loss_db_per_m: 0.003 }, limits);
    expect(short).toMatchObject({ fits: true, decided_by: 'reach', allowed_m: 300 });
    expect(short.margin_db).toBeCloseTo(0.2, 12);
    expect(judgeFibre({ length_m: 301, loss_db_per_m: 0.003 }, limits).fits).toBe(false);
    const many = judgeFibre({ length_m: 200, loss_db_per_m: 0.003, connections: 3 }, limits);
    expect(many).toMatchObject({ fits: false, decided_by: 'loss' });
    expect(many.allowed_m).toBeCloseTo(0.35 / 0.003, 9);
    expect(judgeFibre({ length_m: 10, loss_db_per_m: 0.003, connections: 4 }, limits)).toMatchObject({
      fits: false,
      allowed_m: 0,
    });
  });

  test('a run exactly at its budget fits', () => {
    expect(
      judgeFibre({ length_m: 100, loss_db_per_m: 0.003, connections: 2 }, { reach_m: 300, loss_db: 1.8 })
        .fits,
    ).toBe(true);
    expect(
      judgeFibre({ length_m: 100.1, loss_db_per_m: 0.003, connections: 2 }, { reach_m: 300, loss_db: 1.8 })
        .fits,
    ).toBe(false);
  });

  test('without a loss limit the reach decides, without loss the connections do', () => {
    expect(judgeFibre({ length_m: 50, loss_db_per_m: 0.003 }, { reach_m: 100 })).toMatchObject({
      fits: true,
      margin_db: undefined,
      allowed_m: 100,
      decided_by: 'reach',
    });
    expect(judgeFibre({ length_m: 100, loss_db_per_m: 0.003 }, { reach_m: 100 }).fits).toBe(true);
    expect(judgeFibre({ length_m: 101, loss_db_per_m: 0.003 }, { reach_m: 100 }).fits).toBe(false);
    expect(judgeFibre({ length_m: 50, loss_db_per_m: 0 }, { reach_m: 100, loss_db: 1.5 })).toMatchObject({
      allowed_m: 100,
      fits: true,
    });
    expect(judgeFibre({ length_m: 50, loss_db_per_m: 0.005 }, { reach_m: 100, loss_db: 2 }).decided_by).toBe(
      'reach',
    );
    expect(judgeFibre({ length_m: 50, loss_db_per_m: 0 }, { reach_m: 100, loss_db: 2 }).allowed_m).toBe(100);
    expect(judgeFibre({ length_m: 50, loss_db_per_m: 0 }, { reach_m: 100, loss_db: 1 })).toMatchObject({
      allowed_m: 0,
      fits: false,
    });
  });
});

describe('power over the cable', () => {
  test('the channel scales with length, a thin cord counts when it has more', () => {
    expect(loopResistance_ohm(powerClassOf(4), 50)).toBe(6.25);
    expect(loopResistance_ohm(powerClassOf(4), 50, 0.0938)).toBe(6.25);
    expect(loopResistance_ohm(powerClassOf(4), 50, 0.2)).toBe(10);
    expect(loopResistance_ohm(powerClassOf(6), 50, 0.2)).toBe(5);
  });

  test('half of the power arrives at most, and no cable loses nothing', () => {
    expect(sourced(50, 50, 12.5).supply_w).toBe(100);
    expect(() => delivered(200, 50, 12.5)).toThrow('at most 50 W arrive');
    expect(sourced(25.5, 50, 0)).toEqual({ device_w: 25.5, device_v: 50, current_a: 0.51, supply_w: 25.5 });
  });
});

describe('delay', () => {
  test('frames and times add up', () => {
    const rate = frameRateOf('59.94');
    expect(delayPart_s({ name: 'a', frames: 1, rate })).toBe(1001 / 60000);
    expect(
      totalDelay_s([
        { name: 'a', frames: 2, rate },
        { name: 'b', time_s: 0.01 },
      ]),
    ).toBeCloseTo(0.04336667, 7);
    expect(totalDelay_s([])).toBe(0);
  });

  test('a limit is met unless it is exceeded by more than 0.1 ms', () => {
    expect(exceedsDelay(0.1, 0.1)).toBe(false);
    expect(exceedsDelay(0.10009, 0.1)).toBe(false);
    expect(exceedsDelay(0.10011, 0.1)).toBe(true);
  });

  test('twisted pair takes 5.38 ns a metre', () => {
    expect(PAIR_PROPAGATION.delay_s_per_m * 1e9).toBeCloseTo(5.376, 9);
  });
});

describe('sound against picture', () => {
  test('early sound is told how long to wait, late sound cannot be helped', () => {
    expect(judgeLipSync(0.1, 0.02).offset_s).toBeCloseTo(-0.08, 12);
    expect(judgeLipSync(0.1, 0.02).delay_to_set_s).toBeCloseTo(0.08, 12);
    expect(judgeLipSync(0.02, 0.1)).toMatchObject({ delay_to_set_s: 0 });
    const there = judgeLipSync(0.1, 0.02 + judgeLipSync(0.1, 0.02).delay_to_set_s);
    expect(there.offset_s).toBeCloseTo(0, 12);
    expect(there.judgement).toBe('good');
  });
});
