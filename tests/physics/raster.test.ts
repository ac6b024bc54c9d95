import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { PhysicsError } from '../../src/physics/physics-error.ts';
import {
  checkFormat,
  checkPicture,
  completeFormat,
  type Format,
  formatFormat,
  formatRaster,
  parseFormat,
  parseRaster,
  resample,
  sameRaster,
} from '../../src/physics/raster.ts';
import {
  formatFrameRate,
  formatRatio,
  frameRate,
  frameRateOf,
  framesPerSecond,
  framesToSeconds,
  frameTime_s,
  sameRate,
  scaleRate,
  secondsToFrames,
} from '../../src/physics/rate.ts';

describe('frame rates', () => {
  test.each([
    ['23.976', '24000/1001'],
    ['23.98', '24000/1001'],
    ['29.97', '30000/1001'],
    ['47.952', '48000/1001'],
    ['59.94', '60000/1001'],
    ['71.928', '72000/1001'],
    ['119.88', '120000/1001'],
    ['239.76', '240000/1001'],
    ['14.985', '15000/1001'],
    ['23.97', '24000/1001'],
    ['47.95', '48000/1001'],
    ['11.99', '12000/1001'],
    ['24', '24'],
    ['60', '60'],
    ['60.00', '60'],
    ['2.00', '2'],
    ['499.50', '500000/1001'],
    ['499.5', '999/2'],
    ['12.5', '25/2'],
    ['59.9', '599/10'],
    ['59.95', '1199/20'],
    ['23.95', '479/20'],
  ])('%s is %s', (written, ratio) => {
    expect(formatRatio(frameRateOf(written))).toBe(ratio);
  });

  test('a number is read like its digits', () => {
    expect(frameRateOf(59.94)).toEqual({ numerator: 60000, denominator: 1001 });
    expect(frameRateOf(60)).toEqual({ numerator: 60, denominator: 1 });
  });

  test.each(['0', '10000', '1001', '0.5', '-50', 'NaN', 'Infinity', '', '5e1', '50.', '1/2'])(
    '%s is refused',
    (written) => {
      expect(() => frameRateOf(written)).toThrow(PhysicsError);
      expect(() => frameRateOf(Number.parseFloat('NaN'))).toThrow(
        'frame rate NaN is refused; allowed: 1 to 1000 a second',
      );
    },
  );

  test('a ratio is reduced, and refused when it is none', () => {
    expect(frameRate(120000, 2002)).toEqual({ numerator: 60000, denominator: 1001 });
    expect(() => frameRate(0, 1)).toThrow(PhysicsError);
    expect(() => frameRate(60, 0)).toThrow(PhysicsError);
    expect(() => frameRate(60, 1.5)).toThrow('frame rate denominator 1.5 is refused');
    expect(() => frameRate(1.5, 1)).toThrow(PhysicsError);
    expect(() => frameRate(1, 2)).toThrow(PhysicsError);
    expect(() => frameRate(1001, 1)).toThrow(PhysicsError);
    expect(frameRate(1000, 1).numerator).toBe(1000);
    expect(frameRate(1, 1).numerator).toBe(1);
  });

  test('every 1000/1001 rate is written so that it is read back', () => {
    for (let whole = 2; whole <= 1000; whole++) {
      const rate = frameRate(whole * 1000, 1001);
      expect(frameRateOf(formatFrameRate(rate))).toEqual(rate);
    }
  });

  test('every rate of up to one decimal is written so that it is read back', () => {
    for (let tenths = 10; tenths <= 10_000; tenths += 7) {
      const rate = frameRate(tenths, 10);
      expect(frameRateOf(formatFrameRate(rate))).toEqual(rate);
    }
  });

  test('frames and seconds', () => {
    const rate = frameRateOf('59.94');
    expect(framesToSeconds(3, rate)).toBe((3 * 1001) / 60000);
    expect(secondsToFrames(0.05005, rate)).toBeCloseTo(3, 12);
    expect(frameTime_s(rate)).toBe(1001 / 60000);
    expect(framesPerSecond(rate)).toBe(60000 / 1001);
    expect(scaleRate(rate, 1, 2)).toEqual(frameRateOf('29.97'));
    expect(sameRate(rate, frameRateOf('60'))).toBe(false);
    expect(sameRate(rate, frameRateOf('59.940'))).toBe(true);
    expect(sameRate(frameRate(25, 1), frameRate(25, 2))).toBe(false);
  });
});

