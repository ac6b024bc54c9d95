import { expect, test } from 'vitest';
import { analysisOf, deliveryOf, finals, flowsOn, linkOf, loadOn, wayOf } from './plans.ts';

const analysis = analysisOf(finals);

test('nothing of it is unknown, doubled or unused', () => {
  expect(analysis.names).toEqual({ duplicates: [], unknown: [], unknownPorts: [] });
  expect(analysis.unmatched).toEqual([]);
  expect(analysis.unfedDestinations).toEqual([]);
  expect(analysis.unusedSources).toEqual([]);
  expect(analysis.cycles).toEqual([]);
});

// One 1080p59.94 picture, 4:2:2 10 bit, four packets of 1200 octets a row: 4320 x (1200 + 86) x 8 x 60000/1001
// = 2,663,985,614.4 b/s; 16 channels in two flows of 8: 2 x (1152 + 78) x 8 x 1000 = 19,680,000; ancillary 100,000.
// Sum 2,683,765,614.4. RFC 4175, RFC 3190 and RFC 2544 (published) through numbers W1.5 and W2.1.
test('the trunk carries program and clean to the platform, the bench camera back', () => {
  expect(flowsOn(analysis, 'trunk')).toBe('program clean | bench');
  expect(loadOn(analysis, 'trunk')).toEqual({ forward: 5367531229, backward: 2683765614 });
  const { worst, judgement } = analysis.traffic[linkOf(analysis, 'trunk').index]!;
  expect(worst.share).toBeCloseTo(0.5367531, 6);
  expect(worst).toMatchObject({ segment: undefined, direction: 'forward' });
  expect(judgement).toBe('fits');
});

test('in results the clean picture takes the place of program and the annex is black', () => {
  expect(flowsOn(analysis, 'trunk', 'results')).toBe('clean | bench');
  expect(loadOn(analysis, 'trunk', 'results')).toEqual({ forward: 2683765614, backward: 2683765614 });
  expect(flowsOn(analysis, 'box_p.out1>judges', 'results')).toBe('clean | ');
  expect(flowsOn(analysis, 'box_p.out2>overflow', 'results')).toBe(' | ');
  // What does not change there is not told again.
  expect(analysis.traffic[linkOf(analysis, 'box_d.out1>mixer.in2').index]!.differing).toEqual([]);
});

test('the standby carries nothing', () => {
  expect(flowsOn(analysis, 'trunk_b')).toBe(' | ');
});

test('each picture takes the way that a practitioner would name', () => {
  expect(wayOf(analysis, 'program -> judges')).toBe(
    'mixer.out1 box_d.in1 box_d.net1 box_p.net1 box_p.out1 judges',
  );
  expect(wayOf(analysis, 'program -> capture')).toBe('mixer.out1 box_d.in1 box_d.loop1 capture');
  expect(wayOf(analysis, 'scores -> mixer.in1')).toBe('scores mixer.in1');
  expect(wayOf(analysis, 'clean -> judges', 'results')).toBe(
    'mixer.out2 box_d.in2 box_d.net1 box_p.net1 box_p.out1 judges',
  );
});

// 58 m + 2 x 3 m slack = 64 m, measured 61 m; desk-annex-platform 56 + 24 + 6 = 86 m; platform-annex 24 + 6 = 30 m.
test('lengths come from runs, slack and what was measured', () => {
  expect(linkOf(analysis, 'trunk').length).toMatchObject({ length_m: 61, from: 'measured', planned_m: 64 });
  expect(linkOf(analysis, 'trunk_b').length).toMatchObject({ length_m: 86, from: 'runs', planned_m: 86 });
  expect(linkOf(analysis, 'box_p.out2>overflow').length).toMatchObject({ length_m: 30, from: 'runs' });
  expect(linkOf(analysis, 'box_p.out1>judges').length).toMatchObject({ length_m: 8, from: 'stated' });
});

// One frame at 59.94 is 1001/60 ms = 16.6833 ms. bench to the mixer: two boxes of a frame = 33.367 ms, and cables:
// 12 m and 1 m of coax at 4 ns/m, 61 m of pair at 5.38 ns/m = 0.38 us. The limit of 3 frames is 50.05 ms.
test('the bench camera is at the mixer after two frames', () => {
  const { delay } = deliveryOf(analysis, 'bench -> mixer.in2');
  expect(delay.delay_s).toBeCloseTo((2 * 1.001) / 60 + 13 * 4e-9 + 61 * 5.38e-9, 9);
  expect(delay).toMatchObject({ over: false, limitOn: 'feed', from: 'computed' });
  expect(delay.limit_s).toBeCloseTo(0.05005, 9);
});

// Measured 5.5 frames of the source: 5.5 x 16.6833 = 91.758 ms, against 6 frames = 100.1 ms of the destination.
// Computed: bench 2 frames + mixer 1 frame + two boxes 2 frames = 5 frames = 83.417 ms and the cables.
test('a measured delay replaces the sum, which is kept beside it', () => {
  const { delay } = deliveryOf(analysis, 'program -> judges');
  expect(delay.delay_s).toBeCloseTo((5.5 * 1.001) / 60, 9);
  expect(delay.computed_s).toBeCloseTo((5 * 1.001) / 60, 5);
  expect(delay).toMatchObject({ from: 'measured', limitOn: 'destination', over: false });
});

// The screen's own two frames come on top: 5 + 2 = 7 frames = 116.78 ms.
test('the screen in the annex adds its own delay', () => {
  const { delay } = deliveryOf(analysis, 'clean -> overflow');
  expect(delay.delay_s).toBeCloseTo((7 * 1.001) / 60, 5);
  expect(delay.parts.map(({ what, name, frames }) => `${what} ${name} ${frames}`)).toContain(
    'destination overflow 2',
  );
});

test('the laptop runs at another rate than the house', () => {
  const differing = [...analysis.sourceFigures.values()].filter(({ rateDiffers }) => rateDiffers);
  expect(differing.map(({ source }) => source.name)).toEqual(['scores']);
});

// Numbers of a source as `show --json` prints them: W1.1, W1.2, W1.5, W2.1, W3.2.
test('the figures of a source', () => {
  const figures = analysis.sourceFigures.get('program')!;
  expect(Math.round(figures.active_bits_per_second!)).toBe(2485834166);
  expect(figures.packets_per_frame).toBe(4320);
  expect(Math.round(figures.picture_bits_per_second!)).toBe(2663985614);
  expect(figures.sound_bits_per_second).toBe(19_680_000);
  expect(figures.ancillary_bits_per_second).toBe(100_000);
  expect(Math.round(figures.network_bits_per_second!)).toBe(2683765614);
  expect(Math.round(figures.interface_bits_per_second!)).toBe(2967032967);
});
