import { describe, expect, test } from 'vitest';
import { explainHardwareAddress, hardwareAddress, parseAddress } from '../../src/physics/addresses.ts';
import { explainSoundLoad, soundLoad_bits_per_second } from '../../src/physics/audio-flow.ts';
import {
  coaxLoss_db,
  coaxReach_m,
  explainCoaxLoss,
  explainCoaxReach,
  fitCoaxLoss,
} from '../../src/physics/coax.ts';
import { explainDelay, explainPropagation, propagation_s, totalDelay_s } from '../../src/physics/delay.ts';
import {
  explainPixelClock,
  explainTmds,
  pixelClock,
  tmdsCharacterRate_hz,
} from '../../src/physics/display-interface.ts';
import { explainFibreLoss, explainFibreReach, fibreLoss_db, judgeFibre } from '../../src/physics/fibre.ts';
import { type Carriage, explainFlowLoads, flowLoads } from '../../src/physics/flows.ts';
import {
  continuousLimit_w,
  explainContinuousLimit,
  explainVoltageDrop,
  voltageDrop_v,
} from '../../src/physics/mains.ts';
import { explainPictureLoad, pictureLoad_bits_per_second } from '../../src/physics/packing.ts';
import { activePayload_bits_per_second, explainActivePayload } from '../../src/physics/pixel-group.ts';
import { explainPoweredDevice, powerClassOf, poweredDevice } from '../../src/physics/power-over-ethernet.ts';
import { frameRateOf } from '../../src/physics/rate.ts';
import { explainSdiRate, sdiRate_bits_per_second } from '../../src/physics/sdi.ts';
import { explainSdiOverIp, sdiOverIp } from '../../src/physics/sdi-over-ip.ts';
import { explainLipSync, explainSoundFlight, judgeLipSync, soundFlight_s } from '../../src/physics/sound.ts';
import { explainPairReach, pairReach_m } from '../../src/physics/twisted-pair.ts';
import {
  explainRecording,
  explainStreams,
  explainUsableUpload,
  recording_bytes,
  streamsLoad_bits_per_second,
  usableUpload_bits_per_second,
} from '../../src/physics/uplink.ts';
import {
  type Explained,
  formatWorking,
  makeWorking,
  restsOnMemory,
  type Source,
  type Working,
} from '../../src/physics/working.ts';
import { picture } from '../published/pictures.ts';

const TABLE: Source = { source: 'a table', label: 'second-hand' };
const RECALLED: Source = { source: 'a recalled table', label: 'from memory' };
const rg6 = fitCoaxLoss([
  { frequency_hz: 742.5e6, loss_db_per_m: 0.177 },
  { frequency_hz: 1485e6, loss_db_per_m: 0.2564 },
]);
const slower = [{ budget_db: 20, frequency_hz: 1485e6 }];
const fastBudget = { budget_db: 40, frequency_hz: 2970e6 };
const fibre = { length_m: 150, loss_db_per_m: 0.003, connections: 4, splices: 1 };
const fibreLimits = { reach_m: 300, loss_db: 2.6 };
const at = picture('1080p59.94');
const carriages: readonly Carriage[] = [
  { kind: 'uncompressed', packing: 'equal' },
  { kind: 'uncompressed', packing: 'block' },
  { kind: 'compressed', ratio: 8 },
  { kind: 'compressed', bits_per_pixel: 2.5 },
  { kind: 'compressed', rate_bits_per_second: 180e6 },
];
const parts = [
  { name: 'box', frames: 2, rate: frameRateOf('59.94') },
  { name: 'cable', time_s: 3e-7 },
];

type Figure = readonly [name: string, explain: () => Explained<unknown>, compute: () => unknown];

const sound2 = { kind: 'sound', audio_channels: 2 } as const;
const odd420 = picture('1366x768p60 4:2:0');
const interlaced420 = picture('1080i50 4:2:0 8 bit');
const twice = picture('1080p50 4:4:4');
const uhd420 = picture('2160p60 4:2:0 10 bit');
const rgb = picture('1080p60 RGB');
const wide = picture('3440x1440p60');
const fields = picture('1920x1200i59.94');
const ownBudget = slower[0]!;
const one = fitCoaxLoss([{ frequency_hz: 1e9, loss_db_per_m: 0.2 }]);
const group = parseAddress('239.10.0.7');
const flooded = parseAddress('239.0.0.7');
const warm = { screened: false, temperature_c: 45, stranded_share: 0.2 };
const mild = { screened: false, temperature_c: 30 };
const warmScreened = { screened: true, temperature_c: 45 };
const fewer = { ...fibre, connections: 0 };
const usual = { length_m: 400, loss_db_per_m: 0.003 };
const class4 = powerClassOf(4);
const class3 = powerClassOf(3);

