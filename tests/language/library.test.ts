/**
 * The shipped library against published tables. The values here were typed from the tables named beside them, not
 * from the library. Where a table was not read in the standard itself but in a public document that quotes it, the
 * row says "second-hand"; where it is remembered, the library must say so too.
 */
import { describe, expect, test } from 'vitest';
import { budgetReach_m, coaxLoss_db_per_m, fitCoaxLoss } from '../../src/physics/coax.ts';
import type { CableFact, InterfaceFact, ReachFact } from '../../src/plan/facts.ts';
import { readLibrary } from '../../src/plan/library/read.ts';

const files = readLibrary('file:///library');
const statements = files.flatMap((file) => file.statements);
const cables = new Map<string, CableFact>();
const interfaces = new Map<string, InterfaceFact>();
for (const { fact } of statements) {
  if (fact.kind === 'cable') cables.set(fact.name, fact);
  if (fact.kind === 'interface') interfaces.set(fact.name, fact);
}

function cable(name: string): CableFact {
  const found = cables.get(name);
  if (!found) throw new Error(`The library has no cable ${name}`);
  return found;
}

function face(name: string): InterfaceFact {
  const found = interfaces.get(name);
  if (!found) throw new Error(`The library has no interface ${name}`);
  return found;
}

function reachOf(name: string, over: string): ReachFact | undefined {
  const found = face(name).reaches.filter((reach) => reach.cable === over);
  expect(found.length, `${name} over ${over} is stated once at most`).toBeLessThanOrEqual(1);
  return found[0];
}

/** Everything that an interface takes, by `accepts` of `accepts`. */
function acceptedBy(name: string): Set<string> {
  const accepted = new Set([name]);
  for (const one of accepted) for (const next of face(one).accepts) accepted.add(next);
  return accepted;
}

describe('the library as a text', () => {
  test('reads without a complaint', () => {
    expect(files.flatMap((file) => file.unreadables)).toEqual([]);
    expect(statements.flatMap((statement) => statement.faults)).toEqual([]);
    expect(statements.every(({ fact }) => fact.kind === 'cable' || fact.kind === 'interface')).toBe(true);
  });

  test('declares each name once and speaks of nothing that it does not declare', () => {
    expect(cables.size + interfaces.size).toBe(statements.length);
    const spokenOf = [...interfaces.values()].flatMap((one) => one.reaches.map((reach) => reach.cable));
    const likes = [...cables.values()].flatMap((one) => one.like ?? []);
    for (const name of [...spokenOf, ...likes]) expect(cables.has(name), name).toBe(true);
    const accepts = [...interfaces.values()].flatMap((one) => one.accepts);
    for (const name of accepts) expect(interfaces.has(name), name).toBe(true);
  });

  test('says of every statement what it is', () => {
    for (const statement of statements) {
      const { name } = statement.fact as CableFact | InterfaceFact;
      expect(statement.label, name).toMatch(/\w/);
      expect(statement.description, name).toMatch(/\.$/);
    }
  });

  test('names the source of every limit, and its label where it is not from memory', () => {
    const limits = [
      ...[...interfaces.values()].flatMap((one) => [...one.reaches, ...one.budgets]),
      ...[...cables.values()].flatMap((one) => one.losses),
    ];
    expect(limits.length).toBeGreaterThan(60);
    for (const { source, fromMemory, ...limit } of limits) {
      expect(source).toMatch(/\w/);
      if (!fromMemory && !('lossFromMemory' in limit && limit.lossFromMemory))
        expect(source).toMatch(/published$|second-hand$|derived$|common practice(, no source)?$/);
    }
  });
});

