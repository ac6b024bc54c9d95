import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  flowGroup,
  formatAddress,
  hardwareAddress,
  hostAddress,
  parseAddress,
  parsePrefix,
} from '../../src/physics/addresses.ts';
import { soundFlowLoad_bits_per_second, soundLoad_bits_per_second } from '../../src/physics/audio-flow.ts';
import { flowsThatFit, judgeLoad } from '../../src/physics/capacity.ts';
import { budgetReach_m, coaxLoss_db, fitCoaxLoss } from '../../src/physics/coax.ts';
import {
  pairDelay_s_per_m,
  propagation_s,
  storeAndForward_s,
  totalDelay_s,
} from '../../src/physics/delay.ts';
import { tmdsCharacterRate_hz, usableRate_bits_per_second } from '../../src/physics/display-interface.ts';
import { fibreLoss_db, judgeFibre } from '../../src/physics/fibre.ts';
import { codedRate_bits_per_second, flowLoads } from '../../src/physics/flows.ts';
import {
  breakerFor_a,
  continuousLimit_a,
  continuousLimit_w,
  current_a,
  gauge_ohm_per_km,
  heat_btu_per_hour,
  voltageDrop_v,
  warmConductor_ohm_per_km,
} from '../../src/physics/mains.ts';
import { approximateLoad, packFrame } from '../../src/physics/packing.ts';
import {
  LONGEST_CABLE_M,
  PhysicsError,
  requireLength,
  requireWhole,
  requireWithin,
} from '../../src/physics/physics-error.ts';
import {
  delivered,
  loopResistance_ohm,
  powerClassOf,
  poweredDevice,
  sourced,
} from '../../src/physics/power-over-ethernet.ts';
import { frameRateOf } from '../../src/physics/rate.ts';
import { joinedShare, judgeLength } from '../../src/physics/reach.ts';
import { reducedBlanking } from '../../src/physics/reduced-blanking.ts';
import { sdiRate_bits_per_second } from '../../src/physics/sdi.ts';
import { sdiOverIp } from '../../src/physics/sdi-over-ip.ts';
import {
  judgeLipSync,
  soundFlight_s,
  soundSpeed_m_per_s,
  soundSpeedByLine_m_per_s,
} from '../../src/physics/sound.ts';
import { timingTraffic_bits_per_second } from '../../src/physics/timing-traffic.ts';
import { packetSpacing_s, trafficShape } from '../../src/physics/traffic-shape.ts';
import {
  PAIR_LOSSES,
  pairLoss_db,
  pairReach_m,
  strandedFactor,
  temperatureFactor,
} from '../../src/physics/twisted-pair.ts';
import {
  largestStreamPayload_octets,
  recording_bytes,
  streamsLoad_bits_per_second,
  usableUpload_bits_per_second,
} from '../../src/physics/uplink.ts';
import { picture } from '../published/pictures.ts';

const rg6 = fitCoaxLoss([{ frequency_hz: 1e9, loss_db_per_m: 0.2 }]);
const cat6 = PAIR_LOSSES.get('cat6')!;
const fibre = { length_m: 100, loss_db_per_m: 0.003 };
const at = picture('1080p50');
const rate = frameRateOf(50);

