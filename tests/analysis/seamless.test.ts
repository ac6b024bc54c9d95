import { expect, test } from 'vitest';
import { analysisOf, deliveryOf, flowsOn, kits, loadOn, words } from './plans.ts';

const pair = `${kits}
node a : edge_box
node b : edge_box
source cam sends 1080p50 as sdi_3g into a.in1 over rg6 1 m
destination screen as sdi_3g from b.out1 over rg6 1 m
feed cam -> screen seamless
`;

const waysOf = (...statements: string[]) => {
  const delivery = deliveryOf(analysisOf(pair, ...statements), 'cam -> screen');
  return {
    ways: delivery.routes.map(({ ports }) => words(ports)),
    shared: delivery.sharedLinks.map(({ name }) => name),
  };
};

test('two copies over two trunks, each counted', () => {
  const analysis = analysisOf(
    pair,
    'link red a.net1 <-> b.net1 over cat6a 5 m',
    'link blue a.net2 <-> b.net2 over cat6a 5 m',
  );
  const { routes, sharedLinks } = deliveryOf(analysis, 'cam -> screen');
  expect(routes.map(({ ports }) => words(ports))).toEqual([
    'cam a.in1 a.net1 b.net1 b.out1 screen',
    'cam a.in1 a.net2 b.net2 b.out1 screen',
  ]);
  expect(sharedLinks).toEqual([]);
  expect(flowsOn(analysis, 'red')).toBe('cam | ');
  expect(flowsOn(analysis, 'blue')).toBe('cam | ');
  expect(analysis.flows.map(({ copy }) => copy)).toEqual([0, 1]);
});

test('one trunk alone is shared, and carries both copies', () => {
  const analysis = analysisOf(pair, 'link red a.net1 <-> b.net1 over cat6a 5 m');
  expect(deliveryOf(analysis, 'cam -> screen').sharedLinks.map(({ name }) => name)).toEqual(['red']);
  // 1080p50: 4320 x 1286 x 8 x 50 = 2,222,208,000 and sound 19,680,000 and ancillary 100,000; twice.
  expect(loadOn(analysis, 'red').forward).toBe(2 * (4320 * 1286 * 8 * 50 + 19_680_000 + 100_000));
});

test('only the bottleneck is named as shared', () => {
  const { ways, shared } = waysOf(
    'node s : switch_8',
    'link up_1 a.net1 <-> s.net1 over cat6a 5 m',
    'link up_2 a.net2 <-> s.net2 over cat6a 5 m',
    'link down s.net3 <-> b.net1 over cat6a 5 m',
  );
  expect(shared).toEqual(['down']);
  expect(ways).toEqual([
    'cam a.in1 a.net1 s.net1 s.net3 b.net1 b.out1 screen',
    'cam a.in1 a.net2 s.net2 s.net3 b.net1 b.out1 screen',
  ]);
});

// The ordinary way a - s1 - t2 - b takes the cross cable; each of the two others that are left is then broken off. Only
// when the cross cable is given back are there two ways: a - s1 - s2 - b and a - t1 - t2 - b.
test('the first way is taken apart where two ways exist only so', () => {
  const { ways, shared } = waysOf(
    'node s1 : switch_8',
    'node s2 : switch_8',
    'node s3 : switch_8',
    'node t1 : switch_8',
    'node t2 : switch_8',
    'node t3 : switch_8',
    'link cross s1.net3 <-> t2.net3 over cat6a 5 m',
    'link l1 a.net1 <-> s1.net1 over cat6a 5 m',
    'link l2 s1.net2 <-> s2.net1 over cat6a 5 m',
    'link l3 s2.net2 <-> s3.net1 over cat6a 5 m',
    'link l4 s3.net2 <-> b.net1 over cat6a 5 m',
    'link m1 a.net2 <-> t1.net1 over cat6a 5 m',
    'link m2 t1.net2 <-> t3.net1 over cat6a 5 m',
    'link m3 t3.net2 <-> t2.net1 over cat6a 5 m',
    'link m4 t2.net2 <-> b.net2 over cat6a 5 m',
  );
  expect(shared).toEqual([]);
  expect(ways.sort()).toEqual([
    'cam a.in1 a.net1 s1.net1 s1.net2 s2.net1 s2.net2 s3.net1 s3.net2 b.net1 b.out1 screen',
    'cam a.in1 a.net2 t1.net1 t1.net2 t3.net1 t3.net2 t2.net1 t2.net2 b.net2 b.out1 screen',
  ]);
});

test('without any network link both copies run the same cable', () => {
  const analysis = analysisOf(
    kits,
    'node s : splitter',
    'source cam sends 1080p50 as sdi_3g into s.in1 over rg6 1 m',
    'destination d from s.out1',
    'feed cam -> d seamless',
  );
  const { routes, sharedLinks } = deliveryOf(analysis, 'cam -> d');
  expect(routes).toHaveLength(2);
  expect(sharedLinks).toEqual([]);
});

test('without a way at all there is none', () => {
  expect(waysOf()).toEqual({ ways: [], shared: [] });
});
