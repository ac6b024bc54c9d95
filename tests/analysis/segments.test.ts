import { expect, test } from 'vitest';
import { analysisOf, deliveryOf, flowsOn, kits, wayOf } from './plans.ts';

const hall = `${kits}
circuit left 16 A 230 V
circuit house 63 A 230 V
circuit fed 16 A 230 V from house
node a : edge_box powered by left
node b : edge_box powered by left, fed
link trunk a.net1 <-> b.net1 over cat6a 50 m
link spare a.net2 <-> b.net2 over cat6a 50 m standby for trunk
source cam sends 1080p50 as sdi_3g into a.in1 over rg6 1 m
source cam_2 sends 1080p50 as sdi_3g into a.in2 over rg6 1 m
destination screen as sdi_3g from b.out1 over rg6 1 m
destination screen_2 as sdi_3g from b.out2 over rg6 1 m
feed cam -> screen
feed cam_2 -> screen_2
`;

test('a feed of a segment holds there only', () => {
  const analysis = analysisOf(hall, 'segment s', 'destination third from b.out3', 'feed cam -> third in s');
  expect(analysis.deliveries.map(({ feed, segment }) => [feed.name, segment?.name])).toEqual([
    ['cam -> screen', undefined],
    ['cam_2 -> screen_2', undefined],
    ['cam -> third', 's'],
  ]);
});

test('`instead of` takes the place of the always-on feed there', () => {
  const analysis = analysisOf(hall, 'segment s', 'segment t', 'feed cam -> screen_2 instead of cam_2 in s');
  expect(deliveryOf(analysis, 'cam -> screen_2', 's').twoPictures).toBeUndefined();
  expect(flowsOn(analysis, 'trunk', 's')).toBe('cam | ');
  expect(flowsOn(analysis, 'trunk', 't')).toBe('cam cam_2 | ');
  expect(analysis.unmatched).toEqual([]);
});

test('without it two pictures meet there, in that segment', () => {
  const analysis = analysisOf(hall, 'segment s', 'feed cam -> screen_2 in s');
  const late = deliveryOf(analysis, 'cam -> screen_2', 's');
  expect(late.twoPictures?.other).toBe(deliveryOf(analysis, 'cam_2 -> screen_2'));
});

test('`black` takes an always-on picture away', () => {
  const analysis = analysisOf(hall, 'segment s', 'black screen, screen_2 in s');
  expect(flowsOn(analysis, 'trunk', 's')).toBe(' | ');
  expect(flowsOn(analysis, 'trunk')).toBe('cam cam_2 | ');
});

test('an `instead of` or a `black` that matches nothing is told', () => {
  const analysis = analysisOf(
    hall,
    'segment s',
    'feed cam -> screen instead of cam_2 in s',
    'feed cam -> screen_2 instead of cam_9 in s',
    'destination third from b.out3',
    'black third in s',
    'feed cam -> third instead of cam_2',
  );
  expect(
    analysis.unmatched.map(({ kind, part, wanted, segment }) => [kind, part, wanted, segment?.name]),
  ).toEqual([
    ['instead of', 'insteadOf/0', 'cam_2', undefined],
    ['instead of', 'insteadOf/0', 'cam_2', 's'],
    ['instead of', 'insteadOf/0', 'cam_9', 's'],
  ]);
});

test('an unknown segment does not make a feed hold always', () => {
  const analysis = analysisOf(hall, 'feed cam -> screen_2 in finale');
  expect(analysis.deliveries).toHaveLength(2);
  expect(analysis.names.unknown.map(({ name }) => name)).toEqual(['finale']);
});

test('a segment without the trunk is worked out over its standby', () => {
  const analysis = analysisOf(hall, 'segment s without trunk');
  const [, s] = analysis.situations;
  expect(s!.standbys.map(({ name }) => name)).toEqual(['spare']);
  expect(wayOf(analysis, 'cam -> screen', 's')).toBe('cam a.in1 a.net2 b.net2 b.out1 screen');
  expect(deliveryOf(analysis, 'cam -> screen', 's').because).toBe('rerouted');
  expect(flowsOn(analysis, 'trunk', 's')).toBe(' | ');
  expect(flowsOn(analysis, 'spare', 's')).toBe('cam cam_2 | ');
  expect(flowsOn(analysis, 'spare')).toBe(' | ');
});

test('without the standby too there is no way', () => {
  const analysis = analysisOf(hall, 'segment s without trunk, spare');
  expect(deliveryOf(analysis, 'cam -> screen', 's').noRoute?.kind).toBe('no way');
});

test('of several standbys the first that is there', () => {
  const third =
    'kit big { network net[1..4] as ethernet_10g carries uncompressed inputs in1 as sdi_3g outputs out1 as sdi_3g }';
  const plan = `${third}
node x : big
node y : big
link main x.net1 <-> y.net1 over cat6a 5 m
link first x.net2 <-> y.net2 over cat6a 5 m standby for main
link next x.net3 <-> y.net3 over cat6a 5 m standby for main
segment s without main
segment t without main, first`;
  const { situations } = analysisOf(plan);
  expect(situations.map(({ standbys }) => standbys.map(({ name }) => name))).toEqual([
    [],
    ['first'],
    ['next'],
  ]);
});

test('a lost node has no standby, and what comes from or goes to it is told or ends', () => {
  const analysis = analysisOf(
    hall,
    'segment s without b',
    'segment t without cam',
    'segment u without screen',
  );
  expect(analysis.situations[1]!.standbys).toEqual([]);
  expect(deliveryOf(analysis, 'cam -> screen', 's').noRoute?.kind).toBe('no way');
  // A source or a destination that is not there is meant: nothing to tell.
  const inSegment = (name: string) => analysis.deliveries.filter(({ segment }) => segment?.name === name);
  expect(inSegment('t')).toEqual([]);
  expect(inSegment('u')).toEqual([]);
  expect(flowsOn(analysis, 'trunk', 't')).toBe('cam_2 | ');
});

test('a lost circuit takes with it what hangs on it alone, and the circuits that it feeds', () => {
  const { situations } = analysisOf(hall, 'segment s without left', 'segment t without left, house');
  expect(situations.map(({ lostNodes }) => [...lostNodes].map(({ name }) => name))).toEqual([
    [],
    ['a'],
    ['a', 'b'],
  ]);
});

test('an always-on feed may take the place of another for good', () => {
  const analysis = analysisOf(hall, 'feed cam -> screen_2 instead of cam_2');
  expect(analysis.deliveries.map(({ feed }) => feed.name)).toEqual(['cam -> screen', 'cam -> screen_2']);
  expect(analysis.unmatched).toEqual([]);
});

test('what a segment frees can be used by another picture there, and only there', () => {
  const analysis = analysisOf(
    hall,
    'segment s',
    'black screen in s',
    'feed cam_2 -> screen in s',
    'feed cam -> screen_2 instead of cam_2 in s',
  );
  expect(wayOf(analysis, 'cam_2 -> screen', 's')).toBe('cam_2 a.in2 a.net1 b.net1 b.out1 screen');
  expect(analysis.deliveries.some(({ twoPictures }) => twoPictures)).toBe(false);
});
