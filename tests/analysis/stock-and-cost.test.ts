import { expect, test } from 'vitest';
import { cableStockOf } from '../../src/analysis/cable-pieces.ts';
import { packingOf } from '../../src/analysis/case-weights.ts';
import { costOf } from '../../src/analysis/costs.ts';
import { firmwareOf } from '../../src/analysis/firmware.ts';
import { analysisOf, kits } from './plans.ts';

const nodes = `${kits}
node a : edge_box
node b : edge_box
node c : edge_box
`;
const coax = (...lengths: number[]) =>
  lengths.map((length, i) => `link l${i} a.out${i + 1} -> b.in${i + 1} over rg6 ${length} m`);
const piecesOf = (...statements: string[]) =>
  cableStockOf(analysisOf(nodes, ...statements)).pieces.map(
    ({ link, piece_m, from }) => `${link.name} ${piece_m ?? '-'} ${from}`,
  );

// Needs of 30, 28, 9 and 8 m; at hand one of 50, one of 30, one of 10 and one of 8 m. Longest first: 30 takes the 30, 28
// the 50, 9 the 10, 8 the 8.
test('longest need first, the shortest piece that is long enough', () => {
  expect(
    piecesOf(
      ...coax(8, 30, 9, 28),
      'stock rg6 1 of 50 m',
      'stock rg6 1 of 10 m',
      'stock rg6 1 of 30 m',
      'stock rg6 1 of 8 m',
    ),
  ).toEqual(['l0 8 stock', 'l1 30 stock', 'l2 10 stock', 'l3 50 stock']);
});

test('what no piece reaches is to be got; pieces of another cable do not help', () => {
  expect(piecesOf(...coax(60, 5), 'stock rg6 5 of 50 m', 'stock rg11 5 of 100 m')).toEqual([
    'l0 - get',
    'l1 50 stock',
  ]);
});

test('ties go to counted pieces; when they are used up, to those that can be had in any number', () => {
  expect(piecesOf(...coax(10, 10, 10), 'stock rg6 any of 10 m costs 9', 'stock rg6 2 of 10 m')).toEqual([
    'l0 10 stock',
    'l1 10 stock',
    'l2 10 any',
  ]);
});

test('installed cables need no piece, cables of one sheath need one', () => {
  expect(
    piecesOf(
      'link l1 a.net1 <-> b.net1 over os2 40 m',
      'link l2 a.net2 <-> b.net2 over os2 shares l1',
      'link l3 c.net1 <-> a.in4 over os2 10 m installed',
      'stock os2 3 of 50 m',
    ),
  ).toEqual(['l1 50 stock']);
});

test('what is left over, and trunks for which nothing would be left', () => {
  const stock = (...statements: string[]) =>
    cableStockOf(analysisOf(nodes, 'link l a.net1 <-> b.net1 over cat6a 60 m', ...statements));
  expect(stock('stock cat6a 2 of 75 m').left.map(({ length_m, count }) => `${count} of ${length_m}`)).toEqual(
    ['1 of 75'],
  );
  expect(stock('stock cat6a 2 of 75 m').withoutSpare).toEqual([]);
  expect(stock('stock cat6a 1 of 75 m').withoutSpare.map(({ name }) => name)).toEqual(['cat6a']);
});

// Three boxes and two spares (half of three, rounded up) at 100; cables of 10 and 25 m, one spare as long as the longest.
test('prices by count, spares rounded up, pieces only when they are used', () => {
  const analysis = analysisOf(
    'plan "p" { spares 50 % currency EUR }',
    'kit box { inputs in1 as sdi_3g outputs out1 as sdi_3g costs 100 }',
    'node a : box',
    'node b : box',
    'node c : box',
    'link a.out1 -> b.in1 over rg6 10 m',
    'link b.out1 -> c.in1 over rg6 20 m',
    'stock rg6 1 of 10 m costs 12',
    'stock rg6 any of 25 m costs 30',
    'stock rg6 4 of 100 m costs 90',
  );
  const cost = costOf(analysis, cableStockOf(analysis));
  expect(cost.lines.map(({ what, count, spare, each, sum }) => [what, count, spare, each, sum])).toEqual([
    ['box', 5, 2, 100, 500],
    ['rg6', 1, 0, 12, 12],
    ['rg6', 2, 1, 30, 60],
  ]);
  expect(cost).toMatchObject({ currency: 'EUR', total: 572 });
});

