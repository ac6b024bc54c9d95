import { expect, test } from 'vitest';
import { analysisOf, kits, linkOf } from './plans.ts';

const hall = `
plan "Lengths" { slack 2 m }
place a
place b
place c
place d
run a <-> b 10 m
run b <-> c 20 m
run a <-> c 35 m
${kits}
node na : edge_box at a
node na2 : edge_box at a
node nb : edge_box at b
node nc : edge_box at c
node nd : edge_box at d
`;

const lengthOf = (...statements: string[]) => linkOf(analysisOf(hall, ...statements), 'l').length;

// a-b-c is 10 + 20 = 30 m, shorter than 35 m straight; 2 m of slack at each end.
test('a link without a length takes the shortest chain of runs and slack at each end', () => {
  const length = lengthOf('link l na.net1 <-> nc.net1 over cat6a');
  expect(length).toMatchObject({ length_m: 34, from: 'runs', planned_m: 34 });
  expect(length.runs.map(({ name }) => name)).toEqual(['a <-> b', 'b <-> c']);
});

test('it is the same the other way round', () => {
  const length = lengthOf('link l nc.net1 <-> na.net1 over cat6a');
  expect(length.length_m).toBe(34);
  expect(length.runs.map(({ name }) => name)).toEqual(['b <-> c', 'a <-> b']);
});

test('laid by places, it takes the shortest chain through each', () => {
  const length = lengthOf('link l na.net1 <-> nb.net1 over cat6a by c');
  // a-b-c 30, c-b 20, slack 4.
  expect(length.length_m).toBe(54);
  expect(length.runs.map(({ name }) => name)).toEqual(['a <-> b', 'b <-> c', 'b <-> c']);
});

test('within one place the computed length is twice the slack', () => {
  expect(lengthOf('link l na.net1 <-> na2.net1 over cat6a')).toMatchObject({
    length_m: 4,
    from: 'runs',
    runs: [],
  });
});

test('a stated length has no slack added, and still lies in the runs', () => {
  const length = lengthOf('link l na.net1 <-> nc.net1 over cat6a 50 m');
  expect(length).toMatchObject({ length_m: 50, from: 'stated', planned_m: 50 });
  expect(length.runs).toHaveLength(2);
});

test('a measured link beats a measured run, a measured run beats a stated length', () => {
  expect(lengthOf('link l na.net1 <-> nb.net1 over cat6a 50 m', 'measured a <-> b 12 m')).toMatchObject({
    length_m: 16,
    from: 'measured',
    planned_m: 50,
  });
  expect(
    lengthOf('link l na.net1 <-> nb.net1 over cat6a 50 m', 'measured a <-> b 12 m', 'measured l 48 m'),
  ).toMatchObject({ length_m: 48, from: 'measured', planned_m: 50 });
});

// Measured at 30 m, a-b is no longer the shorter way: 30 + 20 = 50 against 35 straight.
test('a measured run can change the shortest chain, the planned length stays what it was', () => {
  const length = lengthOf('link l na.net1 <-> nc.net1 over cat6a', 'measured b <-> a 30 m');
  expect(length).toMatchObject({ length_m: 39, from: 'runs', planned_m: 34 });
  expect(length.runs.map(({ name }) => name)).toEqual(['a <-> c']);
});

test('a link can be measured by its two ends, either way round', () => {
  const { links } = analysisOf(
    hall,
    'link na.net1 <-> nb.net1 over cat6a',
    'measured nb.net1 -> na.net1 13 m',
  );
  expect(links[0]!.length).toMatchObject({ length_m: 13, from: 'measured', planned_m: 14 });
});

test('the cable of a source is measured by its name', () => {
  const { links, measurements } = analysisOf(
    hall,
    'source cam at a sends 1080p50 as sdi_3g into na.in1 over rg6 9 m',
    'measured cam 11 m',
  );
  expect(links[0]!.length).toMatchObject({ length_m: 11, from: 'measured', planned_m: 9 });
  expect(measurements[0]!.useless).toBeUndefined();
});

test('why no length is known', () => {
  expect(lengthOf('link l na.net1 <-> nd.net1 over cat6a')).toMatchObject({
    length_m: undefined,
    missing: 'no run',
  });
  expect(lengthOf('node nx : edge_box', 'link l na.net1 <-> nx.net1 over cat6a').missing).toBe('no place');
  const bare = analysisOf(hall.replace('{ slack 2 m }', ''), 'link l na.net1 <-> na2.net1 over cat6a');
  expect(linkOf(bare, 'l').length).toMatchObject({ length_m: undefined, missing: 'no slack' });
});

test('a shared sheath has one length, that of its first link', () => {
  const analysis = analysisOf(
    hall,
    'link third na.in1 -> nb.out1 shares second',
    'link first na.net1 <-> nb.net1 over os2 70 m',
    'link second na.net2 <-> nb.net2 over os2 99 m shares first',
  );
  const [third, first, second] = ['third', 'first', 'second'].map((name) => linkOf(analysis, name));
  expect([third!.sheath, first!.sheath, second!.sheath]).toEqual([first, first, first]);
  expect([third, second].map((link) => link!.length.length_m)).toEqual([70, 70]);
});

test('sheaths that share in a circle are told and cut', () => {
  const analysis = analysisOf(
    hall,
    'link x na.net1 <-> nb.net1 over os2 1 m shares y',
    'link y na.net2 <-> nb.net2 over os2 2 m shares x',
  );
  expect(analysis.cycles.map(({ kind }) => kind)).toEqual(['shares']);
  expect(analysis.links.map(({ length }) => length.length_m)).toEqual([1, 2]);
});

test('the hottest run counts for the whole cable', () => {
  const { length } = linkOf(
    analysisOf(hall, 'run c <-> d 5 m at 45 C', 'link l na.net1 <-> nd.net1 over cat6a'),
    'l',
  );
  expect(length.temperature_c).toBe(45);
});

test('useless measurements are told apart', () => {
  const { measurements } = analysisOf(
    hall,
    'link l na.net1 <-> nb.net1 over cat6a',
    'measured l 10 m',
    'measured l 11 m',
    'measured na 3 m',
    'measured a <-> d 3 m',
    'measured cam -> screen 2 frames',
  );
  expect(measurements.map(({ useless }) => useless)).toEqual([
    undefined,
    'measured before',
    'wrong quantity',
    'matches nothing',
    'matches nothing',
  ]);
});