describe('twisted pair', () => {
  // IEEE 802.3 clauses 40 and 55, 802.3bq clause 113 (second-hand: kb.wisc.edu/ns/page.php?id=7829, makers' notes).
  // 10GBASE-T on Cat 6: TIA TSB-155-A (second-hand), which lets an overall screen off the limit.
  // 2.5 and 5 Gb/s: IEEE 802.3 clause 126 (from memory).
  test.each([
    ['ethernet_1g_t', 'cat5e', 100, undefined],
    ['ethernet_1g_t', 'cat6', 100, undefined],
    ['ethernet_1g_t', 'cat6a', 100, undefined],
    ['ethernet_2g5_t', 'cat5e', 100, undefined],
    ['ethernet_2g5_t', 'cat6', 100, undefined],
    ['ethernet_2g5_t', 'cat6a', 100, undefined],
    ['ethernet_5g_t', 'cat5e', 100, undefined],
    ['ethernet_5g_t', 'cat6', 100, undefined],
    ['ethernet_5g_t', 'cat6a', 100, undefined],
    ['ethernet_10g_t', 'cat6', 55, 37],
    ['ethernet_10g_t', 'cat6_screened', 100, undefined],
    ['ethernet_10g_t', 'cat6a', 100, undefined],
    ['ethernet_25g_t', 'cat8', 30, undefined],
    ['ethernet_40g_t', 'cat8', 30, undefined],
  ])('%s over %s reaches %d m', (name, over, length_m, good_m) => {
    expect(reachOf(name, over)).toMatchObject({ length_m });
    expect(reachOf(name, over)?.good_m).toBe(good_m);
  });

  // Common practice, no source: some links run, the standard has none. It must be no reach at all.
  test('10 Gb/s over Cat 5e is not offered', () => {
    expect(reachOf('ethernet_10g_t', 'cat5e')).toBeUndefined();
    expect(cable('cat5e').like).toBeUndefined();
  });

  // Printed table after TIA-568: 5.38 ns per metre at 100 MHz (second-hand: what-when-how.com, LAN wiring, table 12.7).
  // Public cable note: conductors of 9.38 ohm per 100 m at most (second-hand).
  test.each(['cat5e', 'cat6', 'cat6a'])('%s delays 538 ns and resists 9.38 ohm in 100 m', (name) => {
    expect(cable(name).delay_s_per_m).toBeCloseTo(538e-9 / 100, 15);
    expect(cable(name).resistance_ohm_per_m).toBeCloseTo(0.0938, 12);
  });

  test('screens stand where the name says so', () => {
    expect(cable('cat6_screened').screened).toBe(true);
    expect(cable('cat6').screened).toBe(false);
    expect(cable('cat6a').screened).toBe(false);
  });
});