describe('formats', () => {
  test.each([
    ['720p59.94', 1280, 720, 'p', '60000/1001'],
    ['1080i59.94', 1920, 1080, 'i', '30000/1001'],
    ['1080i50', 1920, 1080, 'i', '25'],
    ['1080p25', 1920, 1080, 'p', '25'],
    ['2160p59.94', 3840, 2160, 'p', '60000/1001'],
    ['4320p50', 7680, 4320, 'p', '50'],
    ['1440p60', 2560, 1440, 'p', '60'],
    ['900p60', 1600, 900, 'p', '60'],
    ['576i50', 720, 576, 'i', '25'],
    ['480p59.94', 720, 480, 'p', '60000/1001'],
    ['486i59.94', 720, 486, 'i', '30000/1001'],
    ['1920x1200p60', 1920, 1200, 'p', '60'],
    ['2048x1080p48', 2048, 1080, 'p', '48'],
    ['4096x2160p24', 4096, 2160, 'p', '24'],
    ['1366x768p60', 1366, 768, 'p', '60'],
    ['1920x1081p60', 1920, 1081, 'p', '60'],
    ['1080P50', 1920, 1080, 'p', '50'],
  ])('%s', (text, width, height, scan, ratio) => {
    const raster = parseRaster(text);
    expect(raster).toMatchObject({ width, height, scan });
    expect(formatRatio(raster.rate)).toBe(ratio);
    expect(sameRaster(parseRaster(formatRaster(raster)), raster)).toBe(true);
  });

  test('the whole is read in any order, and what is left out takes the usual of the signal', () => {
    expect(parseFormat('1080p50 audio 8 12 bit 4:4:4')).toMatchObject({
      sampling: '4:4:4',
      depth_bits: 12,
      audio_channels: 8,
    });
    expect(parseFormat('1080p50 10-bit')).toMatchObject({
      sampling: undefined,
      depth_bits: 10,
      audio_channels: undefined,
    });
    expect(completeFormat(parseFormat('1080p50'), 'sdi')).toMatchObject({
      sampling: '4:2:2',
      depth_bits: 10,
      audio_channels: 16,
    });
    expect(completeFormat(parseFormat('1080p50'), 'network')).toMatchObject({
      sampling: '4:2:2',
      depth_bits: 10,
      audio_channels: 16,
    });
    expect(completeFormat(parseFormat('1080p50'), 'hdmi')).toMatchObject({
      sampling: 'RGB',
      depth_bits: 8,
      audio_channels: 2,
    });
    expect(completeFormat(parseFormat('1080p50 rgb 10 bit audio 0'), 'hdmi')).toMatchObject({
      depth_bits: 10,
      audio_channels: 0,
    });
    expect(completeFormat(parseFormat('audio 2'), 'sdi')).toEqual({ kind: 'sound', audio_channels: 2 });
  });

  test('a format is written so that it is read back', () => {
    for (const text of [
      '1080p59.94 4:2:2 10 bit audio 16',
      '1920x1200p60 RGB 8 bit audio 2',
      '1080i50 4:4:4 12 bit audio 0',
      'audio 2',
    ]) {
      expect(formatFormat(completeFormat(parseFormat(text), 'sdi'))).toBe(text);
    }
    expect(formatRaster(parseRaster('720x480i59.94'))).toBe('480i59.94');
    expect(formatRaster(parseRaster('854x480p60'))).toBe('854x480p60');
  });

  test('two rasters are the same when size, scan and rate are', () => {
    const raster = parseRaster('1080p50');
    expect(sameRaster(raster, parseRaster('1920x1080p50'))).toBe(true);
    for (const other of ['1918x1080p50', '1920x1078p50', '1080i50', '1080p25', '1080p49.95', '1080i100']) {
      expect(sameRaster(raster, parseRaster(other))).toBe(false);
    }
  });

  test('blanks and hyphens between the words do not matter', () => {
    expect(parseFormat('  1080p50   10-bit  audio 2 ')).toEqual(parseFormat('1080p50 10 bit audio 2'));
    expect(parseFormat('1080p50 10bit audio 2')).toEqual(parseFormat('1080p50 10 bit audio 2'));
    expect(parseRaster(' 1080p50 ')).toEqual(parseRaster('1080p50'));
    expect(() => parseRaster('1080p50x')).toThrow('is no picture format');
  });

  test('SDI and network resample, the sound stays', () => {
    const laptop = completeFormat(parseFormat('1080p60'), 'hdmi');
    expect(resample(laptop)).toMatchObject({ sampling: '4:2:2', depth_bits: 10, audio_channels: 2 });
    expect(resample(laptop, 'RGB', 8)).toBe(laptop);
    expect(resample(laptop, 'RGB', 10)).toMatchObject({ sampling: 'RGB', depth_bits: 10 });
    expect(resample(laptop, '4:4:4', 8)).toMatchObject({ sampling: '4:4:4', depth_bits: 8 });
    expect(resample(laptop, 'RGB', 12)).toMatchObject({ sampling: 'RGB', depth_bits: 12 });
    const sound: Format = { kind: 'sound', audio_channels: 2 };
    expect(resample(sound)).toBe(sound);
    expect(() => resample(completeFormat(parseFormat('1365x767p60'), 'hdmi'), '4:2:0')).toThrow(PhysicsError);
  });

  test.each([
    ['', 'is no picture format'],
    ['1080', 'is no picture format'],
    ['1080q50', 'is no picture format'],
    ['1080p', 'is no picture format'],
    ['-1080p50', 'is no picture format'],
    ['1080pNaN', 'is no picture format'],
    ['1080p0', 'frame rate 0 is refused'],
    ['1080p10000', 'frame rate 10000 is refused'],
    ['1081i50', 'an interlaced picture of 1081 rows cannot be split into two fields'],
    ['1920x1081i50', 'an interlaced picture of 1081 rows cannot be split into two fields'],
    ['1081p50', '1081 rows have no usual width; write it, for example 1920x1081'],
    ['0x1080p50', 'width 0 is refused; allowed: a whole number, 1 to 32767 pixels'],
    ['1920x0p50', 'height 0 is refused'],
    ['0p50', 'height 0 is refused'],
    ['99999x1080p50', 'width 99999 is refused'],
    ['1920x40000p50', 'height 40000 is refused'],
    ['99999999999999999999p50', 'height 100000000000000000000 is refused'],
    ['1080p50 9 bit', 'depth 9 bit is refused; allowed: 8, 10, 12, 16 bit'],
    ['1080p50 0 bit', 'depth 0 bit is refused'],
    ['1080p50 4:1:1', '"4:1:1" is not understood'],
    ['1080p50 bit', '"bit" is not understood'],
    ['1080p50 audio', 'audio wants a whole number'],
    ['1080p50 audio 2.5', 'audio wants a whole number'],
    ['1080p50 audio 9999', 'audio 9999 is refused; allowed: a whole number, 0 to 512 channels'],
    ['audio 0', 'audio 0 is refused'],
    ['audio', 'is not understood; sound alone is written: audio 2'],
    ['audio 2 10 bit', 'sound alone is written: audio 2'],
    ['1080p50 4:2:2 4:4:4', 'states its sampling twice: 4:2:2 and 4:4:4'],
    ['1080p50 8 bit 10 bit', 'states its depth twice'],
    ['1080p50 audio 2 audio 4', 'states its audio twice'],
    ['1920x1081p50 4:2:0', '1920 columns and 1081 rows must both be even'],
    ['1919x1080p50 4:2:0', '1919 columns and 1080 rows must both be even'],
    ['1920x1082i50 4:2:0', '541 rows of each field must both be even'],
  ])('%s: %s', (text, message) => {
    expect(() => parseFormat(text)).toThrow(PhysicsError);
    expect(() => parseFormat(text)).toThrow(message);
  });

  test('formats that were put together wrongly are refused', () => {
    const good = completeFormat(parseFormat('1080p50'), 'sdi');
    if (good.kind === 'sound') throw new Error('a picture is expected');
    expect(() => checkPicture({ ...good, width: Number.NaN })).toThrow(PhysicsError);
    expect(() => checkPicture({ ...good, height: 1080.5 })).toThrow(PhysicsError);
    expect(() => checkPicture({ ...good, sampling: '4:1:1' as never })).toThrow('sampling 4:1:1 is refused');
    expect(() => checkPicture({ ...good, depth_bits: Number.NaN })).toThrow(PhysicsError);
    expect(() => checkFormat({ ...good, audio_channels: -1 })).toThrow(PhysicsError);
    expect(() => checkFormat({ kind: 'sound', audio_channels: 0 })).toThrow(PhysicsError);
    expect(() => checkFormat({ ...good, width: 0 })).toThrow('width 0 is refused');
    expect(() => checkPicture({ ...good, scan: 'i', height: 1081 })).toThrow(
      'cannot be split into two fields',
    );
    expect(() => completeFormat({ ...good, width: -1 }, 'sdi')).toThrow('width -1 is refused');
    expect(() => checkFormat({ ...good, audio_channels: 0 })).not.toThrow();
  });

  test('any text is read or refused with an error of ours', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string(), fc.stringMatching(/^[0-9x]{0,6}[pi][0-9.]{0,6}( audio| bit|:| \d){0,4}$/)),
        (text) => {
          try {
            const format = parseFormat(text);
            expect(format.audio_channels === undefined || format.audio_channels >= 0).toBe(true);
          } catch (error) {
            expect(error).toBeInstanceOf(PhysicsError);
          }
        },
      ),
    );
  });
});
