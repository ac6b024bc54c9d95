import { expect, test } from 'vitest';
import { poweredBy, poweringOf } from '../../src/analysis/circuit-loads.ts';
import { analysisOf } from './plans.ts';

const kits = `
kit box { inputs in1 network net as ethernet_1g_t draws 18 W }
kit screen { draws 100 W }
kit poe_switch { network net[1..4] as ethernet_1g_t forwards draws 20 W supplies poe 30 W per port, 50 W in all }
kit head { network net as ethernet_1g_t poe class 4 carries uncompressed }
kit small_head { network net as ethernet_1g_t poe class 3 draws 6 W carries uncompressed }
`;
const loadsOf = (...statements: string[]) =>
  poweringOf(analysisOf(kits, ...statements)).circuits.map(
    ({ circuit, load_w }) => `${circuit.name} ${load_w}`,
  );

// 230 V x 16 A x 80 % = 2944 W; 120 V x 20 A x 80 % = 1920 W (numbers 9 and W9.1; NEC 210.20(A), second-hand).
test('a continuous load stays at or below 80 % of the breaker', () => {
  const { circuits } = poweringOf(
    analysisOf(
      kits,
      'circuit a 16 A 230 V',
      'circuit b 20 A 120 V',
      'circuit c 10 A',
      'node n : box powered by a',
    ),
  );
  expect(circuits.map(({ limit_w }) => limit_w)).toEqual([2944, 1920, undefined]);
  expect(circuits[0]!.share).toBeCloseTo(18 / 2944, 12);
});

test('several circuits of one thing share equally', () => {
  expect(
    loadsOf(
      'circuit a 16 A 230 V',
      'circuit b 16 A 230 V',
      'node n : box powered by a, b',
      'destination d : screen powered by b',
    ),
  ).toEqual(['a 9', 'b 109']);
});

// house feeds stage, stage feeds left and right: 18 + 100 + 18 + 18 = 154 W at the top.
test('what a circuit feeds adds to it, and so on up', () => {
  expect(
    loadsOf(
      'circuit left 16 A 230 V from stage',
      'circuit right 16 A 230 V from stage',
      'circuit stage 32 A 230 V from house',
      'circuit house 63 A 400 V',
      'node a : box powered by left',
      'destination d : screen powered by left',
      'node b : box powered by right',
      'node c : box powered by stage',
    ),
  ).toEqual(['left 118', 'right 18', 'stage 154', 'house 154']);
});

test('circuits that feed each other are cut, a long row of them is no trouble', () => {
  const circle = analysisOf(
    kits,
    'circuit a 16 A 230 V from b',
    'circuit b 16 A 230 V from a',
    'node n : box powered by a',
  );
  expect(circle.cycles.map(({ kind }) => kind)).toEqual(['from']);
  expect(poweringOf(circle).circuits.map(({ load_w }) => load_w)).toEqual([18, 0]);
  const row = Array.from({ length: 3000 }, (_, i) => `circuit c${i} 16 A 230 V from c${i + 1}`);
  const { circuits } = poweringOf(
    analysisOf(kits, ...row, 'circuit c3000 16 A 230 V', 'node n : box powered by c0'),
  );
  expect(circuits[3000]!.load_w).toBe(18);
});

// Numbers W6.5: 25.5 W at 50 m, 6.25 ohm (half of 12.5), from 50 V: the supply gives 27.37 W, 46.6 V arrive.
test('over the network by class and length; the supply gives what the cable keeps, too', () => {
  const { network, circuits } = poweringOf(
    analysisOf(
      kits,
      'circuit a 16 A 230 V',
      'node s : poe_switch powered by a',
      'node h : head',
      'link s.net1 <-> h.net over cat6a 50 m',
    ),
  );
  const [power] = network.powers;
  expect(power).toMatchObject({ poeClass: 4, setAside_w: 30, device_w: 25.5, allowed_w: 25.5 });
  expect(power!.supply.text).toBe('s.net1');
  expect(power!.supply_w).toBeCloseTo(27.37, 2);
  expect(power!.device_v).toBeCloseTo(46.6, 1);
  // The watts really supplied count on the switch's own circuit: 20 + 27.37.
  expect(circuits[0]!.load_w).toBeCloseTo(47.37, 2);
});

test('the class counts against the port and against all of the supply', () => {
  const { network } = poweringOf(
    analysisOf(
      kits,
      'kit big_head { network net as ethernet_1g_t poe class 6 }',
      'node s : poe_switch',
      'node h : head',
      'node i : small_head',
      'node j : big_head',
      'link s.net1 <-> h.net over cat6 5 m',
      'link i.net <-> s.net2 over cat6 5 m',
      'link s.net3 <-> j.net over cat6 5 m',
    ),
  );
  const [supply] = network.supplies;
  // Classes 4, 3 and 6: 30 + 15.4 + 60 W set aside (IEEE 802.3 class table, second-hand).
  expect(supply).toMatchObject({ perPort_w: 30, inAll_w: 50, setAside_w: 105.4 });
  expect(supply!.portsOver.map(({ device }) => device.name)).toEqual(['j']);
});

test('a circuit, a fibre or a standby feeds nothing over the network, a patch field lets it through', () => {
  const fed = (...statements: string[]) =>
    poweringOf(
      analysisOf(kits, 'circuit a 16 A 230 V', 'node s : poe_switch', ...statements),
    ).network.powers.map(({ device, link }) => `${device.name} ${link.name}`);
  expect(fed('node h : head powered by a', 'link l s.net1 <-> h.net over cat6 5 m')).toEqual([]);
  expect(fed('node h : head', 'link l s.net1 <-> h.net over om4 5 m')).toEqual([]);
  expect(
    fed(
      'node h : head',
      'node i : head',
      'link m s.net2 <-> i.net over cat6 5 m',
      'link l s.net1 <-> h.net over cat6 5 m standby for m',
    ),
  ).toEqual(['i m']);
  expect(
    fed(
      'kit data_patch { joins f1 with r1 as ethernet_1g_t }',
      'node p : data_patch',
      'node h : head',
      'link l s.net1 <-> p.f1 over cat6 5 m',
      'link k p.r1 <-> h.net over cat6 40 m',
    ),
  ).toEqual(['h l']);
});

test('the first powering link in order of statements feeds a thing', () => {
  const analysis = analysisOf(
    kits,
    'node s : poe_switch',
    'node t : poe_switch',
    'kit twin { network net[1..2] as ethernet_1g_t poe class 3 }',
    'node h : twin',
    'link t.net1 <-> h.net2 over cat6 5 m',
    'link s.net1 <-> h.net1 over cat6 5 m',
  );
  const powering = poweringOf(analysis);
  expect(poweredBy(analysis.nodes.get('h')!, powering)).toEqual({ kind: 'network', name: 't.net1' });
  expect(poweredBy(analysis.nodes.get('s')!, powering)).toEqual({ kind: 'none', name: undefined });
});

test('what draws power and is fed by nothing', () => {
  const { unpowered } = poweringOf(
    analysisOf(
      kits,
      'circuit a 16 A 230 V',
      'node n : box',
      'node m : box powered by a',
      'node o : box powered by gone',
      'destination d : screen',
      'destination e',
    ),
  );
  expect(unpowered.map(({ name }) => name)).toEqual(['n', 'd']);
});

test('watts by place', () => {
  const { places } = poweringOf(
    analysisOf(
      kits,
      'place hall',
      'place foyer',
      'node n : box at hall',
      'destination d : screen at hall',
      'node m : box',
    ),
  );
  expect(places.map(({ place, load_w }) => `${place.name} ${load_w}`)).toEqual(['hall 118']);
});