/** Functions of one number that must be refused for every value here. */
const REFUSED: readonly (readonly [string, (value: number) => unknown, readonly number[]])[] = [
  ['cable length', requireLength, [-1, LONGEST_CABLE_M + 1]],
  ['coax length', (length) => coaxLoss_db(rg6, 1e9, length), [-0.1, 5e7]],
  ['coax frequency', (frequency) => coaxLoss_db(rg6, frequency, 10), [0, -1, 1e13]],
  ['coax budget', (budget_db) => budgetReach_m(rg6, { budget_db, frequency_hz: 1e9 }), [-1, 1001]],
  ['stated frequency', (frequency_hz) => fitCoaxLoss([{ frequency_hz, loss_db_per_m: 0.1 }]), [0, -1]],
  ['stated loss', (loss_db_per_m) => fitCoaxLoss([{ frequency_hz: 1e9, loss_db_per_m }]), [0, -1, 101]],
  ['pair frequency', (frequency) => pairLoss_db(cat6, frequency, 100), [0, 1000, 3e9]],
  ['pair length', (length) => pairLoss_db(cat6, 1e8, length), [-1]],
  ['temperature', (temperature) => temperatureFactor(temperature, true), [60.1, -61]],
  ['stranded', strandedFactor, [-0.1, 2.1]],
  ['tabulated reach', (reach) => pairReach_m(reach, { screened: true }), [-1]],
  ['fibre length', (length_m) => fibreLoss_db({ ...fibre, length_m }), [-1, 5e7]],
  ['fibre loss', (loss_db_per_m) => fibreLoss_db({ ...fibre, loss_db_per_m }), [-1, 1.1]],
  ['connections', (connections) => fibreLoss_db({ ...fibre, connections }), [-1, 1.5, 1001]],
  ['splices', (splices) => fibreLoss_db({ ...fibre, splices }), [-1, 0.5, 1001]],
  ['connection loss', (connection_db) => fibreLoss_db({ ...fibre, connection_db }), [-1, 21]],
  ['splice loss', (splice_db) => fibreLoss_db({ ...fibre, splice_db }), [-1, 21]],
  ['fibre reach', (reach_m) => judgeFibre(fibre, { reach_m }), [-1]],
  ['loss limit', (loss_db) => judgeFibre(fibre, { reach_m: 300, loss_db }), [-1, 1001]],
  ['pair delay', pairDelay_s_per_m, [0, 3e9]],
  ['propagation length', (length) => propagation_s(length, 5e-9), [-1]],
  ['propagation delay', (delay) => propagation_s(10, delay), [-1, 1]],
  ['stored packet', (octets) => storeAndForward_s(octets, 1e9), [0, -1, 2e6]],
  ['storing rate', (bits) => storeAndForward_s(1500, bits), [0, -1]],
  ['frames of delay', (frames) => totalDelay_s([{ name: 'a', frames, rate }]), [-1, 2e6]],
  ['time of delay', (time_s) => totalDelay_s([{ name: 'a', time_s }]), [-1, 2e6]],
  ['class of devices', powerClassOf, [-1, 9, 3.5]],
  ['length with power', (length) => loopResistance_ohm(powerClassOf(4), length), [-1]],
  ['conductor', (ohm) => loopResistance_ohm(powerClassOf(4), 10, ohm), [-1, 11]],
  ['draw', (draw) => poweredDevice(powerClassOf(4), 10, draw), [-1, 25.6]],
  ['supplied power', (power) => delivered(power, 50, 1), [-1, 2e6]],
  ['supply voltage', (voltage) => delivered(10, voltage, 1), [0, -1, 1001]],
  ['loop', (ohm) => sourced(10, 50, ohm), [-1]],
  ['power beyond the cable', (power) => sourced(power, 50, 12.5), [50.1, 100, -1]],
  ['circuit rating', continuousLimit_a, [0, -1, 20_000]],
  ['circuit', (volts) => continuousLimit_w(16, volts), [0, -230, 1e6]],
  ['breaker', breakerFor_a, [-1, 20_000]],
  ['power', (power) => current_a(power, 230), [-1, 1e9]],
  ['power factor', (factor) => current_a(100, 230, factor), [0, 1.1, -1]],
  ['mains length', (length) => voltageDrop_v(length, 10, 7), [-1]],
  ['mains current', (amperes) => voltageDrop_v(10, amperes, 7), [-1]],
  ['mains conductor', (ohm) => voltageDrop_v(10, 10, ohm), [-1]],
  ['conductor temperature', (temperature) => warmConductor_ohm_per_km(7, temperature), [-100, 300]],
  ['gauge', gauge_ohm_per_km, [-1, 41]],
  ['heat', heat_btu_per_hour, [-1]],
  ['channels of a flow', soundFlowLoad_bits_per_second, [0, -1, 1.5, 513]],
  [
    'packets of sound',
    (packets) => soundFlowLoad_bits_per_second(2, 48_000, 24, packets),
    [0, 7, 48_001, 0.5],
  ],
  ['channels', soundLoad_bits_per_second, [-1, 0.5, 513]],
  ['load', (load) => flowsThatFit(10e9, load), [0, -1]],
  ['headroom', (headroom) => judgeLoad(1, 2, headroom), [-0.1, 1.1]],
  ['ratio', (ratio) => codedRate_bits_per_second(at, { kind: 'compressed', ratio }), [0, 0.5, -8, 20_000]],
  [
    'bits a pixel',
    (bits_per_pixel) => codedRate_bits_per_second(at, { kind: 'compressed', bits_per_pixel }),
    [0, -1, 21],
  ],
  [
    'coded rate',
    (rate_bits_per_second) => codedRate_bits_per_second(at, { kind: 'compressed', rate_bits_per_second }),
    [0, -1, 1e16],
  ],
  ['width', (width) => packFrame({ ...at, width }, 'equal'), [0, -1, 1920.5, 40_000]],
  ['height', (height) => packFrame({ ...at, height }, 'block'), [0, -1, 0.5, 40_000]],
  ['depth', (depth_bits) => packFrame({ ...at, depth_bits }, 'equal'), [0, 9, -10, 14]],
  [
    'audio of a flow',
    (audio_channels) => flowLoads({ ...at, audio_channels }, { kind: 'uncompressed', packing: 'equal' }),
    [-1, 513],
  ],
  ['SDI depth', (depth_bits) => sdiRate_bits_per_second({ ...at, depth_bits }), [16, 7]],
  ['display depth', (depth_bits) => tmdsCharacterRate_hz({ ...at, depth_bits }), [16, 7]],
  ['lanes', (lanes) => usableRate_bits_per_second(lanes, 6e9), [0, -1, 1.5, 17]],
  ['lane rate', (bits) => usableRate_bits_per_second(4, bits), [0, -1, 1e13]],
  ['length to judge', (length) => judgeLength(length, { most_m: 100 }), [-1, 5e7]],
  ['reach to judge by', (most_m) => judgeLength(10, { most_m }), [-1]],
  ['joined length', (length_m) => joinedShare([{ length_m, reach_m: 10 }]), [-1]],
  ['joined reach', (reach_m) => joinedShare([{ length_m: 1, reach_m }]), [0, -1]],
  ['distance', (distance) => soundFlight_s(distance), [-1, 200_000]],
  ['air', soundSpeed_m_per_s, [-61, 61]],
  ['air by the line', soundSpeedByLine_m_per_s, [-61, 61]],
  ['picture delay', (delay) => judgeLipSync(delay, 0), [-1, 2e6]],
  ['sound delay', (delay) => judgeLipSync(0, delay), [-1, 2e6]],
  ['messages', (count) => timingTraffic_bits_per_second(new Map([['sync', count]])), [-1, 2e6]],
  ['packets to shape', (packets) => trafficShape(packets, rate, 'wide'), [0, -1, 1.5]],
  ['packets to space', (packets) => packetSpacing_s(packets, rate), [0, -1, 1.5]],
  ['stream', (stream) => streamsLoad_bits_per_second([stream]), [-1, 1e16]],
  ['recovery', (share) => streamsLoad_bits_per_second([1e6], share), [0, 0.04, 1.1]],
  ['upload', usableUpload_bits_per_second, [-1, 1e16]],
  ['datagram', largestStreamPayload_octets, [0, 44, 70_000]],
  ['recording', (bits) => recording_bytes(bits, 3600), [-1, 1e16]],
  ['duration', (duration) => recording_bytes(50e6, duration), [-1, 4e7]],
  ['address', formatAddress, [-1, 2 ** 32, 0.5]],
  ['group', hardwareAddress, [0, 0xdfffffff, 0xf0000000]],
  ['group of a block', (n) => flowGroup({ first: 0xef000000, bits: 8 }, n), [0, -1, 1.5]],
  ['approximate load', (width) => approximateLoad({ ...at, width }).bits_per_second, [0, -1, 40_000]],
  ['host', (n) => hostAddress({ first: 0, bits: 24 }, n), [0, -1, 1.5]],
];