describe('fibre', () => {
  // Reach and channel insertion loss, IEEE 802.3-2018 and 2022 by clause (second-hand: a test-equipment maker's tables
  // after TIA-568.3-D, ethernetalliance.org for OM4, tiafotc.org for 40GBASE-LR4, ieee802.org reflector for ER,
  // tiproom.net for LX, easymanua.ls manual 727510 p. 165 for SX, manualshive.com manual 3026758 p. 56 for LRM).
  // The last column: the loss, or all of it, is from memory.
  test.each([
    ['ethernet_1g_sx', 'om1', 275, 2.6, false],
    ['ethernet_1g_sx', 'om2', 550, 3.56, false],
    ['ethernet_1g_lx', 'om1', 550, 2.35, true],
    ['ethernet_1g_lx', 'om2', 550, 2.35, true],
    ['ethernet_1g_lx', 'os2', 5000, 4.57, true],
    ['ethernet_10g_sr', 'om1', 33, 2.4, false],
    ['ethernet_10g_sr', 'om2', 82, 2.3, false],
    ['ethernet_10g_sr', 'om3', 300, 2.6, false],
    ['ethernet_10g_sr', 'om4', 400, 2.9, false],
    ['ethernet_10g_lrm', 'om1', 220, 1.9, false],
    ['ethernet_10g_lrm', 'om2', 220, 1.9, false],
    ['ethernet_10g_lrm', 'om3', 220, 1.9, false],
    ['ethernet_10g_lr', 'os2', 10_000, 6.2, false],
    ['ethernet_10g_er', 'os2', 40_000, 11, false],
    ['ethernet_25g_sr', 'om3', 70, 1.8, true],
    ['ethernet_25g_sr', 'om4', 100, 1.9, false],
    ['ethernet_25g_sr', 'om5', 100, 1.9, true],
    ['ethernet_25g_lr', 'os2', 10_000, 6.3, true],
    ['ethernet_40g_sr4', 'om3', 100, 1.9, true],
    ['ethernet_40g_sr4', 'om4', 150, 1.5, false],
    ['ethernet_40g_lr4', 'os2', 10_000, 6.7, false],
    ['ethernet_100g_sr4', 'om3', 70, 1.8, true],
    ['ethernet_100g_sr4', 'om4', 100, 1.9, false],
    ['ethernet_100g_sr4', 'om5', 100, 1.9, true],
    ['ethernet_100g_dr', 'os2', 500, 3, true],
    ['ethernet_100g_lr4', 'os2', 10_000, 6.3, false],
  ])('%s over %s reaches %d m with %d dB', (name, over, length_m, loss_db, fromMemory) => {
    expect(reachOf(name, over)).toMatchObject({ length_m, loss_db, lossFromMemory: fromMemory });
  });

  // IEEE 802.3 table 52-24: 30 km unless the link is engineered (second-hand: ieee802.org/3/100GNGOPTX/email/msg00583).
  test('10GBASE-ER is good to 30 km', () => {
    expect(reachOf('ethernet_10g_er', 'os2')?.good_m).toBe(30_000);
  });

  // Derived: the standards' losses are the fibre's loss at the full reach (3.5 dB per km multimode; IEEE 802.3
  // table 38-12, second-hand) and the connectors' allowance (1.5 dB; 1.0 dB for 40GBASE-SR4 on OM4).
  test.each([
    ['ethernet_10g_sr', 'om3', 3.5, 1.5],
    ['ethernet_10g_sr', 'om4', 3.5, 1.5],
    ['ethernet_25g_sr', 'om4', 3.5, 1.5],
    ['ethernet_40g_sr4', 'om3', 3.5, 1.5],
    ['ethernet_40g_sr4', 'om4', 3.5, 1],
    ['ethernet_100g_sr4', 'om3', 3.5, 1.5],
    ['ethernet_25g_lr', 'os2', 0.43, 2],
    ['ethernet_40g_lr4', 'os2', 0.47, 2],
    ['ethernet_100g_lr4', 'os2', 0.43, 2],
  ])(
    'the loss of %s over %s is that of its length and connectors',
    (name, over, db_per_km, connectors_db) => {
      const { length_m = 0, loss_db = 0 } = reachOf(name, over) ?? {};
      expect(Math.abs(loss_db - (length_m / 1000) * db_per_km - connectors_db)).toBeLessThan(0.06);
    },
  );

  // TIA-568.3-D highest losses (second-hand: open calculators; OM3 to OM5 from memory); OS2: ISO/IEC 11801-1:2017
  // (second-hand: vti.net.au/node/12611).
  test.each([
    ['om1', 850, 3.5, false],
    ['om1', 1300, 1.5, false],
    ['om2', 850, 3.5, false],
    ['om2', 1300, 1.5, false],
    ['om3', 850, 3, true],
    ['om3', 1300, 1.5, true],
    ['om4', 850, 3, true],
    ['om4', 1300, 1.5, true],
    ['om5', 850, 3, true],
    ['om5', 1300, 1.5, true],
    ['os2', 1310, 0.4, false],
    ['os2', 1550, 0.4, false],
  ])('%s at %d nm loses %d dB per km', (name, wavelength_nm, db_per_km, fromMemory) => {
    const losses = cable(name).losses.filter(
      (loss) => Math.abs((loss.wavelength_m ?? 0) - wavelength_nm * 1e-9) < 1e-12,
    );
    expect(losses).toHaveLength(1);
    expect(losses[0]?.loss_db_per_m).toBeCloseTo(db_per_km / 1000, 12);
    expect(losses[0]?.fromMemory).toBe(fromMemory);
  });

  // Derived from the speed of light, 299 792 458 m/s (SI brochure), and a group index of 1.468.
  test.each(['om1', 'om2', 'os2'])('%s delays 489.7 ns in 100 m', (name) => {
    const expected_ns = (100 * 1.468e9) / 299_792_458;
    expect((cable(name).delay_s_per_m ?? 0) * 100e9).toBeCloseTo(expected_ns, 1);
  });

  test('every interface with a reach on fibre has a wavelength, no other has', () => {
    for (const one of interfaces.values()) {
      const onFibre = one.reaches.some((reach) => cable(reach.cable).medium === 'fibre');
      expect(one.wavelength_m !== undefined, one.name).toBe(onFibre);
    }
  });
});

describe('direct attach', () => {
  // 10 Gb/s: practice after SFF-8431 (from memory). 25 Gb/s: IEEE 802.3 clause 110 (from memory). 40 Gb/s:
  // fowiki.com/b/faq-40g-optical-network; 100 Gb/s: open notes (both second-hand).
  test.each([
    ['ethernet_10g_cr', 7, undefined, true],
    ['ethernet_25g_cr', 5, 3, true],
    ['ethernet_40g_cr4', 7, undefined, false],
    ['ethernet_100g_cr4', 5, undefined, false],
  ])('%s reaches %d m', (name, length_m, good_m, fromMemory) => {
    expect(reachOf(name, 'dac_copper')).toMatchObject({ length_m, fromMemory });
    expect(reachOf(name, 'dac_copper')?.good_m).toBe(good_m);
  });
});