// Fact of the trade (common practice, no source): two edge boxes and one copper trunk carry six pictures for under 1,300
// dollars, copper at about 25 dollars per 100 feet.
test('two boxes and a copper trunk for six pictures cost less than 1,300 dollars', () => {
  const cameras = ['a', 'b'].flatMap((box, side) =>
    [1, 2, 3].flatMap((i) => [
      `source cam_${box}${i} sends 1080p59.94 as sdi_3g into ${box}.in${i}`,
      `destination screen_${box}${i} from ${box === 'a' ? 'b' : 'a'}.out${i + side}`,
      `feed cam_${box}${i} -> screen_${box}${i}`,
    ]),
  );
  const analysis = analysisOf(
    'plan "p" { currency USD }',
    kits.replace('delay 1 frame', 'delay 1 frame costs 560'),
    'node a : edge_box',
    'node b : edge_box',
    'link trunk a.net1 <-> b.net1 over cat6a 200 ft',
    'stock cat6a any of 250 ft costs 62.5',
    ...cameras,
  );
  expect(analysis.deliveries.every(({ routes, twoPictures }) => routes.length === 1 && !twoPictures)).toBe(
    true,
  );
  expect(analysis.traffic[0]!.judgement).toBe('fits');
  expect(costOf(analysis, cableStockOf(analysis)).total).toBe(1182.5);
});

// Empty 6 kg, two boxes of 1.2 kg, a trunk for which the 75 m piece is taken: 75 x 0.055 = 4.125 kg. 12.525 kg.
test('a case weighs itself, its kit and the pieces of cable in it; what is not known is listed', () => {
  const analysis = analysisOf(
    kits.replace('delay 1 frame', 'delay 1 frame weighs 1.2 kg'),
    'node a : edge_box',
    'node b : edge_box',
    'node m : mixer_4',
    'link trunk a.net1 <-> b.net1 over cat6a 64 m',
    'link core a.net2 <-> b.net2 shares trunk',
    'stock cat6a 1 of 75 m',
    'case blue holds a, b, trunk, core, a, m, "ramps" weighs 6 kg up to 12 kg',
    'case red holds a',
  );
  const { cases, unpacked } = packingOf(analysis, cableStockOf(analysis));
  expect(cases[0]!.weight_kg).toBeCloseTo(12.525, 9);
  expect(cases[0]).toMatchObject({ limit_kg: 12, unknown: ['m', 'ramps'] });
  expect(cases[1]!.unknown).toEqual(['the empty case']);
  expect(unpacked).toEqual([]);
});

// 1.1 + 2.2 is 3.3 kg, whatever binary fractions make of it (3.3000000000000003).
test('a case that weighs just what it may is not over it', () => {
  const analysis = analysisOf(
    'kit light { inputs in1 weighs 2.2 kg }',
    'node a : light',
    'case blue holds a weighs 1.1 kg up to 3.3 kg',
  );
  expect(packingOf(analysis, cableStockOf(analysis)).cases[0]!.weight_kg).toBe(3.3);
});

test('what travels and is in no case is told once there is a case', () => {
  const without = analysisOf(nodes);
  expect(packingOf(without, cableStockOf(without)).unpacked).toEqual([]);
  const packed = analysisOf(nodes, 'link trunk a.net1 <-> b.net1 over cat6a 5 m', 'case blue holds a, b');
  expect(packingOf(packed, cableStockOf(packed)).unpacked.map(({ name }) => name)).toEqual(['c', 'trunk']);
});

test('firmware wanted and found, and a mix of versions', () => {
  const { toUpdate, mixed } = firmwareOf(
    analysisOf(
      'kit box { inputs in1 firmware "4.1" }',
      'kit other { inputs in1 }',
      'node a : box { firmware "4.1" }',
      'node b : box { firmware "4.0" }',
      'node c : box',
      'node d : other { firmware "1" }',
    ),
  );
  expect(toUpdate.map(({ node }) => node.name)).toEqual(['b']);
  expect(mixed.map(({ kit, nodes }) => [kit.name, nodes.length])).toEqual([['box', 3]]);
});
