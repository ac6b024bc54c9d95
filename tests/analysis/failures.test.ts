import { expect, test } from 'vitest';
import { failing, failuresOf, redundanciesOf } from '../../src/analysis/failures.ts';
import type { Analysis, Failure } from '../../src/analysis/model.ts';
import { benchText } from '../bench/plans.ts';
import { analysisOf, finals, kits } from './plans.ts';

const feeds = (deliveries: Failure['dark']) => deliveries.map(({ feed }) => feed.name).join(', ');
const names = (things: readonly { readonly name: string }[]) => things.map(({ name }) => name).join(', ');

/** What losing one thing does: `dark … | kept … | standbys | overloaded`. */
function lossOf(analysis: Analysis, name: string, segment?: string): string | undefined {
  const failure = failuresOf(analysis).find((one) => one.lost.name === name && one.segment?.name === segment);
  if (!failure) return undefined;
  const { dark, kept, standbys, overloaded } = failure;
  return `${feeds(dark)} | ${feeds(kept)} | ${names(standbys)} | ${names(overloaded)}`;
}

const verdictOf = (analysis: Analysis) =>
  redundanciesOf(analysis).map(
    ({ delivery, segment, brokenBy, weakenedBy, standbys }) =>
      `${delivery.feed.name}${segment ? ` in ${segment.name}` : ''}: ${names(brokenBy.map(({ lost }) => lost))} | ${names(weakenedBy.map(({ lost }) => lost))} | ${names(standbys)}`,
  );

const pair = `plan "p" { slack 2 m }
${kits}
place x
place y
place z
run x <-> y 40 m
run x <-> z 30 m
run z <-> y 30 m
node a : edge_box at x
node b : edge_box at y
source cam at x sends 1080p50 as sdi_3g into a.in1 over rg6 1 m
source cam_2 at x sends 1080p50 as sdi_3g into a.in2 over rg6 1 m
destination screen at y as sdi_3g from b.out1 over rg6 1 m
destination screen_2 at y as sdi_3g from b.out2 over rg6 1 m
link trunk a.net1 <-> b.net1 over cat6a
`;

test('the finals plan: the spare trunk keeps everything, and the mixer is the worst to lose', () => {
  const analysis = analysisOf(finals);
  expect(failuresOf(analysis)[0]).toMatchObject({ kind: 'node', lost: { name: 'mixer' } });
  expect(lossOf(analysis, 'trunk')).toBe(
    ' | bench -> mixer.in2, program -> judges, clean -> overflow | trunk_b | ',
  );
  // The trunk lies in the run between desk and platform, the spare by the annex.
  expect(lossOf(analysis, 'desk <-> platform')).toBe(lossOf(analysis, 'trunk'));
  expect(lossOf(analysis, 'platform <-> annex')).toBe('clean -> overflow |  |  | ');
  expect(lossOf(analysis, 'box_p')).toBe('bench -> mixer.in2, program -> judges, clean -> overflow |  |  | ');
  expect(lossOf(analysis, 'bench>box_p.in1')).toBe('bench -> mixer.in2 |  |  | ');
  // Only in results: clean goes to the judges, the annex is black.
  expect(lossOf(analysis, 'box_p.out1>judges', 'results')).toBe('clean -> judges |  |  | ');
  expect(lossOf(analysis, 'box_d.out1>mixer.in2', 'results')).toBeUndefined();
  expect(verdictOf(analysis)).toEqual(['program -> judges:  |  | trunk_b']);
});

test('what nothing goes over is no failure', () => {
  const analysis = analysisOf(pair, 'feed cam -> screen', 'link idle a.net2 <-> b.net2 over cat6a');
  expect(failuresOf(analysis).map(({ lost }) => lost.name)).not.toContain('idle');
});

test('without a standby everything over the trunk goes dark', () => {
  const analysis = analysisOf(pair, 'feed cam -> screen redundant', 'feed cam_2 -> screen_2');
  expect(lossOf(analysis, 'trunk')).toBe('cam -> screen, cam_2 -> screen_2 |  |  | ');
  expect(verdictOf(analysis)).toEqual(['cam -> screen: trunk, x <-> y |  | ']);
});