describe('SDI', () => {
  // Rates: RFC 3497 §1 for 1.485 Gb/s (published); SMPTE ST 259, 424, 2081-1, 2082-1 (second-hand). Budgets at half
  // the clock: ST 259:2008 clause 1, ST 292-1:2018 clause 1, charts after SMPTE 424M-2006, ST 2081-1:2015,
  // ST 2082-1:2023 clause 1 (all second-hand).
  test.each([
    ['sdi_sd', 0.27e9, 30, 135e6],
    ['sdi_hd', 1.485e9, 20, 742.5e6],
    ['sdi_3g', 2.97e9, 20, 1485e6],
    ['sdi_6g', 5.94e9, 40, 2970e6],
    ['sdi_12g', 11.88e9, 40, 5940e6],
  ])('%s runs at %d b/s with %d dB at %d Hz', (name, rate, loss_db, frequency_hz) => {
    const { rate_bits_per_second, budgets } = face(name);
    expect(rate_bits_per_second).toBe(rate);
    expect(budgets).toHaveLength(1);
    expect(budgets[0]).toMatchObject({ loss_db, frequency_hz, fromMemory: false });
  });

  test('a faster socket takes every slower signal, never the other way', () => {
    const order = ['sdi_sd', 'sdi_hd', 'sdi_3g', 'sdi_6g', 'sdi_12g'];
    order.forEach((name, i) => {
      expect([...acceptedBy(name)].sort()).toEqual(order.slice(0, i + 1).sort());
    });
  });

  // RG-6 class: trade article of 2020, tvyvideo.com (published): 113 m for HD and 78 m for 3G, both at 20 dB. 12G:
  // 70 to 75 m (common practice, no source). The other two classes: fitted to ANSI/SCTE 74 (from memory).
  test.each([
    ['rg59', 316, 88, 61, 84, 58],
    ['rg6', 411, 113, 78, 107, 72],
    ['rg11', 597, 164, 113, 154, 104],
  ])('%s reaches %d m (SD), %d (HD), %d (3G), %d (6G), %d (12G) by budget', (name, ...reaches) => {
    const fitted = fitCoaxLoss(
      cable(name).losses.map(({ loss_db_per_m, frequency_hz = 0 }) => ({ loss_db_per_m, frequency_hz })),
    );
    ['sdi_sd', 'sdi_hd', 'sdi_3g', 'sdi_6g', 'sdi_12g'].forEach((sdi, i) => {
      const [budget] = face(sdi).budgets;
      const { loss_db: budget_db = 0, frequency_hz = 0 } = budget ?? {};
      const reach_m = budgetReach_m(fitted, { budget_db, frequency_hz });
      expect(Math.abs(reach_m / (reaches[i] ?? 0) - 1), `${sdi}: ${reach_m}`).toBeLessThan(0.01);
    });
  });

  // General page on cable losses, series 6: 6.4 dB per 100 ft at 950 MHz, 9.7 at 2150 MHz (published); another make of
  // cable, so 5 %.
  test('RG-6 loses what a general table says of its class', () => {
    const fitted = fitCoaxLoss(
      cable('rg6').losses.map(({ loss_db_per_m, frequency_hz = 0 }) => ({ loss_db_per_m, frequency_hz })),
    );
    expect(Math.abs(coaxLoss_db_per_m(fitted, 950e6) / (6.4 / 30.48) - 1)).toBeLessThan(0.05);
    expect(Math.abs(coaxLoss_db_per_m(fitted, 2150e6) / (9.7 / 30.48) - 1)).toBeLessThan(0.05);
  });

  // Common practice, no source: foam dielectric, velocity 0.83, 4.0 ns per metre.
  test.each(['rg59', 'rg6', 'rg11'])('%s delays 4 ns in a metre', (name) => {
    expect(cable(name).delay_s_per_m).toBeCloseTo(4e-9, 15);
  });

  test('what is remembered of a coax says so', () => {
    expect(cable('rg6').losses.map((loss) => loss.fromMemory)).toEqual([false, false]);
    expect(cable('rg59').losses.every((loss) => loss.fromMemory)).toBe(true);
    expect(cable('rg11').losses.every((loss) => loss.fromMemory)).toBe(true);
  });
});