/** Each figure as it is explained, and as it is computed. Made late, so that each test makes its own. */
const FIGURES: readonly Figure[] = [
  ['active payload', () => explainActivePayload(at), () => activePayload_bits_per_second(at)],
  [
    'picture load',
    () => explainPictureLoad(at, 'equal', true),
    () => pictureLoad_bits_per_second(at, 'equal', true),
  ],
  ['picture load of 4:2:0', () => explainPictureLoad(odd420), () => pictureLoad_bits_per_second(odd420)],
  [
    'picture load of interlaced 4:2:0',
    () => explainPictureLoad(interlaced420),
    () => pictureLoad_bits_per_second(interlaced420),
  ],
  ['sound', () => explainSoundLoad(10), () => soundLoad_bits_per_second(10)],
  ['tagged sound', () => explainSoundLoad(16, true), () => soundLoad_bits_per_second(16, true)],
  ['no sound', () => explainSoundLoad(0), () => 0],
  ['sound alone', () => explainFlowLoads(sound2, carriages[0]!), () => flowLoads(sound2, carriages[0]!)],
  ...carriages.map(
    (carriage): Figure => [
      `source ${JSON.stringify(carriage)}`,
      () => explainFlowLoads(at, carriage, true),
      () => flowLoads(at, carriage, true),
    ],
  ),
  ['SDI rate', () => explainSdiRate(at)!, () => sdiRate_bits_per_second(at)],
  ['SDI rate, twice', () => explainSdiRate(twice)!, () => sdiRate_bits_per_second(twice)],
  ['ST 2022-6', () => explainSdiOverIp(at), () => sdiOverIp(at)],
  ['tabulated clock', () => explainPixelClock(at), () => pixelClock(at).pixel_clock_hz],
  ['reduced blanking', () => explainPixelClock(wide), () => pixelClock(wide).pixel_clock_hz],
  ['reduced blanking, version 2', () => explainPixelClock(wide, 2), () => pixelClock(wide, 2).pixel_clock_hz],
  ['reduced blanking of fields', () => explainPixelClock(fields), () => pixelClock(fields).pixel_clock_hz],
  ['characters, 4:2:0', () => explainTmds(uhd420), () => tmdsCharacterRate_hz(uhd420)],
  ['characters, 4:2:2', () => explainTmds(at), () => tmdsCharacterRate_hz(at)],
  ['characters, RGB', () => explainTmds(rgb), () => tmdsCharacterRate_hz(rgb)],
  ['coax loss', () => explainCoaxLoss(rg6, 1485e6, 61, TABLE), () => coaxLoss_db(rg6, 1485e6, 61)],
  [
    'coax loss from one point',
    () => explainCoaxLoss(one, 4e9, 50, RECALLED),
    () => coaxLoss_db(one, 4e9, 50),
  ],
  ['coax reach', () => explainCoaxReach(rg6, ownBudget, [], TABLE, TABLE), () => coaxReach_m(rg6, ownBudget)],
  [
    'coax reach, capped',
    () => explainCoaxReach(rg6, fastBudget, slower, TABLE, TABLE),
    () => coaxReach_m(rg6, fastBudget, slower),
  ],
  ['pair reach', () => explainPairReach(100, { screened: false }, TABLE), () => 100],
  ['pair reach, mild', () => explainPairReach(100, mild, TABLE), () => pairReach_m(100, mild)],
  ['pair reach, warm and stranded', () => explainPairReach(100, warm, TABLE), () => pairReach_m(100, warm)],
  [
    'pair reach, screened',
    () => explainPairReach(100, warmScreened, TABLE),
    () => pairReach_m(100, warmScreened),
  ],
  ['fibre loss', () => explainFibreLoss(fibre, TABLE), () => fibreLoss_db(fibre)],
  ['fibre loss with the usual connections', () => explainFibreLoss(usual, TABLE), () => fibreLoss_db(usual)],
  [
    'fibre used up',
    () => explainFibreReach(fibre, fibreLimits, TABLE, TABLE),
    () => judgeFibre(fibre, fibreLimits),
  ],
  [
    'fibre reach by loss',
    () => explainFibreReach(usual, { reach_m: 550, loss_db: 2.6 }, TABLE, RECALLED),
    () => judgeFibre(usual, { reach_m: 550, loss_db: 2.6 }),
  ],
  [
    'fibre reach as stated',
    () => explainFibreReach(fewer, { reach_m: 100 }, TABLE, TABLE),
    () => judgeFibre(fewer, { reach_m: 100 }),
  ],
  ['power', () => explainPoweredDevice(class4, 50), () => poweredDevice(class4, 50)],
  [
    'power with stated conductors',
    () => explainPoweredDevice(class4, 50, 20, 0.0938),
    () => poweredDevice(class4, 50, 20, 0.0938),
  ],
  [
    'power over a thin cord',
    () => explainPoweredDevice(class3, 50, 10, 0.3),
    () => poweredDevice(class3, 50, 10, 0.3),
  ],
  ['circuit', () => explainContinuousLimit(16, 230), () => continuousLimit_w(16, 230)],
  ['voltage drop', () => explainVoltageDrop(30, 10, 7.41, 1, TABLE), () => voltageDrop_v(30, 10, 7.41)],
  [
    'voltage drop, three phases',
    () => explainVoltageDrop(30, 10, 7.41, 3, TABLE),
    () => voltageDrop_v(30, 10, 7.41, 3),
  ],
  ['delay', () => explainDelay(parts), () => totalDelay_s(parts)],
  ['propagation', () => explainPropagation(61, 5.38e-9, TABLE), () => propagation_s(61, 5.38e-9)],
  ['sound flight', () => explainSoundFlight(20, 30), () => soundFlight_s(20, 30)],
  ['lip sync', () => explainLipSync(0.12, 0), () => judgeLipSync(0.12, 0)],
  ['lip sync, late', () => explainLipSync(0, 0.05, 'r37'), () => judgeLipSync(0, 0.05, 'r37')],
  ['lip sync, together', () => explainLipSync(0.1, 0.1, 'is191'), () => judgeLipSync(0.1, 0.1, 'is191')],
  ['streams', () => explainStreams([6e6, 3e6]), () => streamsLoad_bits_per_second([6e6, 3e6])],
  ['one stream', () => explainStreams([6e6]), () => streamsLoad_bits_per_second([6e6])],
  ['upload', () => explainUsableUpload(40e6), () => usableUpload_bits_per_second(40e6)],
  ['recording', () => explainRecording(50e6, 28_800), () => recording_bytes(50e6, 28_800)],
  ['hardware address', () => explainHardwareAddress(group), () => hardwareAddress(group)],
  ['flooded address', () => explainHardwareAddress(flooded), () => hardwareAddress(flooded)],
];

