import { expect, test } from 'vitest';
import { cableChoices } from '../../src/analysis/cable-choices.ts';
import { analysisOf, kits, linkOf } from './plans.ts';

const house = `${kits}
kit box_12g { inputs in1 as sdi_12g outputs out1 as sdi_12g }
node a : edge_box
node b : edge_box
node big_a : box_12g
node big_b : box_12g
node patch_a : patch_4
node patch_b : patch_4
`;

const reachOf = (...statements: string[]) => {
  const analysis = analysisOf(house, ...statements);
  return analysis.reaches[linkOf(analysis, 'l').chain.index]!;
};
const verdicts = (write: (length: string) => string, ...lengths: string[]) =>
  lengths.map((length) => reachOf(write(length)).verdict);

// RG-6 class: 78 m of 3G and 113 m of HD at 20 dB (trade article of 2020, published); beyond 90 % of it near (70.2 m).
test('coax reaches as far as its loss allows, and is near its limit beyond 90 %', () => {
  expect(verdicts((m) => `link l a.out1 -> b.in1 over rg6 ${m}`, '70 m', '71 m', '78 m', '79 m')).toEqual([
    'good',
    'near the limit',
    'near the limit',
    'beyond',
  ]);
  const reach = reachOf('link l a.out1 -> b.in1 over rg6 39 m');
  expect(reach.reach_m).toBeCloseTo(78, 6);
  expect(reach.loss_db).toBeCloseTo(10, 6);
  expect(reach).toMatchObject({ loss_limit_db: 20, decidedBy: 'loss', frequency_hz: 1485e6 });
  expect(reach.share).toBeCloseTo(0.5, 9);
});

// 1080i is HD: 20 dB after 113 m of RG-6 class (the same article). The limit itself is still within it, whatever binary
// fractions make of 113 x 20 / 113.
test('a cable that is exactly as long as it may be is not too long', () => {
  const lines = (length: string) => [
    'source s sends 1080i50 as sdi_3g into a.in2 over rg6 1 m',
    `link l a.loop2 -> b.in1 over rg6 ${length}`,
    'feed s -> b.in1',
  ];
  expect(reachOf(...lines('113 m')).verdict).toBe('near the limit');
  expect(reachOf(...lines('113 m')).share).toBe(1);
  expect(reachOf(...lines('113.1 m')).verdict).toBe('beyond');
});

// 6G alone would reach 107 m at 40 dB, 3G 78 m at 20 dB: never more than a slower one (rule 5 of numbers).
test('a faster interface is never given more reach than a slower one', () => {
  const fast = reachOf('link l big_a.out1 -> big_b.in1 over rg6 10 m');
  // 12G: 40 dB / 55.46 dB per 100 m = 72.1 m (numbers W3.5), below the 78 m of 3G.
  expect(fast.judgedAs?.name).toBe('sdi_12g');
  expect(fast.reach_m).toBeCloseTo(72.1, 0);
  const six = reachOf(
    'kit k6 { inputs in1 as sdi_6g outputs out1 as sdi_6g } node x : k6 node y : k6',
    'link l x.out1 -> y.in1 over rg6 10 m',
  );
  expect(six.reach_m).toBeCloseTo(78, 6);
  expect(six).toMatchObject({ frequency_hz: 1485e6, loss_limit_db: 20 });
});

test('coax is judged at the fastest picture that it carries in any segment', () => {
  const judgedAs = (format: string, ...more: string[]) =>
    reachOf(
      `source cam sends ${format} as sdi_12g into p.in1`,
      'kit passing { inputs in1 as sdi_12g outputs out1 as sdi_12g follow in1 }',
      'node p : passing',
      'link l p.out1 -> big_b.in1 over rg6 75 m',
      'feed cam -> big_b.in1',
      ...more,
    );
  expect(judgedAs('1080p50')).toMatchObject({ judgedAs: { name: 'sdi_3g' }, verdict: 'near the limit' });
  expect(judgedAs('1080p25')).toMatchObject({ judgedAs: { name: 'sdi_hd' }, verdict: 'good' });
  expect(judgedAs('2160p50')).toMatchObject({ judgedAs: { name: 'sdi_12g' }, verdict: 'beyond' });
});

// 40 m of RG-11 class (17.7 dB per 100 m at 1485 MHz) and 2 + 3 m of RG-59 class (32.7): 7.08 + 1.635 dB.
test('losses of joined cables are summed between the two active ports', () => {
  const reach = reachOf(
    'link l a.out1 -> patch_a.front1 over rg59 2 m',
    'link tie patch_a.rear1 <-> patch_b.front1 over rg11 40 m',
    'link far patch_b.rear1 -> b.in1 over rg59 3 m',
  );
  expect(reach.loss_db).toBeCloseTo(7.08 + 1.635, 1);
  expect(reach.fromMemory).toBe(true);
});

