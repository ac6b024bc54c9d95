import { describe, expect, test } from 'vitest';
import { soundLoad_bits_per_second } from '../../src/physics/audio-flow.ts';
import { flowsThatFit, judgeLoad } from '../../src/physics/capacity.ts';
import {
  displayClasses,
  judgeDisplay,
  pixelClock,
  tmdsCharacterRate_hz,
} from '../../src/physics/display-interface.ts';
import { codedRate_bits_per_second, flowLoads } from '../../src/physics/flows.ts';
import { wireOctets } from '../../src/physics/packet-headers.ts';
import { packFrame, pictureLoad_bits_per_second } from '../../src/physics/packing.ts';
import { pixelGroup } from '../../src/physics/pixel-group.ts';
import { parseRaster } from '../../src/physics/raster.ts';
import { sdiRate_bits_per_second, sdiWays, smallestSdi, totalRaster } from '../../src/physics/sdi.ts';
import { trafficShape } from '../../src/physics/traffic-shape.ts';
import { picture } from '../published/pictures.ts';

const uncompressed = { kind: 'uncompressed', packing: 'equal' } as const;

describe('loads of a source', () => {
  test('are exact to the bit', () => {
    const loads = flowLoads(picture('1080p59.94'), uncompressed);
    expect(loads.packets_per_frame).toBe(4320);
    expect(Math.round(loads.active_bits_per_second)).toBe(2_485_834_166);
    expect(Math.round(loads.picture_bits_per_second)).toBe(2_663_985_614);
    expect(loads.sound_bits_per_second).toBe(19_680_000);
    expect(loads.ancillary_bits_per_second).toBe(100_000);
    expect(Math.round(loads.total_bits_per_second)).toBe(2_683_765_614);
  });

  test('sound alone has no picture and no ancillary data', () => {
    expect(flowLoads({ kind: 'sound', audio_channels: 2 }, uncompressed)).toEqual({
      active_bits_per_second: 0,
      packets_per_frame: undefined,
      picture_bits_per_second: 0,
      sound_bits_per_second: 2_928_000,
      ancillary_bits_per_second: 0,
      total_bits_per_second: 2_928_000,
    });
  });

  test('sound rides in flows of eight', () => {
    expect(soundLoad_bits_per_second(0)).toBe(0);
    expect(soundLoad_bits_per_second(8)).toBe(9_840_000);
    expect(soundLoad_bits_per_second(10)).toBe(9_840_000 + 2_928_000);
    expect(soundLoad_bits_per_second(16, true)).toBe(2 * (1152 + 82) * 8000);
    expect(soundLoad_bits_per_second(3, true)).toBe((3 * 144 + 82) * 8000);
  });

  test('a compressed picture has its coded rate and its headers', () => {
    const at = picture('1080p59.94');
    expect(codedRate_bits_per_second(at, { kind: 'compressed', rate_bits_per_second: 180e6 })).toBe(180e6);
    const stated = flowLoads(at, { kind: 'compressed', rate_bits_per_second: 180e6 });
    expect(stated.picture_bits_per_second).toBeCloseTo((180e6 * 1482) / 1400, 3);
    expect(stated.packets_per_frame).toBeUndefined();
    const tagged = flowLoads(at, { kind: 'compressed', ratio: 8 }, true);
    expect(tagged.picture_bits_per_second).toBeCloseTo(
      ((1920 * 1080 * 20 * 60000) / 1001 / 8) * (1486 / 1400),
      3,
    );
  });
});