describe.each(REFUSED)('%s', (_name, compute, values) => {
  test.each([...values, Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])(
    '%d is refused',
    (value) => {
      expect(() => compute(value)).toThrow(PhysicsError);
    },
  );
});

test('random numbers give a number or are refused, never NaN', () => {
  fc.assert(
    fc.property(fc.constantFrom(...REFUSED), fc.double(), ([, compute], value) => {
      try {
        const result = compute(value);
        if (typeof result === 'number') expect(Number.isFinite(result)).toBe(true);
        else expect(JSON.stringify(result)).not.toContain('null');
      } catch (error) {
        expect(error).toBeInstanceOf(PhysicsError);
      }
    }),
    { numRuns: 2000 },
  );
});

describe('an error says what is wrong and what is allowed', () => {
  test.each([
    [() => requireWithin('slack', -1, 0, 9, 'm'), 'slack -1 is refused; allowed: 0 to 9 m', 'slack'],
    [
      () => requireWhole('links', 1.5, 1, 4),
      'links 1.5 is refused; allowed: a whole number, 1 to 4',
      'links',
    ],
    [() => requireLength(5e7), 'cable length 50000000 is refused; allowed: 0 to 40075000 m', 'cable length'],
    [
      () => sdiRate_bits_per_second(picture('1080p50 4:2:0')),
      'SDI carries 4:2:2, 4:4:4 and RGB at up to 12 bit, not 4:2:0 10 bit',
      'sampling',
    ],
    [
      () => sdiOverIp(picture('1920x1200p60')),
      'SDI has no raster for 1920x1200p60, so ST 2022-6 cannot carry it',
      'format',
    ],
    [
      () => tmdsCharacterRate_hz(picture('1080p50 4:2:2 16 bit')),
      'a display link carries 4:2:2 at up to 12 bit',
      'depth',
    ],
    [
      () => sourced(60, 50, 12.5),
      '60 W cannot be had over 12.5 ohm from 50 V; at most 50 W arrive',
      'drawn power',
    ],
    [
      () => delivered(300, 50, 12.5),
      '300 W cannot be had over 12.5 ohm from 50 V; at most 50 W arrive',
      'drawn power',
    ],
    [() => fitCoaxLoss([]), 'a coax cable needs a stated loss at one frequency at least', 'cable loss'],
    [
      () => poweredDevice(powerClassOf(3), 10, 20),
      'draw of a class 3 device 20 is refused; allowed: 0 to 12.95 W',
      'draw of a class 3 device',
    ],
  ])('%#', (compute, message, quantity) => {
    try {
      compute();
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(PhysicsError);
      expect(error).toMatchObject({ name: 'PhysicsError', message, quantity });
    }
  });

  test.each([
    ['10.20.0', 'address "10.20.0" is refused'],
    ['10.20.0.256', 'refused'],
    ['10.20.0.01', 'refused'],
    ['10.20.0.-1', 'refused'],
    ['a.b.c.d', 'refused'],
    ['x10.20.0.9', 'refused'],
    ['10.20.0.9.1', 'refused'],
    ['10.20.0.9999', 'refused'],
    ['', 'refused'],
  ])('address %s', (text, message) => {
    expect(() => parseAddress(text)).toThrow(PhysicsError);
    expect(() => parseAddress(text)).toThrow(message);
  });

  test.each([
    ['10.20.0.0', 'an address and a number of bits'],
    ['10.20.0.0/33', 'an address and a number of bits'],
    ['10.20.0.0/-1', 'an address and a number of bits'],
    ['10.20.0.0/24x', 'an address and a number of bits'],
    ['10.20.0.0/x24', 'an address and a number of bits'],
    ['10.20.0.0/24/8', 'an address and a number of bits'],
    ['10.20.0/24', 'four numbers from 0 to 255'],
    ['10.20.0.9/24', '10.20.0.0/24, the start of that block'],
  ])('prefix %s', (text, message) => {
    expect(() => parsePrefix(text)).toThrow(PhysicsError);
    expect(() => parsePrefix(text)).toThrow(message);
  });
});

test('a picture too fast for blanking is refused', () => {
  expect(() => reducedBlanking({ width: 640, height: 480, scan: 'i', rate: frameRateOf(600) }, 1)).toThrow(
    PhysicsError,
  );
  expect(
    reducedBlanking({ width: 640, height: 480, scan: 'p', rate: frameRateOf(1000) }, 1).pixel_clock_hz,
  ).toBeGreaterThan(0);
});
