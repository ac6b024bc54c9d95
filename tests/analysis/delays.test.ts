import { expect, test } from 'vitest';
import { analysisOf, deliveryOf, kits } from './plans.ts';

const FRAME_50_S = 0.02;

const hall = `plan "Delays" { rate 50 }
${kits}
node a : edge_box
node b : edge_box
node mix : mixer_4
node mix_2 : mixer_4
link a.net1 <-> b.net1
source cam sends 1080p50 as sdi_3g into a.in1
source slow sends 1080p50 as sdi_3g into mix.in2 delay 3 frames
link b.out1 -> mix.in1
link mix.out1 -> mix_2.in1
destination screen as sdi_3g from mix_2.out1
feed cam -> mix.in1
`;
const delayOf = (feed: string, ...statements: string[]) =>
  deliveryOf(analysisOf(hall, ...statements), feed).delay;

test('each hop counts in frames of what enters it, follow and joins add nothing', () => {
  // Two boxes of a frame.
  expect(delayOf('cam -> mix.in1').delay_s).toBeCloseTo(2 * FRAME_50_S, 12);
  const copy = delayOf('cam -> copy', 'destination copy from a.loop1', 'feed cam -> copy');
  expect(copy.delay_s).toBe(0);
});

test('a follower that changes the format takes its time', () => {
  const scaler =
    'kit scaler { inputs in1 as sdi_3g outputs out1 as sdi_3g follow in1 gives 720p60 delay 2 frames }';
  const { delay_s } = delayOf(
    'cam_2 -> d',
    scaler,
    'node s : scaler',
    'source cam_2 sends 1080p25 as sdi_3g into s.in1',
    'destination d from s.out1 delay 1 frame',
    'feed cam_2 -> d',
  );
  // 2 frames of 25 a second enter the scaler; the screen counts one of the 60 that arrive.
  expect(delay_s).toBeCloseTo(2 / 25 + 1 / 60, 12);
});

test('what a source is made of counts from the cameras on, through the slowest', () => {
  const delay = delayOf(
    'program -> screen',
    'feed slow -> mix.in2',
    'source program from mix_2.out1 sends 1080p50',
    'source sub from mix.out1 sends 1080p50',
    'feed sub -> mix_2.in1',
    'feed program -> screen',
  );
  // slow has 3 frames of its own, cam 2 on the way; then mix and mix_2 one frame each.
  expect(delay.delay_s).toBeCloseTo(5 * FRAME_50_S, 12);
  expect(delay.beginning?.slowest?.source.name).toBe('sub');
  expect(delay.parts).toEqual([
    { what: 'made of', name: 'sub', time_s: expect.closeTo(4 * FRAME_50_S, 12), frames: undefined },
    { what: 'node', name: 'mix_2', time_s: expect.closeTo(FRAME_50_S, 12), frames: 1 },
  ]);
});

test('`of` says which: the others do not count', () => {
  const delay = delayOf(
    'sub -> mix_2.in1',
    'feed slow -> mix.in2',
    'source sub from mix.out1 of cam sends 1080p50',
    'feed sub -> mix_2.in1',
  );
  expect(delay.delay_s).toBeCloseTo(3 * FRAME_50_S, 12);
});

test('a measured delay to the mixer counts for what is made of it', () => {
  const delay = delayOf(
    'sub -> mix_2.in1',
    'source sub from mix.out1 sends 1080p50',
    'feed sub -> mix_2.in1',
    'measured cam -> mix.in1 90 ms',
  );
  expect(delay.delay_s).toBeCloseTo(0.09 + FRAME_50_S, 12);
});

test('a mixer that gets its own picture back does not go round for ever', () => {
  const analysis = analysisOf(
    hall,
    'source sub from mix.out1 sends 1080p50',
    'link mix.out2 -> mix.in4',
    'source aux from mix.out2 sends 1080p50',
    'feed aux -> mix.in4',
    'feed sub -> mix_2.in1',
  );
  expect(deliveryOf(analysis, 'sub -> mix_2.in1').delay.delay_s).toBeCloseTo(4 * FRAME_50_S, 12);
  expect(analysis.cycles).toEqual([]);
});

// Two mixers that feed each other: each is worked out by itself. One: cam 2 frames, mix 1 = 3. The other: through the
// first, 3 + 1 = 4; and the first through the second only what is fed to the second besides, nothing here.
test('two mixers that feed each other are each worked out from the cameras', () => {
  const analysis = analysisOf(
    hall,
    'source one from mix.out1 sends 1080p50',
    'source two from mix_2.out2 sends 1080p50',
    'link mix_2.out2 -> mix.in3',
    'feed one -> mix_2.in1',
    'feed two -> mix.in3',
    'feed slow -> mix.in2',
  );
  // slow 3 + mix 1 = 4 frames for one; + mix_2 1 = 5 for two.
  expect(deliveryOf(analysis, 'one -> mix_2.in1').delay.delay_s).toBeCloseTo(4 * FRAME_50_S, 12);
  expect(deliveryOf(analysis, 'two -> mix.in3').delay.delay_s).toBeCloseTo(5 * FRAME_50_S, 12);
});