// Cat 6 at 10 Gb/s: 37 m good, to 55 m doubtful, beyond an error; screened 100 m (TIA TSB-155-A, second-hand).
test('Cat 6 is good to 37 m, doubtful to 55 m, beyond that it does not work, unless it is screened', () => {
  expect(verdicts((m) => `link l a.net1 <-> b.net1 over cat6 ${m}`, '37 m', '38 m', '55 m', '56 m')).toEqual([
    'good',
    'doubtful',
    'doubtful',
    'beyond',
  ]);
  expect(reachOf('link l a.net1 <-> b.net1 over cat6_screened 90 m').verdict).toBe('good');
});

// All stranded, 20 % more loss: (90 + 10 x 1.2) / 1.2 = 85 m (numbers 5.1, derived).
test('a long stranded cord reaches less', () => {
  const cord = 'cable cord { like cat6a stranded 20 % }';
  expect(reachOf(cord, 'link l a.net1 <-> b.net1 over cord 80 m').reach_m).toBeCloseTo(85, 6);
  expect(reachOf(cord, 'link l a.net1 <-> b.net1 over cord 86 m').verdict).toBe('beyond');
});

// TIA-568-C.2 6.4.7 (second-hand): 0.4 % per degree above 20: 40 C divides by 1.08, so 100 m become 92.6 m.
test('a warm run shortens the whole cable', () => {
  const warm = [
    'place x',
    'place y',
    'run x <-> y 90 m at 40 C',
    'node wx : edge_box at x',
    'node wy : edge_box at y',
  ];
  const reach = reachOf(...warm, 'link l wx.net1 <-> wy.net1 over cat6a 93 m');
  expect(reach.reach_m).toBeCloseTo(100 / 1.08, 6);
  expect(reach).toMatchObject({ verdict: 'beyond', temperature_c: 40 });
  const hot = reachOf(
    ...warm.map((line) => line.replace('40 C', '75 C')),
    'link l wx.net1 <-> wy.net1 over cat6a 60 m',
  );
  expect(hot.verdict).toBe('doubtful');
});

// Numbers W5.1: 150 m of OM3 with four connections: 0.45 + 3 = 3.45 dB against 2.6: too much although 150 m is inside 300.
test('on fibre reach and loss must both hold', () => {
  const four = reachOf('link l a.net1 <-> b.net1 over om3 150 m connections 4');
  expect(four).toMatchObject({ verdict: 'beyond', decidedBy: 'loss', loss_limit_db: 2.6 });
  expect(four.loss_db).toBeCloseTo(3.45, 6);
  // Two connections, the default: 0.45 + 1.5 = 1.95 dB.
  const two = reachOf('link l a.net1 <-> b.net1 over om3 150 m');
  expect(two.verdict).toBe('good');
  expect(two.loss_db).toBeCloseTo(1.95, 6);
  // Numbers W5.3: 2 km of OS2 and a splice: 0.8 + 1.5 + 0.3 = 2.6 dB of 6.2.
  const long = reachOf('link l a.net1 <-> b.net1 over os2 2 km splices 1 as ethernet_10g_lr');
  expect(long.loss_db).toBeCloseTo(2.6, 6);
  expect(long.verdict).toBe('good');
});

test('what is not known is not judged', () => {
  for (const statement of [
    'link l a.net1 <-> b.net1 over cat6a',
    'link l a.net1 <-> b.net1',
    'link l a.out1 -> b.in1 over cat6a 5 m',
    'cable odd { medium coax } link l a.out1 -> b.in1 over odd 5 m',
  ]) {
    expect(reachOf(statement).verdict).toBe('not known');
  }
  expect(reachOf('link l a.net1 <-> b.net1 over cat6a').reach_m).toBe(100);
});

test('which cables would do, those that reach first', () => {
  const choices = (statement: string) => {
    const analysis = analysisOf(house, statement);
    return cableChoices(analysis, linkOf(analysis, 'l')).map(
      ({ cable, reach }) => `${cable.name} ${reach.verdict}`,
    );
  };
  expect(choices('link l a.out1 -> b.in1 over rg59 65 m')).toEqual(['rg6 good', 'rg11 good', 'rg59 beyond']);
  const network = choices('link l a.net1 <-> b.net1 over cat6 50 m');
  expect(network).toContain('cat6a good');
  expect(network).toContain('cat6 doubtful');
  expect(network).toContain('dac_copper beyond');
  expect(network.indexOf('cat6 doubtful')).toBeGreaterThan(network.indexOf('os2 good'));
  // Cat 5e would slow the sockets down, so it is not offered.
  expect(network.join()).not.toContain('cat5e');
});