describe('a figure is explained as it is computed', () => {
  test.each(FIGURES)('%s', (_name, explain, compute) => {
    const explained = explain();
    expect(explained.value).toEqual(compute());
    expectWhole(explained.working);
  });

  // The file was read through line by line and holds what each working says; a changed word shows there.
  test('in these words', async () => {
    const texts = FIGURES.map(
      ([name, explain]) => `# ${name}\n${formatWorking(explain().working).join('\n')}\n`,
    );
    await expect(texts.join('\n')).toMatchFileSnapshot('./workings.txt');
  });
});

/** Nothing of a working is empty, every input is put into its formula, and no odd value shows. */
function expectWhole(working: Working): void {
  for (const text of [working.figure, working.rule, working.result, working.source])
    expect(text.trim()).not.toBe('');
  for (const { name, value } of working.inputs) {
    expect(working.formula).toContain(name);
    expect(working.substituted).toContain(value);
  }
  expect(formatWorking(working).join('\n')).not.toMatch(/NaN|undefined|Infinity|\[object|null/);
  for (const step of working.steps) expectWhole(step);
}

describe('the text of a working', () => {
  test('is plain lines with the steps indented', () => {
    expect(formatWorking(explainPictureLoad(at).working)).toEqual([
      '1080p59.94 4:2:2 10 bit, uncompressed, on the wire: 2.664 Gb/s',
      '  rule: general packing, equal packets for every row; no VLAN tag; preamble and gap between packets counted',
      '  (samples + row headers x 6 octets + packets x overhead) x 8 x rate',
      '  = (5184000 octets + 4320 x 6 octets + 4320 x 80 octets) x 8 x 60000/1001 = 2.664 Gb/s',
      '  source: RFC 791, RFC 768, RFC 3550 §5.1, RFC 4175 §4.2; Ethernet frame, preamble and gap as in RFC 2544 appendix B (published)',
      '  packets in a frame: 4320 packets',
      '    rule: equal packets: the fewest whose samples fit 1432 octets',
      '    rows x packets each',
      '    = 1080 x 4 (240 groups of 5 octets) = 4320 packets',
      '    source: SMPTE ST 2110-20:2017 §6.3.1-6.3.2, general packing; RFC 4175 §4 (second-hand)',
      '  pixel group: 5 octets for 2 pixels',
      '    rule: the fewest pixels of 4:2:2 at 10 bit that fill whole octets',
      '    source: RFC 4175 §4.3; SMPTE ST 2110-20 §6.2 (published)',
    ]);
  });

  test('says where a row cannot be cut equally, and that blocks are blocks', () => {
    const odd = formatWorking(explainPictureLoad(picture('1366x768p60')).working).join('\n');
    expect(odd).toContain('no number divides the row, so its last packet is shorter');
    const block = formatWorking(explainPictureLoad(picture('1080i50'), 'block', true).working).join('\n');
    expect(block).toContain('rule: block packing; one VLAN tag a packet');
    expect(block).toContain('= 2 x round up(2592000 octets / 1260 octets) = 4116 packets');
  });

  test('names a value from memory as such, wherever it stands', () => {
    const direct = makeWorking({
      figure: 'reach',
      rule: 'as tabulated',
      formula: '',
      inputs: [],
      result: '100 m',
      ...RECALLED,
    });
    expect(formatWorking(direct)).toEqual([
      'reach: 100 m',
      '  rule: as tabulated',
      '  source: a recalled table (from memory: verify before relying on it)',
    ]);
    expect(restsOnMemory(direct)).toBe(true);
    expect(restsOnMemory(makeWorking({ ...direct, ...TABLE, inputs: [] }))).toBe(false);
    expect(restsOnMemory(makeWorking({ ...direct, ...TABLE, inputs: [], steps: [direct] }))).toBe(true);
    expect(restsOnMemory(explainCoaxReach(rg6, slower[0]!, [], RECALLED, TABLE).working)).toBe(true);
    expect(restsOnMemory(explainPairReach(100, { screened: false }, RECALLED).working)).toBe(true);
    expect(restsOnMemory(explainFibreReach(fibre, fibreLimits, RECALLED, TABLE).working)).toBe(true);
    expect(restsOnMemory(explainPictureLoad(at).working)).toBe(false);
  });

  test('a formula without inputs is shown as it is', () => {
    const working = makeWorking({
      figure: 'a',
      rule: 'b',
      formula: '2 + 2',
      inputs: [],
      result: '4',
      ...TABLE,
    });
    expect(formatWorking(working)[2]).toBe('  2 + 2 = 4');
  });

  test('names are replaced as whole words, the longest first, and once', () => {
    const working = makeWorking({
      figure: 'a',
      rule: 'b',
      formula: 'rate x rates of rate.x (a+b) + crate',
      inputs: [
        ['rate', '$& rates'],
        ['rates of rate', '7'],
        ['a+b', '9'],
      ],
      result: 'c',
      ...TABLE,
    });
    expect(working.substituted).toBe('$& rates x 7.x (9) + crate');
    const shortFirst = makeWorking({
      ...working,
      formula: 'a b + a',
      inputs: [
        ['a', '1'],
        ['a b', '2'],
      ],
      substituted: undefined,
    });
    expect(shortFirst.substituted).toBe('2 + 1');
  });

  test('passages of one name keep their own times', () => {
    const rate = frameRateOf(50);
    const working = explainDelay([
      { name: 'box', frames: 1, rate },
      { name: 'box', frames: 2, rate },
    ]).working;
    expect(working.substituted).toBe('20 ms (1 frame at 50) + 40 ms (2 frames at 50)');
    expect(working.result).toBe('60 ms');
    expect(() => explainDelay([])).toThrow('without any part');
  });

  test('SDI without a raster has nothing to explain', () => {
    expect(explainSdiRate(picture('1920x1200p60'))).toBeUndefined();
  });
});