test('another way keeps a feed without re-plugging', () => {
  const analysis = analysisOf(
    pair,
    'link second a.net2 <-> b.net2 over cat6a by z',
    'feed cam -> screen redundant',
  );
  const failure = failuresOf(analysis).find(({ lost }) => lost.name === 'trunk')!;
  expect(feeds(failure.kept)).toBe('cam -> screen');
  expect(failure.afterReplugging).toEqual([]);
  expect(verdictOf(analysis)).toEqual(['cam -> screen:  |  | ']);
});

test('a standby in the same run does not help when the run is lost', () => {
  const analysis = analysisOf(
    pair,
    'link spare a.net2 <-> b.net2 over cat6a standby for trunk',
    'feed cam -> screen redundant',
  );
  expect(lossOf(analysis, 'trunk')).toBe(' | cam -> screen | spare | ');
  expect(lossOf(analysis, 'x <-> y')).toBe('cam -> screen |  |  | ');
  expect(verdictOf(analysis)).toEqual(['cam -> screen: x <-> y |  | spare']);
});

test('cables in one sheath are lost together', () => {
  const analysis = analysisOf(
    pair.replace('over cat6a', 'over os2'),
    'link spare a.net2 <-> b.net2 over os2 shares trunk standby for trunk',
    'feed cam -> screen redundant',
  );
  expect(lossOf(analysis, 'trunk')).toBe('cam -> screen |  |  | ');
  expect(names(failuresOf(analysis).find(({ lost }) => lost.name === 'trunk')!.links)).toBe('trunk, spare');
});

test('a standby that is too long or does not fit its ports is no help', () => {
  const long = analysisOf(
    pair,
    'link spare a.net2 <-> b.net2 over cat6a 120 m standby for trunk',
    'feed cam -> screen redundant',
  );
  expect(lossOf(long, 'trunk')).toBe('cam -> screen |  |  | ');
  const wrong = analysisOf(
    pair,
    'link spare a.net2 <-> b.net2 over rg6 20 m standby for trunk',
    'feed cam -> screen redundant',
  );
  expect(lossOf(wrong, 'trunk')).toBe('cam -> screen |  |  | ');
});

// Six cameras at 1080p50, 2.242 Gb/s each with 16 channels: three over each of two trunks of 10 Gb/s (6.73), all six
// over one that is left: 13.45 Gb/s.
test('what the loads are after a loss counts too', () => {
  const boxes = `
kit big { inputs in[1..6] as sdi_3g outputs out[1..6] as sdi_3g network net[1..2] as ethernet_10g carries uncompressed }
node p : big at x
node q : big at y
link one p.net1 <-> q.net1 over cat6a
link two p.net2 <-> q.net2 over cat6a by z`;
  const cameras = Array.from({ length: 6 }, (_, i) => [
    `source c${i} at x sends 1080p50 as sdi_3g into p.in${i + 1} over rg6 1 m`,
    `destination d${i} at y as sdi_3g from q.out${i + 1} over rg6 1 m`,
    `feed c${i} -> d${i} via ${i < 3 ? 'p.net1' : 'p.net2'}${i === 0 ? ' redundant' : ''}`,
  ]).flat();
  const pinned = analysisOf(pair, boxes, ...cameras);
  // Pinned to their trunk, those three go dark.
  expect(lossOf(pinned, 'one')).toBe('c0 -> d0, c1 -> d1, c2 -> d2 |  |  | ');
  const free = analysisOf(
    pair,
    boxes,
    ...cameras.map((line) => line.replace(/via p.net1( redundant)?/, '$1')),
  );
  expect(lossOf(free, 'one')).toBe(' | c0 -> d0, c1 -> d1, c2 -> d2 |  | two');
  expect(redundanciesOf(free)[0]!.brokenBy).toMatchObject([
    { kind: 'link', lost: { name: 'one' }, overloaded: [{ name: 'two' }] },
    { kind: 'run', lost: { name: 'x <-> y' } },
  ]);
});

test('one copy of a seamless feed is enough', () => {
  const analysis = analysisOf(
    pair,
    'link second a.net2 <-> b.net2 over cat6a by z',
    'feed cam -> screen seamless',
  );
  const failure = failuresOf(analysis).find(({ lost }) => lost.name === 'trunk')!;
  expect(feeds(failure.kept)).toBe('cam -> screen');
  expect(failure.afterReplugging).toEqual([]);
});

