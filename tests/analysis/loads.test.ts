import { expect, test } from 'vitest';
import { analysisOf, flowsOn, kits, linkOf, loadOn } from './plans.ts';

const pair = `${kits}
node a : edge_box
node b : edge_box
link trunk a.net1 <-> b.net1 over cat6a 5 m
`;

const cameras = (count: number) =>
  Array.from({ length: count }, (_, i) => [
    `source cam${i} sends 1080p59.94 as sdi_3g into a.in${i + 1}`,
    `destination screen${i} from b.out${i + 1}`,
    `feed cam${i} -> screen${i}`,
  ]).flat();

// Facts of the trade (common practice, no source): three uncompressed 1080p59.94 pictures go one way over 10 Gb/s, about
// 8 Gb/s, not four. 3 x 2.683766 = 8.0513 Gb/s with 16 channels of sound; 4 x = 10.735 Gb/s.
test('three pictures fit one way, a fourth does not', () => {
  const judged = (count: number) => {
    const analysis = analysisOf(pair, ...cameras(count));
    return analysis.traffic[linkOf(analysis, 'trunk').index]!;
  };
  expect(judged(3)).toMatchObject({ judgement: 'fits' });
  expect(judged(3).worst.share).toBeCloseTo(0.80513, 5);
  expect(judged(4)).toMatchObject({ judgement: 'over capacity' });
  expect(judged(4).worst.load_bits_per_second).toBeCloseTo(10.735e9, -6);
});

test('above the headroom it is doubtful', () => {
  const analysis = analysisOf('plan "p" { headroom 20 % }', pair, ...cameras(3));
  expect(analysis.traffic[linkOf(analysis, 'trunk').index]!.judgement).toBe('over headroom');
});

test('one picture counts once, however many it serves beyond', () => {
  const analysis = analysisOf(
    pair,
    ...cameras(1),
    'destination d from b.out2',
    'destination e from b.out3',
    'feed cam0 -> d, e',
  );
  expect(flowsOn(analysis, 'trunk')).toBe('cam0 | ');
  expect(loadOn(analysis, 'trunk').forward).toBe(2683765614);
});

test('a picture that enters the network at two nodes is two flows', () => {
  const analysis = analysisOf(
    kits,
    'node a : edge_box',
    'node c : edge_box',
    'node b : edge_box',
    'node s : switch_8',
    'node split : splitter',
    'link a.net1 <-> s.net1 over cat6a 5 m',
    'link c.net1 <-> s.net2 over cat6a 5 m',
    'link down s.net3 <-> b.net1 over cat6a 5 m',
    'link split.out1 -> a.in1',
    'link split.out2 -> c.in1',
    'source cam sends 1080p59.94 as sdi_3g into split.in1',
    'destination d from b.out1',
    'destination e from b.out2',
    'feed cam -> d',
    'feed cam -> e via c.in1',
  );
  expect(flowsOn(analysis, 'down')).toBe('cam cam | ');
  expect(analysis.flows.map(({ entry }) => entry.name)).toEqual(['a', 'c']);
});

test('flows stand in order of their sources, whatever the order of feeds', () => {
  const analysis = analysisOf(
    pair,
    'source one sends 1080p50 as sdi_3g into a.in1',
    'source two sends 1080p50 as sdi_3g into a.in2',
    'destination d from b.out1',
    'destination e from b.out2',
    'feed two -> e',
    'feed one -> d',
  );
  expect(flowsOn(analysis, 'trunk')).toBe('one two | ');
});

// SDI carries one picture at its whole raster: 2200 x 1125 x 20 x 60000/1001 = 2.967 Gb/s of 2.97 (numbers W3.2).
test('on other cables the load is that of the picture there', () => {
  const analysis = analysisOf(pair, ...cameras(1));
  expect(loadOn(analysis, 'cam0>a.in1')).toEqual({ forward: 2967032967, backward: 0 });
  const traffic = analysis.traffic[linkOf(analysis, 'cam0>a.in1').index]!;
  expect(traffic.worst.share).toBeCloseTo(0.999, 4);
  expect(traffic.judgement).toBe('not judged');
});

// 8:1 of 2.485834 Gb/s is 310.73 Mb/s, in packets of 1400 octets with 82 around: x 1482/1400 = 328.93 Mb/s; sound of 16
// channels 19.68, ancillary 0.1 (rule 3 of numbers).
test('compressed pictures by their ratio', () => {
  const analysis = analysisOf(
    'kit small { inputs in1 as sdi_3g outputs out1 as sdi_3g network net as ethernet_1g carries compressed 8:1 }',
    'node a : small',
    'node b : small',
    'link l a.net <-> b.net over cat6 5 m',
    'source cam sends 1080p59.94 as sdi_3g into a.in1',
    'destination d from b.out1',
    'feed cam -> d',
  );
  expect(loadOn(analysis, 'l').forward / 1e6).toBeCloseTo((2485.834166 / 8) * (1482 / 1400) + 19.68 + 0.1, 2);
});

test('one VLAN tag a packet and block packing are settings of the plan', () => {
  const load = (settings: string) =>
    loadOn(analysisOf(`plan "p" { ${settings} }`, pair, ...cameras(1)), 'trunk').forward;
  // 4320 packets of 4 octets more, and two sound flows at 1000 packets a second.
  expect(load('tagged')).toBe(
    Math.round(4320 * 1290 * 8 * (60000 / 1001) + 2 * (1152 + 82) * 8000 + 100_000),
  );
  // 4115 packets and 5143 row headers (numbers 1.4): 5,184,000 octets + 4115 x 80 + 5143 x 6.
  expect(load('packing block')).toBe(
    Math.round((5_184_000 + 4115 * 80 + 5143 * 6) * 8 * (60000 / 1001) + 19_680_000 + 100_000),
  );
});

test('links that nothing goes over are told, standbys too, broken ones not', () => {
  const analysis = analysisOf(
    pair,
    ...cameras(1),
    'link spare a.net2 <-> b.net2 over cat6a 5 m standby for trunk',
    'link idle b.out4 -> a.in4 over rg6 1 m',
    'link broken b.out9 -> a.in3 over rg6 1 m',
  );
  const unused = analysis.traffic.filter((one) => one.unused).map(({ link }) => link.name);
  expect(unused).toEqual(['spare', 'idle']);
});

test('the worst of all segments and directions is told', () => {
  const analysis = analysisOf(
    pair,
    ...cameras(2),
    'segment s',
    'segment t',
    'source back sends 1080p59.94 as sdi_3g into b.in1',
    'destination home from a.out1',
    'source more sends 1080p59.94 as sdi_3g into a.in4',
    'destination d from b.out4',
    'feed more -> d in t',
    'feed back -> home',
  );
  const { worst, differing } = analysis.traffic[linkOf(analysis, 'trunk').index]!;
  expect(worst).toMatchObject({ segment: { name: 't' }, direction: 'forward' });
  expect(worst.share).toBeCloseTo(0.80513, 5);
  expect(differing.map(({ segment }) => segment?.name)).toEqual(['t']);
});