// By hand: groups a row, packets, octets. No raster below stands in a table of the code.
describe('rasters without a table', () => {
  test.each([
    // 2048 / 2 = 1024 groups of 5 octets, 286 a packet at most: 4 packets of 256.
    ['2048x1080p48', 'equal', 1080 * 4, 1080 * 4, 1080 * 5120],
    // 4096 / 2 = 2048 groups, 8 packets of 256.
    ['4096x2160p24', 'equal', 2160 * 8, 2160 * 8, 2160 * 10_240],
    // 12 bit: 960 groups of 6 octets, 238 a packet: 4 do not divide evenly into 238 (240), so 5 packets of 192.
    ['1920x1080p48 4:2:2 12 bit', 'equal', 1080 * 5, 1080 * 5, 1080 * 5760],
    // 4:2:0 at 10 bit: groups of 15 octets are 4 columns by 2 rows: 480 a pair of rows, 95 a packet: 6 of 80.
    ['1080p50 4:2:0 10 bit', 'equal', 540 * 6, 540 * 6, 540 * 7200],
    // 4:2:0 at 12 bit: 9 octets for 2 by 2: 960 a pair, 159 a packet: 7 do not divide, 8 of 120 do.
    ['1080p50 4:2:0 12 bit', 'equal', 540 * 8, 540 * 8, 540 * 8640],
    // 4:2:0 at 8 bit: 6 octets for 2 by 2: 960 a pair, 238 a packet: 5 of 192.
    ['1080p50 4:2:0 8 bit', 'equal', 540 * 5, 540 * 5, 540 * 5760],
    // RGB at 8 bit: 1920 groups of 3 octets, 477 a packet: 5 of 384.
    ['1080p50 RGB 8 bit', 'equal', 1080 * 5, 1080 * 5, 1080 * 5760],
    // 1366 / 2 = 683 groups, a prime: the least number, 3, the last one shorter.
    ['1366x768p60', 'equal', 768 * 3, 768 * 3, 768 * 3415],
    // A short last group is filled up: 1365 columns are 683 groups too.
    ['1365x768p60', 'equal', 768 * 3, 768 * 3, 768 * 3415],
    // Interlaced 4:2:0 by pairs of rows in each field.
    ['1080i50 4:2:0 8 bit', 'equal', 540 * 5, 540 * 5, 540 * 5760],
    // Blocks of 252 groups; 1024 a row: 4389 packets, rows begin inside all but every 63rd.
    ['2048x1080p48', 'block', 4389, 4389 + 1079 - 17, 1080 * 5120],
    // 8 octets a group do not divide 1260: 157 groups a packet. 960 x 1080 / 157 = 6603.8.
    ['1080p50 4:2:2 16 bit', 'block', 6604, 6604 + 1079 - 6, 1080 * 7680],
    // 50 groups a row: a packet of 252 would touch six rows, so it holds 101. Each of them begins one group later in
    // its row than the one before, so two of them begin where a row does.
    ['100x100p50', 'block', 50, 50 + 99 - 0, 100 * 250],
  ] as const)('%s, %s', (format, packing, packets, row_headers, data_octets) => {
    expect(packFrame(picture(format), packing)).toEqual({ packets, row_headers, data_octets });
  });

  test('the load is octets of packets times rate', () => {
    const octets = 1080 * 5120 + 1080 * 4 * 86;
    expect(pictureLoad_bits_per_second(picture('2048x1080p48'))).toBe(octets * 8 * 48);
    expect(pictureLoad_bits_per_second(picture('2048x1080p48'), 'equal', true)).toBe(
      (octets + 1080 * 4 * 4) * 8 * 48,
    );
    expect(pictureLoad_bits_per_second(picture('2048x1080p47.95'))).toBeCloseTo(
      (octets * 8 * 48_000) / 1001,
      3,
    );
  });

  test('groups of 4:2:0 span two rows', () => {
    expect(pixelGroup('4:2:0', 16)).toEqual({ octets: 12, pixels: 4, rows: 2 });
    expect(pixelGroup('4:2:2', 10).rows).toBe(1);
  });
});

test('short datagrams are filled up on the wire', () => {
  expect(wireOctets(40)).toBe(46 + 38);
  expect(wireOctets(46)).toBe(46 + 38);
  expect(wireOctets(47, true)).toBe(47 + 42);
});

describe('capacity', () => {
  test('nothing is rounded before the comparison', () => {
    expect(judgeLoad(9e9, 10e9)).toBe('fits');
    expect(judgeLoad(9e9 + 1, 10e9)).toBe('over headroom');
    expect(judgeLoad(10e9, 10e9)).toBe('over headroom');
    expect(judgeLoad(10e9 + 1, 10e9)).toBe('over capacity');
    expect(judgeLoad(10e9, 10e9, 0)).toBe('fits');
    expect(flowsThatFit(10e9, 2.5e9)).toBe(4);
    expect(flowsThatFit(10e9, 2.500001e9)).toBe(3);
  });
});