test('sources that say they are made of each other are told', () => {
  const { cycles } = analysisOf(
    hall,
    'source x from mix.out1 of y sends 1080p50',
    'source y from mix_2.out1 of x sends 1080p50',
    'destination d from mix.out1',
    'feed x -> d',
  );
  expect(cycles.map(({ kind, statements }) => [kind, statements.length])).toEqual([['of', 2]]);
});

test('a source from a network port tells its own delay; its node does not count', () => {
  const delay = delayOf(
    'eye -> d',
    'kit head { network net as ethernet_10g carries uncompressed delay 9 frames }',
    'node h : head',
    'link h.net <-> b.net2',
    'source eye from h.net sends 1080p50 delay 30 ms',
    'destination d from b.out3',
    'feed eye -> d',
  );
  expect(delay.delay_s).toBeCloseTo(0.03 + FRAME_50_S, 12);
});

// 1080i50: a frame is two fields, 40 ms (description of the language, formats).
test('a frame of an interlaced picture is two fields', () => {
  const delay = delayOf(
    'old -> d',
    'source old sends 1080i50 as sdi_3g into a.in2',
    'destination d from b.out3',
    'feed old -> d within 2 frames',
  );
  expect(delay.delay_s).toBeCloseTo(0.08, 12);
  expect(delay).toMatchObject({ limit_s: 0.08, over: false });
});

test('a limit is met unless exceeded by more than a tenth of a millisecond', () => {
  const over = (limit: string) =>
    delayOf('cam -> d', 'destination d from b.out3', `feed cam -> d within ${limit}`).over;
  expect([over('2 frames'), over('39.95 ms'), over('39.8 ms'), over('1 frame')]).toEqual([
    false,
    false,
    true,
    true,
  ]);
});

test('of two limits the stricter counts', () => {
  const on = (feed: string, destination: string) =>
    delayOf('cam -> d', `destination d from b.out3 within ${destination}`, `feed cam -> d within ${feed}`)
      .limitOn;
  expect([on('2 frames', '80 ms'), on('100 ms', '80 ms')]).toEqual(['feed', 'destination']);
});

test('a picture that gets older in a segment is told there again', () => {
  const analysis = analysisOf(
    hall,
    'segment s',
    'source sub from mix.out1 sends 1080p50',
    'feed sub -> mix_2.in1',
    'feed slow -> mix.in2 in s',
    'source program from mix_2.out1 sends 1080p50',
    'feed program -> screen',
  );
  expect(deliveryOf(analysis, 'program -> screen').delay.delay_s).toBeCloseTo(4 * FRAME_50_S, 12);
  const there = deliveryOf(analysis, 'program -> screen', 's');
  expect(there.because).toBe('delay');
  expect(there.delay.delay_s).toBeCloseTo(5 * FRAME_50_S, 12);
  // And it is one delivery there, not two.
  expect(analysis.situations[1]!.ended.has(deliveryOf(analysis, 'program -> screen'))).toBe(true);
});

test('without any rate frames are no time, and nothing is made up', () => {
  const delay = deliveryOf(
    analysisOf(
      kits,
      'node a : edge_box',
      'node b : edge_box',
      'link a.net1 <-> b.net1',
      'source cam into a.in1',
      'destination d from b.out1',
      'feed cam -> d within 2 frames',
    ),
    'cam -> d',
  ).delay;
  expect(delay).toMatchObject({ delay_s: undefined, limit_s: undefined, over: false });
});

test('a chain of five thousand mixers is no trouble', () => {
  const count = 5000;
  const lines = Array.from({ length: count }, (_, i) => [
    `node m${i} : mixer_4`,
    `source p${i} from m${i}.out1 sends 1080p50`,
    ...(i > 0 ? [`link m${i - 1}.out1 -> m${i}.in1`, `feed p${i - 1} -> m${i}.in1`] : []),
  ]).flat();
  const analysis = analysisOf(
    kits,
    'source eye sends 1080p50 as sdi_3g into m0.in1',
    ...lines,
    'feed eye -> m0.in1',
  );
  const last = deliveryOf(analysis, `p${count - 2} -> m${count - 1}.in1`);
  expect(last.delay.delay_s).toBeCloseTo((count - 1) * FRAME_50_S, 6);
});
