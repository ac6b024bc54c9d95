import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  formatBytes,
  formatCurrent,
  formatFrames,
  formatFrequency,
  formatLength,
  formatLoss,
  formatNumber,
  formatPower,
  formatRate,
  formatResistance,
  formatShare,
  formatTemperature,
  formatTime,
  formatVoltage,
  formatWeight,
} from '../../src/physics/display.ts';

describe('figures read the same everywhere', () => {
  test.each([
    [() => formatRate(2_663_985_614), '2.664 Gb/s'],
    [() => formatRate(10e9), '10 Gb/s'],
    [() => formatRate(11.88e9), '11.88 Gb/s'],
    [() => formatRate(100e9), '100 Gb/s'],
    [() => formatRate(19_680_000), '19.68 Mb/s'],
    [() => formatRate(270e6), '270 Mb/s'],
    [() => formatRate(999_960_000), '1 Gb/s'],
    [() => formatRate(999_940_000), '999.9 Mb/s'],
    [() => formatRate(100_000), '100 kb/s'],
    [() => formatRate(12), '12 b/s'],
    [() => formatRate(0), '0 b/s'],
    [() => formatRate(-2_000_000), '-2 Mb/s'],
    [() => formatFrequency(742.5e6), '742.5 MHz'],
    [() => formatFrequency(1485e6), '1.485 GHz'],
    [() => formatFrequency(312_787_000), '312.787 MHz'],
    [() => formatFrequency(48_000), '48 kHz'],
    [() => formatFrequency(50), '50 Hz'],
    [() => formatLength(58.5), '58.5 m'],
    [() => formatLength(58), '58 m'],
    [() => formatLength(0.05), '0.05 m'],
    [() => formatLength(10_000), '10 km'],
    [() => formatLength(12_250), '12.25 km'],
    [() => formatLength(9999), '9999 m'],
    [() => formatLength(0), '0 m'],
    [() => formatLength(58, 'feet'), '190 ft'],
    [() => formatLength(1, 'feet'), '3.3 ft'],
    [() => formatLength(3.048, 'feet'), '10 ft'],
    [() => formatTime(0.0918), '91.8 ms'],
    [() => formatTime(1.2304e-6), '1.2 us'],
    [() => formatTime(489.7e-9), '489.7 ns'],
    [() => formatTime(4e-9), '4 ns'],
    [() => formatTime(0.001), '1 ms'],
    [() => formatTime(125), '125 s'],
    [() => formatTime(0), '0 ms'],
    [() => formatFrames(5.5), '5.5 frames'],
    [() => formatFrames(1), '1 frame'],
    [() => formatFrames(0.999), '1 frame'],
    [() => formatFrames(0), '0 frames'],
    [() => formatShare(0.537), '53.7 %'],
    [() => formatShare(0.8), '80 %'],
    [() => formatShare(1.065_589), '106.6 %'],
    [() => formatShare(1), '100 %'],
    [() => formatPower(27.37), '27.37 W'],
    // The classes as IEEE 802.3 gives them (second-hand): a half is rounded away from zero, as on paper.
    [() => formatPower(3.84), '3.84 W'],
    [() => formatPower(12.95), '12.95 W'],
    [() => formatPower(25.5), '25.5 W'],
    [() => formatPower(71.3), '71.3 W'],
    [() => formatPower(155.04), '155 W'],
    [() => formatWeight(12.95), '13 kg'],
    [() => formatLoss(1.005), '1.01 dB'],
    [() => formatTemperature(-2.25), '-2.3 °C'],
    [() => formatPower(2944), '2944 W'],
    [() => formatPower(12_400), '12.4 kW'],
    [() => formatPower(-0.001), '-0.001 W'],
    [() => formatWeight(14.23), '14.2 kg'],
    [() => formatWeight(0.065), '0.065 kg'],
    [() => formatCurrent(12.8), '12.8 A'],
    [() => formatVoltage(46.58), '46.6 V'],
    [() => formatResistance(6.25), '6.25 ohm'],
    [() => formatLoss(3.45), '3.45 dB'],
    [() => formatTemperature(40), '40 °C'],
    [() => formatTemperature(-5.5), '-5.5 °C'],
    [() => formatBytes(180e9), '180 GB'],
    [() => formatBytes(1.5e12), '1.5 TB'],
    [() => formatBytes(2_500_000), '2.5 MB'],
    [() => formatBytes(512), '0.512 kB'],
    [() => formatNumber(1.03343), '1.0334'],
    [() => formatNumber(0), '0'],
    [() => formatNumber(-0.00000001, 2), '-0.00000001'],
  ])('%#', (format, expected) => {
    expect(format()).toBe(expected);
  });
});

describe('figures that are compared never look equal when they are not', () => {
  test.each([
    [() => formatRate(9_999_880_000, 10e9), '9.9999 Gb/s'],
    [() => formatRate(10_000_000_001, 10e9), '10.000000001 Gb/s'],
    [() => formatRate(10e9, 10_000_000_001), '10 Gb/s'],
    [() => formatRate(10e9, 10e9), '10 Gb/s'],
    [() => formatLength(100.04, 'metric', 100), '100.04 m'],
    [() => formatLength(100, 'metric', 100.04), '100 m'],
    [() => formatLength(30.49, 'feet', 30.48), '100.03 ft'],
    [() => formatShare(0.999_99), '99.999 %'],
    [() => formatShare(1.000_01), '100.001 %'],
    [() => formatLoss(2.601, 2.6), '2.601 dB'],
    [() => formatTime(0.100_14, 0.100_1), '100.14 ms'],
    [() => formatPower(1920.01, 1920), '1920.01 W'],
    [() => formatWeight(23.04, 23), '23.04 kg'],
  ])('%#', (format, expected) => {
    expect(format()).toBe(expected);
  });

  test('for any two rates, and never for equal ones', () => {
    const rates = fc.integer({ min: 0, max: 100_000_000_000 });
    fc.assert(
      fc.property(rates, fc.integer({ min: 1, max: 1000 }), (rate, more) => {
        expect(formatRate(rate, rate + more)).not.toBe(formatRate(rate + more, rate));
        expect(formatRate(rate, rate)).toBe(formatRate(rate));
      }),
    );
  });
});