describe('SDI', () => {
  test.each([
    ['2048x1080p24', '2750 x 1125'],
    ['2048x1080p50', '2640 x 1125'],
    ['4096x2160p48', '5500 x 2250'],
    ['4096x2160p60', '4400 x 2250'],
    ['1080p47.95', '2750 x 1125'],
    ['1080i50', '2640 x 1125'],
    ['720p24', '4125 x 750'],
    ['720p25', '3960 x 750'],
    ['720p29.97', '3300 x 750'],
    ['486i59.94', '858 x 525'],
    ['576i50', '864 x 625'],
    ['7680x4320p50', '10560 x 4500'],
  ])('%s is %s in all', (format, expected) => {
    const total = totalRaster(parseRaster(format));
    expect(`${total?.samples_per_line} x ${total?.lines}`).toBe(expected);
  });

  test.each([
    '1920x1200p60',
    '1440p60',
    '1080p75',
    '1080p12.5',
    '720i50',
    '576p50',
    '2160i50',
    '1080i96',
    '720p48',
  ])('%s has no raster', (format) => {
    expect(totalRaster(parseRaster(format))).toBeUndefined();
    expect(sdiRate_bits_per_second(picture(format))).toBeUndefined();
    expect(sdiWays(picture(format))).toEqual([]);
    expect(smallestSdi(picture(format))).toBeUndefined();
  });

  test('8 bit rides in 10, more than 4:2:2 at 10 bit takes twice', () => {
    const rate = (format: string) => sdiRate_bits_per_second(picture(format));
    expect(rate('1080p50 4:2:2 8 bit')).toBe(2.97e9);
    expect(rate('1080p50 4:2:2 12 bit')).toBe(5.94e9);
    expect(rate('1080p50 RGB 10 bit')).toBe(5.94e9);
    expect(rate('1080p50 4:4:4 12 bit')).toBe(5.94e9);
    expect(smallestSdi(picture('2160p60 4:4:4'))).toBeUndefined();
    expect(sdiWays(picture('4320p60 4:4:4'))).toEqual([]);
  });

  test('standard definition rides on its own interface only, and only so', () => {
    expect(sdiWays(picture('576i50')).map((way) => `${way.links} ${way.interface.name}`)).toEqual([
      '1 SD-SDI',
    ]);
    expect(sdiWays(picture('576i50 4:4:4'))).toEqual([]);
    expect(sdiWays(picture('720p50'))[0]?.interface.name).toBe('HD-SDI');
  });
});

describe('display links', () => {
  test.each([
    ['1920x1080p60', 'table'],
    ['1920x1200p60', 'table'],
    ['1920x1200p59.94', 1],
    ['2048x1080p24', 1],
    ['1920x1080p49.95', 1],
    ['3440x1440p60', 1],
  ])('the clock of %s comes from %s', (raster, from) => {
    expect(pixelClock(parseRaster(raster)).from).toBe(from);
  });

  test('the version of the formula is the one asked for', () => {
    expect(pixelClock(parseRaster('3440x1440p60'), 2)).toMatchObject({
      from: 2,
      pixel_clock_hz: 312_787_000,
    });
    expect(tmdsCharacterRate_hz(picture('3440x1440p60 RGB 8 bit'), 2)).toBe(312_787_000);
  });

  test('4:2:0 halves, depth multiplies, 4:2:2 does not', () => {
    const megahertz = (format: string) => tmdsCharacterRate_hz(picture(format)) / 1e6;
    expect(megahertz('2160p60 4:2:0 12 bit')).toBe(445.5);
    expect(megahertz('2160p60 4:2:0 10 bit')).toBe(371.25);
    expect(megahertz('2160p60 4:2:2 12 bit')).toBe(594);
    expect(megahertz('2160p60 RGB 12 bit')).toBe(891);
    expect(megahertz('1080p60 4:4:4 16 bit')).toBe(297);
  });

  test('a link is judged by its characters, then by its lanes', () => {
    const lanes = (count: number, gigabits: number) => ({
      lanes: { count, rate_bits_per_second: gigabits * 1e9 },
    });
    expect(judgeDisplay(picture('2160p60 RGB 8 bit'), { character_rate_hz: 600e6 })).toBe('fits');
    expect(judgeDisplay(picture('2160p60 RGB 8 bit'), { character_rate_hz: 340e6 })).toBe('too big');
    expect(judgeDisplay(picture('2160p60 RGB 10 bit'), { character_rate_hz: 600e6, ...lanes(4, 12) })).toBe(
      'fits',
    );
    expect(judgeDisplay(picture('2160p120 RGB 10 bit'), lanes(4, 8))).toBe('too big');
    expect(judgeDisplay(picture('2160p120 RGB 10 bit'), lanes(4, 12))).toBe('fits');
    expect(judgeDisplay(picture('2160p120 4:2:2 10 bit'), lanes(4, 8))).toBe('doubtful');
    // 4:2:2 is sent in 24 bit a pixel: its 20 bit of samples would fit, what is sent does not.
    expect(judgeDisplay(picture('2160p120 4:2:2 10 bit'), lanes(4, 6))).toBe('too big');
    expect(judgeDisplay(picture('1080p60 RGB 8 bit'), {})).toBe('too big');
  });

  test('every class is judged', () => {
    const { tmds, fixed_rate } = displayClasses(picture('2160p60 RGB 8 bit'));
    expect(tmds.map(({ fit }) => fit)).toEqual(['too big', 'too big', 'fits']);
    expect(fixed_rate.map(({ fit }) => fit)).toEqual(['too big', 'fits', 'fits', 'fits', 'fits', 'fits']);
  });
});

test('a linear sender may be less ahead than one that pauses between frames', () => {
  const { rate } = picture('1080p59.94');
  expect(trafficShape(4320, rate, 'narrow').most_ahead_packets).toBe(6);
  expect(trafficShape(4320, rate, 'narrow linear').most_ahead_packets).toBe(5);
});