test('a switch in the way is a weakness of a redundant feed, not a break', () => {
  const analysis = analysisOf(
    pair.replace(/link trunk.*/, ''),
    'node s : switch_8 at z',
    'link l1 a.net1 <-> s.net1 over cat6a 5 m',
    'link l2 a.net2 <-> s.net2 over cat6a 5 m',
    'link l3 s.net3 <-> b.net1 over cat6a 5 m',
    'link l4 s.net4 <-> b.net2 over cat6a 5 m',
    'feed cam -> screen redundant',
  );
  // The links lie in the runs x-z and z-y, both pairs in the same ones: losing a run breaks it.
  expect(verdictOf(analysis)).toEqual(['cam -> screen: x <-> z, z <-> y | s | ']);
});

test('for a redundant feed only the network links of a run are lost', () => {
  // The screen's own coax lies in the run too; without it no picture could be kept.
  const analysis = analysisOf(
    pair,
    'link second a.net2 <-> b.net2 over cat6a by z',
    'destination far at x as sdi_3g from b.out3 over rg6',
    'feed cam -> far redundant',
  );
  expect(lossOf(analysis, 'x <-> y')).toBe('cam -> far |  |  | ');
  expect(verdictOf(analysis)).toEqual(['cam -> far:  |  | ']);
});

test('in a segment that has lost the trunk already, the spare is what can be lost', () => {
  const analysis = analysisOf(
    pair,
    'link spare a.net2 <-> b.net2 over cat6a by z standby for trunk',
    'segment s without trunk',
    'feed cam -> screen redundant',
  );
  expect(lossOf(analysis, 'spare', 's')).toBe('cam -> screen |  |  | ');
  expect(verdictOf(analysis)).toEqual([
    'cam -> screen:  |  | spare',
    'cam -> screen in s: spare, x <-> z, z <-> y |  | ',
  ]);
});

// Four pictures of 1080p59.94 are 4 x 2.684 = 10.74 Gb/s, more than one trunk has.
test('a segment that fills the other way is told, though its own pictures do not ride over what is lost', () => {
  const analysis = analysisOf(
    pair.replaceAll('1080p50', '1080p59.94'),
    'link second a.net2 <-> b.net2 over cat6a by z',
    ...[3, 4].map((i) => `source c${i} at x sends 1080p59.94 as sdi_3g into a.in${i} over rg6 1 m`),
    ...[3, 4].map((i) => `destination d${i} at y as sdi_3g from b.out${i} over rg6 1 m`),
    'feed cam -> screen',
    'feed cam_2 -> screen_2',
    'segment full',
    'segment quiet',
    'feed c3 -> d3 via a.net2 in full',
    'feed c4 -> d4 via a.net2 in full',
    'feed c3 -> d3 in quiet',
  );
  expect(lossOf(analysis, 'trunk')).toBe(' | cam -> screen, cam_2 -> screen_2 |  | ');
  expect(lossOf(analysis, 'trunk', 'full')).toBe(' | cam -> screen, cam_2 -> screen_2 |  | second');
});

test('in steps it comes to the same, and asking twice gives the same', () => {
  const analysis = analysisOf(finals);
  const steps = failing(analysis);
  let count = 0;
  let last = steps.next();
  while (!last.done) {
    count++;
    last = steps.next();
  }
  expect(count).toBeGreaterThan(10);
  expect(last.value.failures).toBe(failuresOf(analysis));
  // Given up half way, nothing is left behind.
  const other = analysisOf(finals);
  const given = failing(other);
  for (let i = 0; i < 20; i++) given.next();
  expect(failuresOf(other).map(({ lost, segment }) => [lost.name, segment?.name])).toEqual(
    failuresOf(analysis).map(({ lost, segment }) => [lost.name, segment?.name]),
  );
});

test('a whole centre: every failure names what is lost, and no feed twice', () => {
  const failures = failuresOf(analysisOf(benchText(300)));
  expect(failures.length).toBeGreaterThan(20);
  for (const { dark, kept } of failures) {
    const concerned = [...dark, ...kept].map(({ feed }) => feed.index);
    expect(new Set(concerned).size).toBe(concerned.length);
    expect(concerned.length).toBeGreaterThan(0);
  }
});
