import { expect, test } from 'vitest';
import { analysisOf, kits, linkOf } from './plans.ts';

const two = `${kits}
node a : edge_box
node b : edge_box
node mix : mixer_4
node patch_a : patch_4
node patch_b : patch_4
`;

const chainOf = (...statements: string[]) => linkOf(analysisOf(two, ...statements), 'l').chain;

test('the fastest interface that both ends accept and the cable lists', () => {
  expect(chainOf('link l a.net1 <-> b.net1 over cat6a 5 m').interface?.name).toBe('ethernet_10g_t');
  expect(chainOf('link l a.net1 <-> b.net1 over os2 5 m').interface?.name).toBe('ethernet_10g_lr');
  expect(chainOf('link l a.out1 -> b.in1 over rg6 5 m').interface?.name).toBe('sdi_3g');
  expect(chainOf('link l a.out1 -> b.in1 over rg6 5 m').capacity_bits_per_second).toBe(2.97e9);
});

// 10GBASE-SR reaches 33 m of OM1, 10GBASE-LRM 220 m; 10GBASE-LR 10 km of OS2, 10GBASE-ER 40 km (IEEE 802.3 clauses 52
// and 68, second-hand, as the library states them).
test('of equally fast ones the first that reaches, else the one that reaches furthest', () => {
  const over = (cable: string) => chainOf(`link l a.net1 <-> b.net1 over ${cable}`).interface?.name;
  expect(over('om1 30 m')).toBe('ethernet_10g_sr');
  expect(over('om1 100 m')).toBe('ethernet_10g_lrm');
  expect(over('os2 9 km')).toBe('ethernet_10g_lr');
  expect(over('os2 12 km')).toBe('ethernet_10g_er');
  expect(over('os2 90 km')).toBe('ethernet_10g_er');
});

test('without a cable it is what the ports themselves are', () => {
  expect(chainOf('link l a.net1 <-> b.net1').interface?.name).toBe('ethernet_10g');
});

test('`as` pins one of those in common', () => {
  expect(chainOf('link l a.net1 <-> b.net1 over os2 5 m as ethernet_10g_lr').interface?.name).toBe(
    'ethernet_10g_lr',
  );
  const wrong = chainOf('link l a.net1 <-> b.net1 over os2 5 m as ethernet_100g_lr4');
  expect(wrong.interfaceFault).toMatchObject({ kind: 'pinned one not possible' });
});

test('a slower rate that the cable forces is told', () => {
  const chain = chainOf('link l a.net1 <-> b.net1 over cat5e 5 m');
  expect(chain.interface?.name).toBe('ethernet_1g_t');
  expect(chain.slowedFrom?.rate_bits_per_second).toBe(10e9);
  expect(chain.interfaceFault).toBeUndefined();
});

test('nothing in common, or nothing that the cable lists, is told with what there is', () => {
  const hdmi = 'kit laptop_box { inputs in1 as hdmi_1_4 } node h : laptop_box';
  expect(chainOf(hdmi, 'link l a.out1 -> h.in1 over rg6 5 m').interfaceFault).toMatchObject({
    kind: 'nothing in common',
  });
  const wrong = chainOf('link l a.out1 -> b.in1 over cat6a 5 m');
  expect(wrong.interfaceFault).toMatchObject({ kind: 'not on this cable' });
  expect(wrong.interface?.name).toBe('sdi_3g');
});