describe('HDMI, USB-C and sound', () => {
  // Class limits: 340 and 600 MHz, and lanes of the fixed-rate link, as in the tables of `edid-decode` (Debian
  // 0.1~git20220315, published).
  test.each([
    ['hdmi_1_4', 340e6, undefined],
    ['hdmi_2_0', 600e6, undefined],
    ['hdmi_2_1', 600e6, { count: 4, rate_bits_per_second: 12e9 }],
  ])('%s has a clock of %d Hz', (name, clock_hz, lanes) => {
    expect(face(name).clock_hz).toBe(clock_hz);
    expect(face(name).lanes).toEqual(lanes);
  });

  // Common practice, no source.
  test.each([
    ['hdmi_1_4', 'hdmi_copper', 15, 10],
    ['hdmi_2_0', 'hdmi_copper', 7.5, 5],
    ['hdmi_2_1', 'hdmi_copper', 5, 3],
    ['usb_c', 'usb_c_copper', 2, 1],
  ])('%s over %s: %d m, good to %d m', (name, over, length_m, good_m) => {
    expect(reachOf(name, over)).toMatchObject({ length_m, good_m });
    expect(reachOf(name, over)?.source).toContain('common practice');
  });

  test('a newer class takes the older ones', () => {
    expect([...acceptedBy('hdmi_2_1')].sort()).toEqual(['hdmi_1_4', 'hdmi_2_0', 'hdmi_2_1']);
    expect(acceptedBy('hdmi_1_4').has('hdmi_2_0')).toBe(false);
  });

  // Derived: two words of 32 bit, 48 000 times a second.
  test('AES3 runs at 3.072 Mb/s', () => {
    expect(face('aes3').rate_bits_per_second).toBe(2 * 32 * 48_000);
  });

  test('a faster HDMI class never reaches further on the same cable', () => {
    for (const over of ['hdmi_copper', 'hdmi_optical']) {
      const [slow, middle, fast] = ['hdmi_1_4', 'hdmi_2_0', 'hdmi_2_1'].map(
        (name) => reachOf(name, over)?.length_m ?? 0,
      );
      expect(slow).toBeGreaterThanOrEqual(middle ?? Number.NaN);
      expect(middle).toBeGreaterThanOrEqual(fast ?? Number.NaN);
    }
  });
});

describe('Ethernet sockets', () => {
  const layers = new Map([
    ['ethernet_1g', ['ethernet_1g_t', 'ethernet_1g_sx', 'ethernet_1g_lx']],
    ['ethernet_2g5', ['ethernet_2g5_t']],
    ['ethernet_5g', ['ethernet_5g_t']],
    [
      'ethernet_10g',
      [
        'ethernet_10g_t',
        'ethernet_10g_sr',
        'ethernet_10g_lrm',
        'ethernet_10g_lr',
        'ethernet_10g_er',
        'ethernet_10g_cr',
      ],
    ],
    ['ethernet_25g', ['ethernet_25g_t', 'ethernet_25g_sr', 'ethernet_25g_lr', 'ethernet_25g_cr']],
    ['ethernet_40g', ['ethernet_40g_t', 'ethernet_40g_sr4', 'ethernet_40g_lr4', 'ethernet_40g_cr4']],
    ['ethernet_100g', ['ethernet_100g_sr4', 'ethernet_100g_dr', 'ethernet_100g_lr4', 'ethernet_100g_cr4']],
  ]);
  const rates = new Map([
    ['ethernet_1g', 1e9],
    ['ethernet_2g5', 2.5e9],
    ['ethernet_5g', 5e9],
    ['ethernet_10g', 10e9],
    ['ethernet_25g', 25e9],
    ['ethernet_40g', 40e9],
    ['ethernet_100g', 100e9],
  ]);

  test.each([...layers])('%s takes every layer of its rate', (socket, expected) => {
    const rate = rates.get(socket);
    expect(face(socket).rate_bits_per_second).toBe(rate);
    expect(face(socket).reaches).toEqual([]);
    const ofThisRate = [...acceptedBy(socket)].filter((name) => face(name).rate_bits_per_second === rate);
    expect(ofThisRate.sort()).toEqual([socket, ...expected].sort());
    const declared = [...interfaces.values()].filter(
      (one) => one.signal === 'ethernet' && one.rate_bits_per_second === rate,
    );
    expect(declared.map((one) => one.name).sort()).toEqual([socket, ...expected].sort());
  });

  // IEEE 802.3 clause 28, by which twisted-pair sockets agree on a rate that both have (from memory).
  test.each([
    ['ethernet_10g_t', ['ethernet_1g_t']],
    ['ethernet_5g_t', ['ethernet_2g5_t', 'ethernet_1g_t']],
    ['ethernet_2g5_t', ['ethernet_1g_t']],
    ['ethernet_25g_t', ['ethernet_10g_t', 'ethernet_1g_t']],
    ['ethernet_1g_t', []],
  ])('%s falls back to %j', (name, slower) => {
    expect([...acceptedBy(name)].sort()).toEqual([name, ...slower].sort());
  });

  test('nothing accepts what is faster than itself', () => {
    for (const one of interfaces.values()) {
      for (const name of one.accepts) {
        expect(face(name).signal).toBe(one.signal);
        expect(face(name).rate_bits_per_second ?? 0, name).toBeLessThanOrEqual(one.rate_bits_per_second ?? 0);
      }
    }
  });
});
