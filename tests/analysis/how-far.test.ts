import { expect, test } from 'vitest';
import { howFar } from '../../src/analysis/how-far.ts';
import { analysisOf, deliveryOf, kits, words } from './plans.ts';

const pair = `${kits}
node a : edge_box
node b : edge_box
node s : switch_8
source cam sends 1080p50 as sdi_3g into a.in1
destination screen as sdi_3g from b.out1
feed cam -> screen
`;

const farOf = (...statements: string[]) => {
  const analysis = analysisOf(pair, ...statements);
  const { reaches, missing } = howFar(analysis, deliveryOf(analysis, 'cam -> screen'));
  return { reaches: words(reaches), missing };
};

test('networks that are not joined, with the sockets that could be', () => {
  const { reaches, missing } = farOf();
  expect(reaches).toBe('cam a.in1');
  expect(missing).toMatchObject({ kind: 'not joined', from: { text: 'a.net1' }, to: { text: 'b.net1' } });
  const through = farOf('link a.net1 <-> s.net1');
  expect(through.reaches).toBe('cam a.in1 a.net1 s.net1');
  expect(through.missing).toMatchObject({
    kind: 'not joined',
    from: { text: 's.net2' },
    to: { text: 'b.net1' },
  });
});

test('only a standby leads on', () => {
  const { reaches, missing } = farOf(
    'link main a.net2 -> s.net1',
    'link spare a.net1 <-> b.net1 standby for main',
  );
  expect(missing).toMatchObject({ kind: 'standby', link: { name: 'spare' } });
  expect(reaches).toBe('cam a.in1 a.net1');
});

test('a link that leads the other way only', () => {
  const { reaches, missing } = farOf('link back b.net1 -> a.net1');
  expect(missing).toMatchObject({ kind: 'wrong way', link: { name: 'back' } });
  expect(reaches).toBe('cam a.in1 a.net1');
});

test('a link whose other end is not known', () => {
  expect(farOf('link trunk a.net1 <-> c.net1').missing).toMatchObject({
    kind: 'broken link',
    link: { name: 'trunk' },
  });
  expect(farOf('link trunk a.net9 <-> b.net1').missing).toMatchObject({
    kind: 'broken link',
    link: { name: 'trunk' },
  });
});

test('another kind of carriage at the far end', () => {
  const { missing } = farOf(
    'kit small { outputs out1 as sdi_3g network net as ethernet_10g carries compressed 8:1 }',
    'node c : small',
    'link a.net1 <-> c.net',
    'destination other from c.out1',
    'feed cam -> other',
  );
  expect(missing.kind).toBe('not joined');
  const analysis = analysisOf(
    pair,
    'kit small { outputs out1 as sdi_3g network net as ethernet_10g carries compressed 8:1 }',
    'node c : small',
    'link a.net1 <-> c.net',
    'destination other from c.out1',
    'feed cam -> other',
  );
  expect(howFar(analysis, deliveryOf(analysis, 'cam -> other')).missing).toMatchObject({
    kind: 'other carriage',
    entry: { text: 'uncompressed' },
    exit: { text: 'compressed 8:1' },
    node: { name: 'c' },
  });
});

test('a node that does not pass the picture on', () => {
  const analysis = analysisOf(
    kits,
    'node mix : mixer_4',
    'source cam sends 1080p50 into mix.in1',
    'destination screen from mix.out1',
    'feed cam -> screen',
  );
  const { reaches, missing } = howFar(analysis, deliveryOf(analysis, 'cam -> screen'));
  expect(words(reaches)).toBe('cam mix.in1');
  expect(missing).toMatchObject({ kind: 'passes nothing', node: { name: 'mix' } });
});

test('a node whose kit is not known', () => {
  const { missing } = farOf('node c : unknown_kit', 'link a.net1 <-> c.net1', 'link c.net2 <-> b.net1');
  expect(missing).toMatchObject({ kind: 'kit not known', node: { name: 'c' } });
});

test('an empty socket of a matrix that leads to the target', () => {
  const analysis = analysisOf(
    kits,
    'node m : matrix_4',
    'node mix : mixer_4',
    'source cam sends 1080p50 into mix.in1',
    'destination screen from m.out1',
    'feed cam -> screen',
  );
  const { missing } = howFar(analysis, deliveryOf(analysis, 'cam -> screen'));
  expect(missing).toMatchObject({ kind: 'no cable', port: { text: 'm.in1' } });
});

test('how far to a `via` that is not met', () => {
  const analysis = analysisOf(pair, 'link a.net1 <-> b.net1', 'feed cam -> b.in1 via s.net1');
  expect(howFar(analysis, deliveryOf(analysis, 'cam -> b.in1')).reaches.length).toBe(0);
  const missed = analysisOf(
    kits,
    'node a : edge_box',
    'node b : edge_box',
    'node s : switch_8',
    'link a.net1 <-> b.net1',
    'source cam sends 1080p50 into a.in1',
    'destination screen from b.out1',
    'feed cam -> screen via s.net1',
  );
  const delivery = deliveryOf(missed, 'cam -> screen');
  expect(delivery.noRoute).toMatchObject({ kind: 'via cannot be met', via: { text: 's.net1' } });
  expect(words(howFar(missed, delivery).reaches)).toContain('cam a.in1');
});

test('in a segment, with what is lost there', () => {
  const analysis = analysisOf(pair, 'link trunk a.net1 <-> b.net1', 'segment s without trunk');
  const { missing } = howFar(analysis, deliveryOf(analysis, 'cam -> screen', 's'));
  expect(missing.kind).toBe('not joined');
});