test('which way a link carries, and what is wrong with how it is written', () => {
  const analysis = analysisOf(
    two,
    'link l1 a.out1 -> b.in1 over rg6 1 m',
    'link l2 a.in2 -> b.out2 over rg6 1 m',
    'link l3 a.out3 <-> b.in3 over rg6 1 m',
    'link l4 a.net1 <-> b.net1 over cat6a 1 m',
    'link l5 a.net2 -> b.net2 over cat6a 1 m',
    'link l6 a.out4 -> patch_a.front1 over rg6 1 m',
    'link l7 mix.out1 -> mix.out2 over rg6 1 m',
    'link l8 a.loop1 -> b.net2 over rg6 1 m',
    'link l9 patch_a.front3 <-> patch_a.front3 over rg6 1 m',
  );
  const said = analysis.links.map(
    ({ carriesForward, carriesBackward, directionFault }) =>
      `${carriesForward ? '>' : ''}${carriesBackward ? '<' : ''} ${directionFault ?? ''}`,
  );
  expect(said).toEqual([
    '> ',
    ' from an input',
    '> both ways on a one-way port',
    '>< ',
    '> ',
    '> ',
    ' to an output',
    ' a network port with another kind of port',
    ' onto itself',
  ]);
});

test('cables between two active ports count as one, in the order from the sending end', () => {
  const { chains, links } = analysisOf(
    two,
    'link far patch_b.rear2 -> b.in1 over rg6 3 m',
    'link tie patch_a.rear1 <-> patch_b.front2 over rg11 40 m',
    'link near a.out1 -> patch_a.front1 over rg59 2 m',
  );
  expect(chains).toHaveLength(1);
  const [chain] = chains;
  expect(chain!.links.map(({ name }) => name)).toEqual(['near', 'tie', 'far']);
  expect(chain!.length_m).toBe(45);
  expect(chain!.interface?.name).toBe('sdi_3g');
  expect(links.map(({ directionFault }) => directionFault)).toEqual([undefined, undefined, undefined]);
  expect(links.map(({ carriesForward }) => carriesForward)).toEqual([true, true, true]);
});

test('a patched network link is a network link, and what a join is made for counts', () => {
  const patch = 'kit data_patch { joins f[1..2] with r[1..2] as ethernet_1g_t } node p : data_patch';
  const { chains, links } = analysisOf(
    two,
    patch,
    'link l a.net1 <-> p.f1 over cat6a 5 m',
    'link m p.r1 <-> b.net1 over cat6a 60 m',
  );
  expect(links.map(({ network }) => network)).toEqual([true, true]);
  expect(chains[0]!.interface?.name).toBe('ethernet_1g_t');
});

test('joins that lead round in a circle end somewhere', () => {
  const { chains } = analysisOf(
    two,
    'link x patch_a.front1 <-> patch_a.rear2 over rg6 1 m',
    'link y patch_a.front2 <-> patch_a.rear1 over rg6 1 m',
  );
  expect(chains.map(({ links }) => links.length)).toEqual([2]);
});

test('a port with two cables is told, but not for a standby that waits there', () => {
  const { portsTaken } = analysisOf(
    two,
    'link l a.net1 <-> b.net1 over cat6a 5 m',
    'link spare a.net1 <-> b.net1 over cat6a 5 m standby for l',
    'link other a.net1 <-> b.net2 over cat6a 5 m',
  );
  expect(portsTaken.map(({ port, links }) => [port.text, links.map(({ name }) => name)])).toEqual([
    ['a.net1', ['l', 'other']],
  ]);
});

test('a name from its ends for links without one', () => {
  const { links } = analysisOf(
    two,
    'link a.out1 -> b.in1',
    'source cam sends 1080p50 as sdi_3g into a.in1',
    'destination screen from b.out1',
    'link x.y -> b.in2',
  );
  expect(links.map(({ name, named }) => [name, named])).toEqual([
    ['a.out1>b.in1', false],
    ['cam>a.in1', false],
    ['b.out1>screen', false],
    ['x.y>b.in2', false],
  ]);
});

test('standbys for each other in a circle are told and cut', () => {
  const { cycles, links } = analysisOf(
    two,
    'link x a.net1 <-> b.net1 standby for y',
    'link y a.net2 <-> b.net2 standby for x',
  );
  expect(cycles.map(({ kind }) => kind)).toEqual(['standby for']);
  expect(links.map(({ standbyFor }) => standbyFor)).toEqual([undefined, undefined]);
});
