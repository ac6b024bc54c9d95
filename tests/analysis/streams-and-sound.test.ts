import { expect, test } from 'vitest';
import { recordingsOf } from '../../src/analysis/recordings.ts';
import { soundMatchesOf } from '../../src/analysis/sound-matches.ts';
import { streamsWithoutUplink, uplinkLoadsOf } from '../../src/analysis/uplink-loads.ts';
import { analysisOf, kits } from './plans.ts';

// Numbers W8.1 and W8.3: (6 + 0.128) x 1.25 x 1360 / 1316 = 7.916 Mb/s; half of the upload may be used.
test('streams with recovery and headers, against half of the upload', () => {
  const [uplink] = uplinkLoadsOf(
    analysisOf('uplink hotel 20 Mb/s', 'destination web streams 6.128 Mb/s over hotel'),
  );
  expect(uplink!.needed_bits_per_second / 1e6).toBeCloseTo(7.92, 2);
  expect(uplink!.usable_bits_per_second).toBe(10e6);
  expect(uplink!.share).toBeCloseTo(0.7916, 3);
});

test('a measured upload takes the place of the stated one', () => {
  const [uplink] = uplinkLoadsOf(analysisOf('uplink hotel 20 Mb/s', 'measured hotel 12 Mb/s'));
  expect(uplink).toMatchObject({
    stated_bits_per_second: 20e6,
    measured_bits_per_second: 12e6,
    usable_bits_per_second: 6e6,
  });
});

test('over several uplinks streams must fit each alone; naming none, they go over the only one', () => {
  const both = uplinkLoadsOf(
    analysisOf('uplink a 20 Mb/s', 'uplink b 10 Mb/s', 'destination web streams 4 Mb/s, 2 Mb/s over a, b'),
  );
  expect(both.map(({ needed_bits_per_second }) => needed_bits_per_second)).toEqual([
    both[0]!.needed_bits_per_second,
    both[0]!.needed_bits_per_second,
  ]);
  expect(both[0]!.needed_bits_per_second).toBeCloseTo(6e6 * 1.25 * (1360 / 1316), 3);
  const [only] = uplinkLoadsOf(analysisOf('uplink a 20 Mb/s', 'destination web streams 4 Mb/s'));
  expect(only!.needed_bits_per_second).toBeGreaterThan(4e6);
  const unsaid = analysisOf('uplink a 20 Mb/s', 'uplink b 20 Mb/s', 'destination web streams 4 Mb/s');
  expect(streamsWithoutUplink(unsaid).map(({ name }) => name)).toEqual(['web']);
});

// Numbers W8.5: 8 h at 50 Mb/s are 180 GB.
test('recordings need room for as long as the plan lasts', () => {
  const plan = (head: string) =>
    recordingsOf(analysisOf(head, 'destination deck records 50 Mb/s', 'destination other'));
  expect(plan('plan "p" { lasts 8 h }').map(({ bytes }) => bytes)).toEqual([180e9]);
  expect(plan('plan "p" { }').map(({ bytes }) => bytes)).toEqual([undefined]);
});

const hall = (rule: string, sound: string) => `plan "p" { rate 50 ${rule} }
${kits}
node a : edge_box
node b : edge_box
link a.net1 <-> b.net1
source cam sends 1080p50 as sdi_3g into a.in1
destination screen from b.out1 delay 2 frames ${sound}
feed cam -> screen`;

// The picture is seen after two boxes and two frames of the screen: 80 ms. Sound after 12 ms, 20 m away: 12 + 20 / 343.2 s
// = 70.28 ms (ISO 9613-1, second-hand; numbers W7.3 by the line): 9.72 ms early.
test('sound by its own delay and by distance, both added, against the picture', () => {
  const [match] = soundMatchesOf(analysisOf(hall('', 'sound after 12 ms from 20 m')));
  expect(match!.picture_s).toBeCloseTo(0.08, 12);
  expect(match!.sound_s).toBeCloseTo(0.012 + 20 / 343.2, 9);
  expect(match!.offset_s).toBeCloseTo(0.012 + 20 / 343.2 - 0.08, 9);
  expect(match).toMatchObject({ rule: 'bt1359', ok: true, warning: false });
  // So much the sound is to be delayed for both to meet.
  expect(match!.delayToSet_s).toBeCloseTo(0.08 - 0.012 - 20 / 343.2, 9);
});

// BT.1359-1: noticed beyond 45 ms early or 125 ms late, an error beyond 90 and 185 (published). R37: 40 and 60 ms.
test('each rule by its own limits', () => {
  const judged = (rule: string, after: string) => {
    const [match] = soundMatchesOf(analysisOf(hall(rule, `sound after ${after}`)));
    return `${match!.ok ? 'ok' : 'error'}${match!.warning ? ', warning' : ''}`;
  };
  // Offsets of -80, -30, +120, +130, +190 ms.
  expect(['0 ms', '50 ms', '200 ms', '210 ms', '270 ms'].map((after) => judged('', after))).toEqual([
    'ok, warning',
    'ok',
    'ok',
    'ok, warning',
    'error',
  ]);
  expect(['0 ms', '50 ms', '150 ms'].map((after) => judged('lipsync r37', after))).toEqual([
    'error',
    'ok',
    'error',
  ]);
});

test('where the picture does not arrive there is nothing to match', () => {
  expect(
    soundMatchesOf(analysisOf('source s sends 1080p50', 'destination d sound after 5 ms', 'feed s -> d')),
  ).toEqual([]);
});

// Two boxes of 20 ms and 5 ms of the screen are 45 ms, and some 0.2 us of cable: ITU-R BT.1359-1 (published) allows sound
// 45 ms early without notice.
test('what the cable adds to a limit of the rule is not noticed', () => {
  const judged = (delay: string) => {
    const [match] = soundMatchesOf(
      analysisOf(
        kits,
        'node a : edge_box',
        'node b : edge_box',
        'link trunk a.net1 <-> b.net1 over cat6a 40 m',
        'source cam sends 1080p50 as sdi_3g into a.in1 over rg6 1 m',
        `destination screen as sdi_3g from b.out1 over rg6 1 m delay ${delay} sound after 0 ms`,
        'feed cam -> screen',
      ),
    );
    return { offset_ms: Math.round(match!.offset_s * 1000), warning: match!.warning };
  };
  expect(judged('5 ms')).toEqual({ offset_ms: -45, warning: false });
  expect(judged('6 ms')).toEqual({ offset_ms: -46, warning: true });
});
